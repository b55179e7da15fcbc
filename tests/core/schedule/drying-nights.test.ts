/** Drying in the air of days and nights: by hand, and minute by minute in random shops. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { OpeningSpan } from "../../../server/src/core/model/model.ts";
import { hoursThroughNights } from "../../../server/src/core/schedule/drying-nights.ts";
import { makeOpenMinute, minuteOf } from "./open-hours.ts";

const spans = (weekdays: readonly number[], opens: number, closes: number): readonly OpeningSpan[] =>
  weekdays.map((weekday) => ({ weekday, opens: opens * 60, closes: closes * 60 }));
const EVERY_DAY = [1, 2, 3, 4, 5, 6, 7];
/** Nights of 16 h. */
const nineToFive = spans(EVERY_DAY, 9, 17);

describe("for work that goes on", () => {
  test("what dries in a night alone takes the day's time", () => {
    expect(hoursThroughNights(4, 16, nineToFive, true)).toBe(4);
    expect(hoursThroughNights(7, 10, nineToFive, true)).toBe(7);
  });
  test("what does not takes a night, and the rest by day", () => {
    // From 17:00: 16 h of 24 h by night are 2/3, and a third of 12 h by day is 4 h: 16 + 4.
    expect(hoursThroughNights(12, 24, nineToFive, true)).toBeCloseTo(20, 9);
    // Over a weekend it is dry in the night whatever comes, so the weeknights count.
    expect(hoursThroughNights(12, 24, spans([1, 2, 3, 4, 5], 9, 17), true)).toBeCloseTo(20, 9);
  });
  test("where every night dries it, only a start that is dry at a closing counts", () => {
    // One day a week: from 17:00 on Monday it dries in the 160 h of night; begun at 09:00 or later it is never dry by day.
    expect(hoursThroughNights(12, 100, spans([1], 9, 17), true)).toBe(12);
  });
  test("a pause for lunch is no night", () => {
    const lunch = [...spans(EVERY_DAY, 9, 12), ...spans(EVERY_DAY, 13, 17)];
    expect(hoursThroughNights(12, 24, lunch, true)).toBeCloseTo(20, 9);
    // What dries in an hour by day does so over an hour's pause too, though by night it took two.
    expect(hoursThroughNights(1, 2, [...spans([1], 8, 9), ...spans([1], 6, 7)], true)).toBe(1);
  });
  test("without a night that is known the worse air counts throughout", () => {
    expect(hoursThroughNights(4, 9, undefined, true)).toBe(9);
    expect(hoursThroughNights(4, 9, [], true)).toBe(9);
  });
});

test("what nobody waits for takes the longest that it can", () => {
  // From Friday 17:00 it is night for 64 h.
  expect(hoursThroughNights(12, 24, spans([1, 2, 3, 4, 5], 9, 17), false)).toBeCloseTo(24, 9);
  // A day and a night of 8 and 16 h are 8/100 + 16/200 of it: 0.16. After 6 there are 0.04 left, 8 h of the next night.
  expect(hoursThroughNights(100, 200, nineToFive, false)).toBeCloseTo(6 * 24 + 8, 9);
  // 168 h of a week are 7 · 0.16 = 1.12 of it, so twice that drying takes a week, and of the 0.88 left five days 0.8, and
  // 0.08 in all of the next night.
  expect(hoursThroughNights(200, 400, nineToFive, false)).toBeCloseTo(12 * 24 + 16, 9);
});

/** What is closed for less than six hours at a stretch is part of the day, as the head of the module says. */
function withPauses(isOpen: (minute: number) => boolean, zero: number): (minute: number) => boolean {
  const week = Array.from({ length: 10_080 }, (_, i) => isOpen(zero + i));
  const first = week.indexOf(true);
  let closed = 0;
  // Once around from an open minute, and back to it.
  for (let step = 1; step <= week.length; step++) {
    const at = (first + step) % week.length;
    if (!week[at]) closed += 1;
    else {
      if (closed < 360)
        for (let back = 1; back <= closed; back++) week.splice((at - back + 10_080) % 10_080, 1, true);
      closed = 0;
    }
  }
  return (minute) => week[(((minute - zero) % 10_080) + 10_080) % 10_080]!;
}

test("as long as drying minute by minute in random shops, whenever it begins", () => {
  const hours = fc.array(
    fc
      .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 6, max: 11 }), fc.integer({ min: 1, max: 12 }))
      .map(([weekday, opens, length]) => ({ weekday, opens: opens * 60, closes: (opens + length) * 60 })),
    { minLength: 1, maxLength: 6 },
  );
  const figures = fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 120 }));
  fc.assert(
    fc.property(hours, figures, fc.boolean(), (open, [byDay, more], forWork) => {
      const byNight = byDay + more;
      const zero = minuteOf("2027-03-08");
      const isOpen = withPauses(makeOpenMinute({ hours: open, closed: [], crew: 1 }), zero);
      let longest = byDay * 60;
      for (let begun = zero; begun < zero + 10_080; begun += 10) {
        if (!isOpen(begun) && !isOpen(begun - 1)) continue;
        let dry = 0;
        let minute = begun;
        for (; dry < 1 - 1e-9; minute++) dry += 1 / 60 / (isOpen(minute) ? byDay : byNight);
        if (!forWork || isOpen(minute - 1)) longest = Math.max(longest, minute - begun);
      }
      const found = hoursThroughNights(byDay, byNight, open, forWork) * 60;
      // Minutes and starts ten minutes apart are coarser by so much.
      expect(found).toBeGreaterThanOrEqual(longest - 2);
      expect(found).toBeLessThanOrEqual(longest + 12);
    }),
    { numRuns: 40, seed: 5 },
  );
});
