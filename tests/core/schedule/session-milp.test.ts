/**
 * Plans in sessions beside integer programs, and these beside trying every plan there is. `npm run bench -- --only sessions`
 * does the same with more and larger shops.
 */
import fc from "fast-check";
import highsLoader from "highs";
import { beforeAll, describe, expect, test } from "vitest";
import { planSessions } from "../../../server/src/core/schedule/sessions/plan-sessions.ts";
import type { HandsItem, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { earliestLastWork } from "../../oracles/session-milp.ts";
import { minuteOf } from "./open-hours.ts";
import { tinyShop } from "./random-shops.ts";
import { canWorkEndBy } from "./session-brute-force.ts";

let highs: Awaited<ReturnType<typeof highsLoader>>;
beforeAll(async () => {
  highs = await highsLoader();
});

const START = "2027-03-08T09:00";
const coat = (id: string, fixedHours: number): HandsItem => ({
  kind: "hands",
  id,
  hours: 1,
  nonPreemptive: true,
  session: { kind: "coat", fixedHours },
});

/** Mon 2027-03-08 09:00 to 12:00, and so every day: two coats of an hour on each of three pieces, dry after 2 h. */
const shop = (fixedHours: number, crew: number, within?: number): ScheduleInput => ({
  calendar: {
    hours: [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: 540, closes: 720 })),
    closed: [],
    crew,
  },
  start: START,
  chains: ["a", "b", "c"].map((key) => ({
    key,
    items: [
      coat(`${key} 1`, fixedHours),
      { kind: "wait", id: `${key} dry`, hours: 2 },
      {
        ...coat(`${key} 2`, fixedHours),
        ...(within === undefined ? {} : { maxLag: { of: `${key} 1`, hours: within } }),
      },
    ],
  })),
});

const hoursAfter = (input: ScheduleInput, days: number): number | undefined => {
  const found = earliestLastWork(highs, input, minuteOf(START) + days * 1440, { step: 30 });
  return found.status === "optimal" ? (found.minute - minuteOf(START)) / 60 : undefined;
};

describe("by hand", () => {
  test("a session goes on without a break and over no closing", () => {
    // One person, three coats a day: six hours, the last from Tuesday 11:00 to 12:00.
    expect(hoursAfter(shop(0, 1), 3)).toBe(27);
    // With half an hour to set up two a day, and so three days: Wednesday 11:30.
    expect(hoursAfter(shop(0.5, 1), 3)).toBe(50.5);
    // Two people: Monday three first coats, from 09:30 (two of them) to 11:30; on Tuesday two and one, until 11:30.
    expect(hoursAfter(shop(0.5, 2), 3)).toBe(26.5);
    // Too late for Tuesday 10:00 in any plan.
    expect(hoursAfter(shop(0.5, 2), 1)).toBeUndefined();
  });

  test("a window is kept", () => {
    // The first coat ends at 10:30 at the earliest and at 12:00 at the latest; 2 to 3 h later the shop is closed.
    expect(hoursAfter(shop(0.5, 2, 3), 3)).toBeUndefined();
    expect(hoursAfter(shop(0.5, 2, 24), 3)).toBe(26.5);
  });
});

test("finds what trying every plan finds, and what the planner finds", () => {
  let compared = 0;
  for (const input of fc.sample(tinyShop, { numRuns: 10, seed: 5 })) {
    const plan = planSessions(input);
    if (plan?.status !== "planned" || input.chains.length > 3) continue;
    compared++;
    const limit = Math.ceil(minuteOf(plan.lastWorkAt!) / 30) * 30;
    const found = earliestLastWork(highs, input, limit, { step: 30 });
    expect(found, JSON.stringify(input)).toEqual({ status: "optimal", minute: limit });
    expect(canWorkEndBy(input, limit - 30)).toBe(false);
  }
  expect(compared).toBeGreaterThan(4);
});
