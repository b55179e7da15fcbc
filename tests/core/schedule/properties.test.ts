/**
 * Random jobs: every plan past the verifier, small jobs against brute force, more crew and longer waits, slack against
 * letting an item slip in a simulation by the minute and against the critical path method.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { schedule } from "../../../server/src/core/schedule/schedule.ts";
import type { Chain, ChainItem, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { type Activity, calculateNetwork } from "../../oracles/network.ts";
import { canFinishBy } from "./brute-force.ts";
import { finishWithSlip } from "./let-slip.ts";
import { mediumJob, smallJob } from "./random-jobs.ts";
import { wrongsOf } from "./verifier.ts";

const oneOrTwo = fc.integer({ min: 1, max: 2 });
const oneToThree = fc.integer({ min: 1, max: 3 });

function finishOf(input: ScheduleInput): number {
  const result = schedule(input);
  return result.status === "planned" ? result.elapsedHours : Number.POSITIVE_INFINITY;
}

describe("small jobs", () => {
  test.each([false, true])("are planned as early as brute force finds, windows %s", (windows) => {
    fc.assert(
      fc.property(smallJob(oneOrTwo, windows), (input) => {
        const result = schedule(input);
        if (result.status === "impossible") {
          // Some chain fails even on its own, for two weeks and more.
          expect(input.chains.some((chain) => !canFinishBy({ ...input, chains: [chain] }, 336))).toBe(true);
          return;
        }
        expect(wrongsOf(input, result)).toEqual([]);
        expect(result.exact).toBe(true);
        expect(canFinishBy(input, result.elapsedHours)).toBe(true);
        expect(canFinishBy(input, result.elapsedHours - 1)).toBe(false);
      }),
      { numRuns: 14, seed: 3 },
    );
  });

  test("one more at work never makes the finish later", () => {
    fc.assert(
      fc.property(smallJob(oneOrTwo, true), (input) => {
        const more = { ...input, calendar: { ...input.calendar!, crew: input.calendar!.crew + 1 } };
        expect(finishOf(more)).toBeLessThanOrEqual(finishOf(input));
      }),
      { numRuns: 40, seed: 4 },
    );
  });

  test("a longer wait never makes the finish earlier", () => {
    fc.assert(
      fc.property(
        smallJob(oneOrTwo, true),
        fc.nat(),
        fc.integer({ min: 1, max: 9 }),
        (input, which, more) => {
          const waits = input.chains.flatMap((chain) =>
            chain.items.filter(({ kind }) => kind === "wait").map(({ id }) => `${chain.key}.${id}`),
          );
          const chosen = waits[which % Math.max(1, waits.length)];
          const chains = input.chains.map((chain) => ({
            ...chain,
            items: chain.items.map((item) =>
              item.kind === "wait" && `${chain.key}.${item.id}` === chosen
                ? { ...item, hours: item.hours + more }
                : item,
            ),
          }));
          expect(finishOf({ ...input, chains })).toBeGreaterThanOrEqual(finishOf(input));
        },
      ),
      { numRuns: 40, seed: 5 },
    );
  });
});

describe("medium jobs", () => {
  test.each([false, true])(
    "keep every rule and say how far they may be from the best, windows %s",
    (windows) => {
      fc.assert(
        fc.property(mediumJob(oneToThree, windows), (input) => {
          const result = schedule(input);
          expect(schedule(input)).toEqual(result);
          if (result.status === "impossible") {
            expect(result.conflicts.length).toBeGreaterThan(0);
            return;
          }
          expect(wrongsOf(input, result)).toEqual([]);
          expect(result.exact).toBe(result.gap === 0);
        }),
        { numRuns: 16, seed: 6 },
      );
    },
  );

  test("one more at work never makes the finish later", () => {
    fc.assert(
      fc.property(mediumJob(fc.constant(1), true), (input) => {
        const finishes = [1, 2, 3].map((crew) =>
          finishOf({ ...input, calendar: { ...input.calendar!, crew } }),
        );
        expect(finishes).toEqual([...finishes].sort((a, b) => b - a));
      }),
      { numRuns: 16, seed: 7 },
    );
  });
});

describe("slack", () => {
  test("an item may slip by it and no further, by simulation", () => {
    fc.assert(
      fc.property(smallJob(oneOrTwo, false), (input) => {
        const result = schedule(input);
        for (const [place, item] of result.items.entries()) {
          expect(finishWithSlip(input, result, place, item.slack)).toBeLessThanOrEqual(result.elapsedHours);
          expect(finishWithSlip(input, result, place, item.slack + 1 / 60)).toBeGreaterThan(
            result.elapsedHours,
          );
        }
      }),
      { numRuns: 16, seed: 8 },
    );
  });

  test("is the total float of the network when there is no shop", () => {
    fc.assert(
      fc.property(smallJob(oneOrTwo, false), ({ chains }) => {
        const result = schedule({ chains });
        const floats = calculateNetwork(chains.flatMap(activitiesOf))!;
        expect(result.elapsedHours).toBeCloseTo(floats.duration, 9);
        const tasks = new Map(floats.activities.map((times) => [times.id, times.totalFloat]));
        for (const item of result.items) {
          const float = tasks.get(`${item.chain}.${item.id}`);
          if (float !== undefined) expect(item.slack).toBeCloseTo(float, 5);
        }
      }),
      { numRuns: 40, seed: 9 },
    );
  });
});

/** A chain as a network: tasks and nights follow one another, waits are activities beside what they count from. */
function activitiesOf(chain: Chain): readonly Activity[] {
  const activities: Activity[] = [];
  let ends: readonly string[] = []; // activities that must be over before the next item
  for (const item of chain.items) {
    const id = `${chain.key}.${item.id}`;
    if (item.kind === "wait" && item.of !== undefined) {
      activities.push({ id: `${id}?`, duration: item.hours, after: [`${chain.key}.${item.of}`] });
      ends = [...ends, `${id}?`];
      continue;
    }
    activities.push({ id, duration: durationOf(item), after: ends });
    ends = [id];
  }
  return activities;
}

function durationOf(item: ChainItem): number {
  return item.kind === "overnight" ? 16 : item.hours;
}

test("a day's work for a large shop: thirty pieces with three surfaces of twelve tasks each", () => {
  const input = largeJob(2);
  const result = schedule(input);
  expect(result.items.filter(({ id }) => id.startsWith("h"))).toHaveLength(1080);
  expect(wrongsOf(input, result)).toEqual([]);
  expect(result.gap).toBeLessThan(0.01);
});

function largeJob(crew: number): ScheduleInput {
  const hours = [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 1020 }));
  const chains = Array.from({ length: 90 }, (_, place) => ({
    key: `${Math.floor(place / 3)}.${place % 3}`,
    items: Array.from({ length: 12 }, (_, step): readonly ChainItem[] => [
      {
        kind: "hands",
        id: `h${step}`,
        hours: 0.25 * (1 + ((step + place) % 3)),
        nonPreemptive: step % 2 === 0,
        ...(step % 4 === 3 ? { maxLag: { of: `h${step - 1}`, hours: 24 } } : {}),
      },
      { kind: "wait", id: `w${step}`, hours: step % 3 === 2 ? 3 : 0.5 },
    ]).flat(),
  }));
  return {
    calendar: { hours, closed: [{ from: "2027-03-26", to: "2027-03-29" }], crew },
    start: "2027-03-08",
    chains,
  };
}
