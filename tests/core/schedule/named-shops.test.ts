/**
 * Shops whose best plan is known by hand: pieces that share one pair of hands over short weeks, and a few that three people
 * share. No plan is later than one session.
 */
import { expect, test } from "vitest";
import { planSessions } from "../../../server/src/core/schedule/sessions/plan-sessions.ts";
import type { Chain, ChainItem, HandsItem, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { sessionWrongsOf } from "./session-verifier.ts";

const days = (weekdays: readonly number[], opens: number, closes: number) =>
  weekdays.map((weekday) => ({ weekday, opens: opens * 60, closes: closes * 60 }));

const task = (id: string, minutes: number, kind: string, after?: string): HandsItem => ({
  kind: "hands",
  id,
  hours: minutes / 60,
  nonPreemptive: true,
  session: { kind, fixedHours: 0 },
  ...(after === undefined ? {} : { maxLag: { of: after, hours: 48 } }),
});

/** A surface that is sanded and gets three coats of varnish, each 12 to 48 h after the one before, as they are at 16 C. */
function varnished(key: string, sand: number, coat: number): Chain {
  const coats = [1, 2, 3].flatMap((turn): ChainItem[] => [
    task(`${key} coat ${turn}`, coat, "coat", turn > 1 ? `${key} coat ${turn - 1}` : undefined),
    { kind: "wait", id: `${key} dry ${turn}`, hours: 12 },
  ]);
  return { key, items: [task(`${key} sand`, sand, "sand"), ...coats] };
}

/** 30 pieces of two surfaces, one at work, Tue to Fri 09:00 to 18:00, from Tue 9 Mar 2027 on. */
const thirty = (sand: number, coat: number): ScheduleInput => ({
  calendar: { hours: days([2, 3, 4, 5], 9, 18), closed: [], crew: 1 },
  start: "2027-03-09",
  chains: Array.from({ length: 60 }, (_, at) => varnished(`surface ${at}`, sand, coat)),
});

test("30 pieces that just go into one short week do so", () => {
  // 60 × (3 + 3 × 10) min are 33 h of work, of the 36 that the week has: no plan ends before Fri 15:00.
  const input = thirty(3, 10);
  const plan = planSessions(input)!;
  expect(sessionWrongsOf(input, plan)).toEqual([]);
  expect(plan.lastWorkAt).toBe("2027-03-12T15:00:00");
  expect(plan.exact).toBe(true);
});

test("30 pieces that do not are done in two, and no later than the week end makes them", () => {
  // 60 × (5 + 3 × 12) min are 41 h. From Fri 18:00 to Tue 09:00 it is longer than 48 h, and 12 h are longer than a day of
  // work, so a surface has its three coats on three days of one week. At most 52 of them, 41 min each, go into the 36 h of
  // the first, and the third coats of at least 8 go on from Thu 18 Mar 09:00: 96 min, to 10:36.
  const input = thirty(5, 12);
  const plan = planSessions(input)!;
  expect(sessionWrongsOf(input, plan)).toEqual([]);
  const late = (Date.parse(`${plan.lastWorkAt}Z`) - Date.parse("2027-03-18T10:36Z")) / 60_000;
  expect(late).toBeGreaterThanOrEqual(0);
  // One session of so many coats.
  expect(late).toBeLessThanOrEqual(96);
  expect(plan.lowerBound).toBeLessThanOrEqual(9 * 24 + 1.6 + 1e-9);
});

test("five pieces and three people end their work at the earliest hour that there is", () => {
  // Monday: sanded and coated, dry before Tue 09:00. Then each is rubbed for 3 h and polished for 1 h 40 min. Whoever rubs
  // two and polishes one takes 7 h 40 min, and two of the three do; the third rubs one and polishes three: 8 h, until 17:00,
  // which is 32 h after the start. Any other way somebody rubs two and polishes two, or rubs one and polishes four: 9 h 20
  // and 9 h 40; or rubs three: 9 h.
  const input: ScheduleInput = {
    calendar: { hours: days([1, 2, 3, 4, 5], 9, 18), closed: [], crew: 3 },
    start: "2027-03-08",
    chains: Array.from({ length: 5 }, (_, at): Chain => {
      const key = `piece ${at}`;
      return {
        key,
        items: [
          task(`${key} sand`, 120, "sand"),
          task(`${key} coat`, 60, "coat"),
          { kind: "wait", id: `${key} dry`, hours: 12 },
          task(`${key} rub`, 180, "rub"),
          task(`${key} polish`, 100, "polish"),
        ],
      };
    }),
  };
  const plan = planSessions(input)!;
  expect(sessionWrongsOf(input, plan)).toEqual([]);
  expect(plan.lastWorkHours).toBe(32);
});
