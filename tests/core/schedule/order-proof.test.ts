/** What is said to be too early for every order of tasks, beside plans that there are and beside every plan there is. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { isTooEarlyForOrders } from "../../../server/src/core/schedule/sessions/order-proof.ts";
import { planSessions } from "../../../server/src/core/schedule/sessions/plan-sessions.ts";
import { gridMs, makeSessionProblem } from "../../../server/src/core/schedule/sessions/session-problem.ts";
import type { ChainItem, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { IS_LONG_RUN } from "../../harness/share.ts";
import { minuteOf } from "./open-hours.ts";
import { tinyShop, withDust } from "./random-shops.ts";
import { canWorkEndBy } from "./session-brute-force.ts";

const minuteMs = 60_000;

/** One at work on two to four surfaces of one or two looks, whose tasks end anywhere between the steps of the grid. */
const oddShop = fc
  .record({
    crew: fc.constant(1),
    closes: fc.constantFrom(11, 13, 17),
    looks: fc.array(
      fc.record({
        sand: fc.integer({ min: 1, max: 70 }),
        coat: fc.integer({ min: 1, max: 50 }),
        fixed: fc.integer({ min: 0, max: 7 }),
        coats: fc.integer({ min: 1, max: 3 }),
        dry: fc.integer({ min: 10, max: 400 }),
        between: fc.boolean(),
        night: fc.boolean(),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    chains: fc.array(fc.record({ look: fc.nat(1), size: fc.integer({ min: 1, max: 3 }) }), {
      minLength: 2,
      maxLength: 4,
    }),
    start: fc.constantFrom("2027-03-08", "2027-03-08T09:10", "2027-03-12T10:00"),
  })
  .map(({ crew, closes, looks, chains, start }): ScheduleInput => {
    const hours = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 9 * 60, closes: closes * 60 }));
    return {
      calendar: { crew, hours, closed: [] },
      start,
      chains: chains.map(({ look, size }, at) => {
        const of = looks[look % looks.length]!;
        const items: ChainItem[] = [];
        const hands = (kind: string, minutes: number, material?: string): void => {
          items.push({
            kind: "hands",
            id: `${at} ${items.length}`,
            hours: Math.min(minutes * size, 90) / 60,
            nonPreemptive: true,
            session: {
              kind,
              fixedHours: of.fixed / 60,
              ...(material === undefined ? {} : { material }),
            },
          });
        };
        hands("sand", of.sand);
        for (let coat = 0; coat < of.coats; coat++) {
          hands("coat", of.coat, "varnish");
          const id = `${at} ${items.length}`;
          items.push(of.night ? { kind: "overnight", id } : { kind: "wait", id, hours: of.dry / 60 });
          if (of.between && coat + 1 < of.coats) hands("scuff", Math.ceil(of.sand / 3));
        }
        return { key: `chain ${at}`, items };
      }),
    };
  });

/** Of a plan, whether its own last work is said to be too early, and whether a step of the grid before is. */
function saidOf(input: ScheduleInput): { readonly own: boolean; readonly before: boolean } | undefined {
  const plan = planSessions(input);
  if (plan?.status !== "planned" || (plan.dust?.meetings.length ?? 0) > 0) return undefined;
  const keepsDustOut = input.chains.some(({ items }) =>
    items.some((item) => "session" in item && item.session?.makesDust),
  );
  const problem = { ...makeSessionProblem(input)!, keepsDustOut };
  const finish = problem.start + Math.round(plan.lastWorkHours! * 60) * minuteMs;
  return {
    own: isTooEarlyForOrders(problem, finish),
    before: isTooEarlyForOrders(problem, finish - gridMs),
  };
}

test.each([
  ["whatever the dust", (input: ScheduleInput) => input],
  ["with dust kept out", (input: ScheduleInput) => withDust(input, 0.7)],
] as const)("nothing is too early that some plan does, %s", (_, made) => {
  let proven = 0;
  let asked = 0;
  fc.assert(
    fc.property(oddShop, (input) => {
      const said = saidOf(made(input));
      if (said === undefined) return;
      asked++;
      if (said.before) proven++;
      expect(said.own).toBe(false);
    }),
    { numRuns: IS_LONG_RUN ? 1500 : 40, seed: 11 },
  );
  // It is of use: most of these plans are proven by it.
  expect(proven).toBeGreaterThan(asked / 2);
});

test("what is too early no plan does, of all there are", () => {
  let refuted = 0;
  for (const input of fc.sample(tinyShop, { numRuns: IS_LONG_RUN ? 400 : 60, seed: 5 })) {
    const problem = makeSessionProblem(input)!;
    const halfHours = Array.from({ length: 120 }, (_, at) => 120 - at).find((each) =>
      isTooEarlyForOrders(problem, problem.start + each * 30 * minuteMs),
    );
    if (halfHours === undefined) continue;
    refuted++;
    expect(canWorkEndBy(input, minuteOf(input.start!) + halfHours * 30)).toBe(false);
  }
  expect(refuted).toBeGreaterThan(15);
});
