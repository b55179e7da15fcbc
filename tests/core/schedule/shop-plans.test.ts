/**
 * One plan for all jobs of a shop: every rule by the independent verifier, who is planned with whom, what each job gets of
 * the plan, and by how much it is held up, by hand.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BEING_PLANNED } from "../../../server/src/core/schedule/being-planned.ts";
import { planWork } from "../../../server/src/core/schedule/plan.ts";
import { planKey } from "../../../server/src/core/schedule/plan-key.ts";
import { searchSessions } from "../../../server/src/core/schedule/sessions/local-search.ts";
import { makeSessionProblem } from "../../../server/src/core/schedule/sessions/session-problem.ts";
import { shareOf } from "../../../server/src/core/schedule/shop/job-share.ts";
import { planShop } from "../../../server/src/core/schedule/shop/plan-shop.ts";
import { type ShopMember, sharedInput } from "../../../server/src/core/schedule/shop/shop-input.ts";
import type { Schedule, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { manyJobs, randomShopOfJobs, withVapour } from "./random-shops.ts";
import { sessionWrongsOf } from "./session-verifier.ts";

const WEEK = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 1020 }));

interface Wish {
  readonly start?: string;
  readonly due?: string;
  readonly after?: readonly string[];
  readonly kind?: string;
}

/** One task of so many minutes, Mon 2027-03-08 09:00, one at work, 09:00 to 17:00. */
function member(
  key: string,
  minutes: number,
  { start = "2027-03-08", due, after = [], kind = key }: Wish = {},
) {
  const input: ScheduleInput = {
    calendar: { hours: WEEK, closed: [], crew: 1 },
    start,
    chains: [
      {
        key: "top#1",
        items: [
          {
            kind: "hands",
            id: "top#1:0",
            hours: minutes / 60,
            nonPreemptive: true,
            session: { kind, fixedHours: 0 },
          },
        ],
      },
    ],
  };
  return { key, name: key, input, alone: planWork(input), after, ...(due === undefined ? {} : { due }) };
}

const plansOf = (members: readonly ShopMember[]) =>
  planShop(members, (together) => planWork(sharedInput(together)));

/** What a job gets of the plan: its dates, and what holds it up. */
function shares(members: readonly ShopMember[]): Record<string, unknown> {
  const { plans } = plansOf(members);
  return Object.fromEntries(
    plans.flatMap(({ members: together, schedule }) =>
      together.map(({ key }, place) => {
        const { items, lastWorkAt, among } = shareOf(schedule, together, place);
        const { names, place: own, ...more } = among!;
        const jobs = names.filter((_, at) => at !== own);
        return [key, { from: items[0]!.startAt, to: lastWorkAt, jobs, ...more }];
      }),
    ),
  );
}

