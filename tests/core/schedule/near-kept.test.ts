/** A plan near one that was kept: by hand, and over random shops by the independent verifier. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isoAfter } from "../../../server/src/core/schedule/iso-after.ts";
import { planWork, planWorkNear } from "../../../server/src/core/schedule/plan.ts";
import { nearKept } from "../../../server/src/core/schedule/sessions/near-kept.ts";
import type { Chain, Schedule, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { randomShop, randomShopOfJobs, withVapour } from "./random-shops.ts";
import { sessionWrongsOf } from "./session-verifier.ts";

const planNear = (input: ScheduleInput): Schedule => planWorkNear(input, nearKept);

/** The input with all that a plan of it has, as the plan that is kept. */
function keeping(input: ScheduleInput, plan: Schedule): ScheduleInput {
  const sessions = new Map(
    plan.sessions!.flatMap(({ items, start }, at) =>
      items.map((id) => [id, { begun: `${isoAfter(plan, start)}`, session: `${at}` }]),
    ),
  );
  const starts = new Map(plan.items.map(({ id, startAt }) => [id, startAt!]));
  return {
    ...input,
    chains: input.chains.map((chain) => ({
      ...chain,
      items: chain.items.map((item) =>
        item.kind === "hands" && sessions.has(item.id)
          ? { ...item, kept: { at: starts.get(item.id)!, ...sessions.get(item.id)! } }
          : item,
      ),
    })),
  };
}

const startsOf = ({ items }: Schedule): ReadonlyMap<string, string> =>
  new Map(items.map(({ id, startAt }) => [id, startAt!]));

describe("by hand: one at work, Mon 09:00 to 17:00, each task of its own kind", () => {
  const WEEK = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 1020 }));
  const task = (id: string, minutes: number, kept?: string): Chain => ({
    key: id,
    job: id,
    items: [
      {
        kind: "hands",
        id,
        hours: minutes / 60,
        nonPreemptive: true,
        session: { kind: id, fixedHours: 0 },
        ...(kept === undefined
          ? {}
          : { kept: { at: `2027-03-08T${kept}`, begun: `2027-03-08T${kept}`, session: id } }),
      },
    ],
  });
  const planned = (chains: readonly Chain[], due: Readonly<Record<string, string>> = {}) => {
    const plan = planNear({
      calendar: { hours: WEEK, closed: [], crew: 1 },
      start: "2027-03-08",
      chains,
      jobs: chains.map(({ key }) => ({ key, ...(due[key] ? { due: `2027-03-08T${due[key]}` } : {}) })),
    });
    const times = Object.fromEntries(plan.items.map(({ id, startAt }) => [id, startAt!.slice(11, 16)]));
    return { kept: plan.kept, ...times };
  };
  const KEPT = [task("a", 60, "09:00"), task("b", 60, "13:00"), task("c", 60, "11:00")];

  test("what nothing is in the way of stays, though it could be earlier", () => {
    expect(planned(KEPT)).toEqual({ kept: "near", a: "09:00", b: "13:00", c: "11:00" });
  });

  test("what takes longer pushes what comes next, and that no further than it must", () => {
    // Three hours from 09:00: the next at 12:00 in place of 11:00, and the last has its hour as before.
    const [, b, c] = KEPT;
    expect(planned([task("a", 180, "09:00"), b!, c!])).toEqual({
      kept: "near",
      a: "09:00",
      b: "13:00",
      c: "12:00",
    });
  });

  test("what is new goes into the hours that are left", () => {
    // An hour is free from 10:00 on, and two are not before 14:00.
    expect(planned([...KEPT, task("d", 60)])).toMatchObject({
      a: "09:00",
      b: "13:00",
      c: "11:00",
      d: "10:00",
    });
    expect(planned([...KEPT, task("d", 120)])).toMatchObject({
      a: "09:00",
      b: "13:00",
      c: "11:00",
      d: "14:00",
    });
  });

  test("it is let go where a job would be late that need not be", () => {
    // Until 14:00 by the kept plan, and at 12:00 at the latest by one that does all without a break.
    const plan = planned(KEPT, { b: "12:00" });
    expect(plan.kept).toBe("let go");
    expect(Object.values(plan).toSorted()).toEqual(["09:00", "10:00", "11:00", "let go"]);
    // Where it would be late anyway, nothing is gained by another plan.
    expect(planned(KEPT, { b: "09:30" })).toEqual({ kept: "near", a: "09:00", b: "13:00", c: "11:00" });
  });
});

test("a kept plan of which nothing has changed is made again", () => {
  for (const input of fc.sample(randomShop(10), { numRuns: 6, seed: 41 })) {
    const plan = planWork(input);
    if (plan.sessions === undefined) continue;
    const again = planNear(keeping(input, plan));
    expect(again.kept).toBe("near");
    expect(startsOf(again)).toEqual(startsOf(plan));
    expect(sessionWrongsOf(input, again)).toEqual([]);
  }
});

test("a plan near one that was kept keeps all rules, and nothing in it is earlier", () => {
  fc.assert(
    fc.property(randomShopOfJobs(8), fc.nat(), fc.boolean(), (shop, which, hasVapour) => {
      const input = hasVapour ? withVapour(shop, 0.1, 0.3) : shop;
      const plan = planWork(input);
      if (plan.sessions === undefined) return;
      const kept = keeping(input, plan);
      // A task takes half an hour more, and a piece is added.
      const longer = which % kept.chains.length;
      const renamed = (text: string): string => `more ${text}`;
      const first = input.chains[0]!;
      const more: Chain = {
        ...first,
        key: renamed(first.key),
        items: first.items.map((item) => ({
          ...item,
          id: renamed(item.id),
          ...("maxLag" in item && item.maxLag
            ? { maxLag: { ...item.maxLag, of: renamed(item.maxLag.of) } }
            : {}),
        })),
      };
      const changed: ScheduleInput = {
        ...kept,
        chains: [
          ...kept.chains.map((chain, at) =>
            at === longer
              ? {
                  ...chain,
                  items: chain.items.map((item, index) =>
                    index === 0 && item.kind === "hands" ? { ...item, hours: item.hours + 0.5 } : item,
                  ),
                }
              : chain,
          ),
          more,
        ],
      };
      const next = planNear(changed);
      if (next.sessions === undefined) return;
      expect(sessionWrongsOf(changed, next)).toEqual([]);
      if (next.kept !== "near") return;
      const before = startsOf(plan);
      const waits = new Set(
        input.chains.flatMap(({ items }) => items.flatMap(({ kind, id }) => (kind === "hands" ? [] : [id]))),
      );
      for (const { id, startAt } of next.items)
        if (before.has(id) && !waits.has(id)) expect(startAt! >= before.get(id)!).toBe(true);
    }),
    { numRuns: 5, seed: 42 },
  );
});