describe("who is planned with whom", () => {
  const names = (members: readonly ShopMember[]) => {
    const { plans, singles, leftOut, pending } = plansOf(members);
    return {
      plans: plans.map((plan) => plan.members.map(({ key }) => key)),
      singles: singles.map(({ key }) => key),
      leftOut: leftOut.map(({ key }) => key),
      pending: [...pending].map(({ key }) => key),
    };
  };

  test("those who need people before the others have done, and nobody else", () => {
    // Mon 09:00 to 12:00 and 10:00 to 11:00; Tue by itself.
    const members = [
      member("a", 180),
      member("b", 60, { start: "2027-03-08T10:00" }),
      member("c", 60, { start: "2027-03-09" }),
    ];
    expect(names(members)).toEqual({ plans: [["a", "b"]], singles: ["c"], leftOut: [], pending: [] });
  });

  test("a third one that the work of two puts off", () => {
    // 6 h and 6 h on Monday end on Tuesday at 13:00, when the third has begun.
    const members = [member("a", 360), member("b", 360), member("c", 60, { start: "2027-03-09" })];
    expect(names(members).plans).toEqual([["a", "b", "c"]]);
  });

  test("one that comes after another that has not ended", () => {
    const members = [
      member("a", 480),
      member("b", 30, { start: "2027-03-08", after: ["a"] }),
      member("c", 30, { start: "2027-03-10" }),
    ];
    expect(names(members)).toEqual({ plans: [["a", "b"]], singles: ["c"], leftOut: [], pending: [] });
  });

  test("none of whom nobody knows yet, and none who begins later", () => {
    const unknown = { ...member("b", 60, { start: "2027-03-09" }), alone: BEING_PLANNED };
    expect(names([member("a", 60), unknown, member("c", 60, { start: "2027-03-10" })])).toEqual({
      plans: [],
      singles: ["a"],
      leftOut: [],
      pending: ["b", "c"],
    });
  });

  test("no job that has no plan in sessions", () => {
    const impossible: Schedule = { ...BEING_PLANNED, status: "impossible" };
    const broken = { ...member("b", 60), alone: { ...impossible, items: member("b", 60).alone.items } };
    expect(names([member("a", 60), broken])).toMatchObject({ plans: [], singles: ["a"], leftOut: ["b"] });
  });

  test("300 at most, those due first; the others are named", () => {
    const all = Array.from({ length: 302 }, (_, at) =>
      member(`m${at}`, 5, { due: at < 2 ? "2027-04-30T00:00" : "2027-04-01T00:00" }),
    );
    const { plans, leftOut } = plansOf(all);
    expect(leftOut.map(({ key }) => key)).toEqual(["m0", "m1"]);
    expect(plans[0]!.members).toHaveLength(300);
    expect(plans[0]!.schedule.inOrder).toBe(true);
  });
});

describe("what a job gets", () => {
  test("the time that is left, and the hours that people are at work on the other meanwhile", () => {
    // The longer one is wanted on Monday by 15:00, so the short one waits its 6 h.
    const members = [member("long", 360, { due: "2027-03-08T15:00" }), member("short", 60)];
    expect(shares(members)).toEqual({
      long: {
        from: "2027-03-08T09:00:00",
        to: "2027-03-08T15:00:00",
        jobs: ["short"],
        laterHours: 0,
        heldBy: [],
      },
      short: {
        from: "2027-03-08T15:00:00",
        to: "2027-03-08T16:00:00",
        jobs: ["long"],
        laterHours: 6,
        heldBy: [{ job: "long", hours: 6, why: "people" }],
      },
    });
  });

  test("its place after a job that it comes after", () => {
    const members = [member("first", 120), member("next", 60, { after: ["first"] })];
    expect(shares(members)).toMatchObject({
      next: {
        from: "2027-03-08T11:00:00",
        to: "2027-03-08T12:00:00",
        laterHours: 2,
        heldBy: [{ job: "first", hours: 2, why: "after" }],
      },
    });
  });

  test("its own ids, in hours after its own start", () => {
    const members = [member("a", 180), member("b", 60, { start: "2027-03-08T10:00" })];
    const [{ members: together, schedule }] = plansOf(members).plans as [
      ReturnType<typeof plansOf>["plans"][0],
    ];
    const share = shareOf(schedule, together, 1);
    // Last work Mon 13:00 whoever goes first; the sum of last works is least with `b` first: 11:00 and 14:00 against
    // 12:00 and 13:00, so `a` first: 09:00 to 12:00, then `b` to 13:00, 3 h after its own start.
    expect(share.startAt).toBe("2027-03-08T10:00:00");
    expect(share.items).toMatchObject([{ id: "top#1:0", chain: "top#1", start: 2, end: 3 }]);
    expect(share.sessions).toMatchObject([{ start: 2, end: 3, hours: 1, items: ["top#1:0"] }]);
    expect(share).toMatchObject({ lastWorkHours: 3, elapsedHours: 3, lowerBound: 1, gap: 2, exact: false });
  });

  test("its part of a session that two jobs share, set up once", () => {
    // 10 min of setting up, then 20 and 30 min of the same coat: 09:00 to 10:00.
    const coat = (key: string, minutes: number): ShopMember => {
      const { input, ...rest } = member(key, minutes, { kind: "coat" });
      const chains = input.chains.map((chain) => ({
        ...chain,
        items: chain.items.map((item) => ({ ...item, session: { kind: "coat", fixedHours: 1 / 6 } })),
      }));
      const own = { ...input, chains } as ScheduleInput;
      return { ...rest, input: own, alone: planWork(own) };
    };
    const { plans } = plansOf([coat("a", 20), coat("b", 30)]);
    const [{ members: together, schedule }] = plans as [(typeof plans)[0]];
    expect(schedule.sessions).toHaveLength(1);
    const parts = together.map((_, place) => shareOf(schedule, together, place).sessions!);
    expect(parts.map((sessions) => sessions.length)).toEqual([1, 1]);
    const sumOf = (of: "hours" | "fixed"): number =>
      parts.flat().reduce((sum, session) => sum + session[of], 0);
    expect(sumOf("hours")).toBeCloseTo(1, 9);
    expect(sumOf("fixed")).toBeCloseTo(1 / 6, 9);
  });
});

describe("every rule is kept", () => {
  test("by more jobs than are searched together, one after the other", () => {
    let planned = 0;
    fc.assert(
      fc.property(randomShopOfJobs(6), (shop) => {
        const input = manyJobs(shop);
        const result = planWork(input);
        if (result.status !== "planned") return;
        planned++;
        expect(result.inOrder).toBe(true);
        expect(sessionWrongsOf(input, result)).toEqual([]);
      }),
      { numRuns: 6, seed: 31 },
    );
    expect(planned).toBeGreaterThan(2);
  });

  test("in one plan wherever each job by itself has one", () => {
    let [common, none] = [0, 0];
    const limits = { lastWork: 0, end: 0, sessions: 0, effort: 0.001 };
    const isPlanned = (input: ScheduleInput): boolean =>
      searchSessions(makeSessionProblem(input)!, limits) !== undefined;
    for (const input of fc.sample(randomShopOfJobs(8), { numRuns: 150, seed: 33 })) {
      if (isPlanned(input)) common++;
      else {
        // Some job could not even be planned alone.
        const { jobs, chains, ...shop } = input;
        const alone = jobs!.map(({ key, start = shop.start! }) => ({
          ...shop,
          start,
          chains: chains.filter(({ job }) => job === key).map(({ job: _, ...chain }) => chain),
        }));
        expect(alone.filter((each) => each.chains.length > 0).every(isPlanned)).toBe(false);
        none++;
      }
    }
    expect(common).toBeGreaterThan(100);
    expect(none).toBeGreaterThan(0);
  });

  test("and by as many in a room whose air carries away no more than some coats", () => {
    let held = 0;
    const share = fc.double({ min: 0.02, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(randomShopOfJobs(5), share, share, (shop, shift, short) => {
        const { jobs, ...many } = withVapour(manyJobs(shop), shift, short);
        // Wanted by no date, as nothing that is late by the air is planned within it.
        const input = { ...many, jobs: jobs!.map(({ due: _, ...job }) => job) };
        const result = planWork(input);
        if (result.heldByAir === undefined) return;
        held++;
        expect(sessionWrongsOf(input, result)).toEqual([]);
      }),
      { numRuns: 6, seed: 3 },
    );
    expect(held).toBeGreaterThan(0);
  });
});

test("after an edit only the chains of its job are made and written anew for the plan of the shop", () => {
  const members = ["a", "b", "c"].map((key) => member(key, 60));
  const before = sharedInput(members);
  const key = planKey(before);
  let written = 0;
  for (const chain of before.chains)
    Object.defineProperty(chain, "toJSON", {
      value: () => {
        written += 1;
        return chain.key;
      },
    });
  const edited = members.with(1, member("b", 90));
  const after = sharedInput(edited);
  expect(after.chains.map((chain, place) => chain === before.chains[place])).toEqual([true, false, true]);
  expect(planKey(after)).not.toBe(key);
  expect(written).toBe(0); // what was written of them is kept
  expect(planKey(sharedInput(["a", "b", "c"].map((each) => member(each, 60))))).toBe(key);
});
