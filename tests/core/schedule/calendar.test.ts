/**
 * Opening hours: hand-worked moments, odd calendars (leap day, year end, Saturday half day, past midnight), and the
 * arithmetic against counting every minute.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { OpeningSpan } from "../../../server/src/core/model/model.ts";
import {
  dayNumber,
  endAfterWork,
  fitsSomeSpan,
  hourMs,
  lastOpening,
  latestBeforeNightEnd,
  makeShopTime,
  minimumClosedHours,
  minimumOvernightHours,
  minuteMs,
  nextOpening,
  nightEnd,
  type ShopTime,
  touchOpening,
  workingTimeBefore,
  workingTimeBetween,
} from "../../../server/src/core/schedule/calendar.ts";
import { makeOpenMinute, minuteOf, morningAfter } from "./open-hours.ts";

/** The end of `work` begun at `time` or at the next opening, pausing at each closing. */
function addWorkingTime(shop: ShopTime, time: number, work: number): number {
  return work === 0 ? touchOpening(shop, time) : endAfterWork(shop, workingTimeBefore(shop, time) + work);
}

const weekdays = spans([1, 2, 3, 4, 5], 9, 17);
const withSaturday = [...weekdays, ...spans([6], 9, 13)];

function spans(days: readonly number[], opens: number, closes: number): readonly OpeningSpan[] {
  return days.map((weekday) => ({ weekday, opens: opens * 60, closes: closes * 60 }));
}

/** A shop whose functions take and give local date-times. */
function shopFrom(
  day: string,
  hours: readonly OpeningSpan[] | undefined,
  closed: readonly { from: string; to: string }[] = [],
) {
  const shop = makeShopTime({ hours, closed }, dayNumber(day)!);
  const read = (text: string): number => (minuteOf(text) - minuteOf(day)) * minuteMs;
  const write = (time: number): string =>
    new Date(minuteOf(day) * minuteMs + time).toISOString().slice(0, 16).replace("T", " ");
  return {
    opening: (text: string) => write(nextOpening(shop, read(text))),
    rested: (text: string) => write(nightEnd(shop, read(text), 12 * hourMs)),
    worked: (text: string, hours: number) => write(addWorkingTime(shop, read(text), hours * hourMs)),
    between: (from: string, to: string) => workingTimeBetween(shop, read(from), read(to)) / hourMs,
  };
}

describe("Monday to Friday 09:00 to 17:00", () => {
  const shop = shopFrom("2027-03-08", weekdays); // a Monday

  test("opens at nine and is closed at seventeen sharp", () => {
    expect(shop.opening("2027-03-08 03:00")).toBe("2027-03-08 09:00");
    expect(shop.opening("2027-03-08 12:34")).toBe("2027-03-08 12:34");
    expect(shop.opening("2027-03-08 17:00")).toBe("2027-03-09 09:00");
    expect(shop.opening("2027-03-12 17:00")).toBe("2027-03-15 09:00"); // Friday evening
    expect(shop.opening("2027-03-08 16:59")).toBe("2027-03-08 16:59");
  });

  test("work pauses at closing and ends at closing when it just fits", () => {
    expect(shop.worked("2027-03-08 09:00", 8)).toBe("2027-03-08 17:00");
    expect(shop.worked("2027-03-08 09:00", 10)).toBe("2027-03-09 11:00"); // 8 h on Monday, 2 h on Tuesday
    expect(shop.worked("2027-03-12 16:00", 2)).toBe("2027-03-15 10:00"); // 1 h Friday, 1 h Monday
    expect(shop.worked("2027-03-08 09:00", 40)).toBe("2027-03-12 17:00");
    expect(shop.worked("2027-03-08 09:00", 401)).toBe("2027-05-17 10:00"); // ten weeks and an hour
    expect(shop.between("2027-03-12 15:00", "2027-03-15 10:30")).toBe(3.5);
  });

  test("twelve hours' rest lead to the next opening", () => {
    expect(shop.rested("2027-03-08 16:00")).toBe("2027-03-09 09:00");
    expect(shop.rested("2027-03-12 16:00")).toBe("2027-03-15 09:00"); // Friday to Monday
    // 21:00 and 12 h are 09:00 sharp; from 21:01 on Friday's opening is less than 12 h away, and 09:01 is not.
    expect(shop.rested("2027-03-11 21:00")).toBe("2027-03-12 09:00");
    expect(shop.rested("2027-03-11 21:01")).toBe("2027-03-12 09:01");
  });
});

describe("a night ends at the next morning's opening, or 12 h later where that is after it", () => {
  const everyDay = [1, 2, 3, 4, 5, 6, 7];

  test("long days: from 19:00 the opening at 06:00 is only 11 h away", () => {
    const shop = shopFrom("2027-03-08", spans(everyDay, 6, 22));
    expect(shop.rested("2027-03-08 18:00")).toBe("2027-03-09 06:00"); // 12 h
    expect(shop.rested("2027-03-08 19:00")).toBe("2027-03-09 07:00"); // 12 h, and no second night
    expect(shop.rested("2027-03-08 06:30")).toBe("2027-03-09 06:00"); // open all the 12 h, and yet a night
  });

  test("several openings a day: the afternoon's counts as well", () => {
    const shop = shopFrom("2027-03-08", [
      ...spans([1, 2, 3, 4, 5], 8, 12),
      ...spans([1, 2, 3, 4, 5], 13, 18),
    ]);
    expect(shop.rested("2027-03-08 18:00")).toBe("2027-03-09 08:00"); // 14 h
    expect(shop.rested("2027-03-08 23:00")).toBe("2027-03-09 11:00"); // 12 h, within the morning
    expect(shop.rested("2027-03-09 02:00")).toBe("2027-03-10 08:00"); // 14:00 is within the afternoon
    expect(shop.rested("2027-03-12 18:00")).toBe("2027-03-15 08:00"); // Friday to Monday
  });

  test("closed days have no opening", () => {
    const shop = shopFrom("2027-03-22", withSaturday, [{ from: "2027-03-26", to: "2027-03-29" }]);
    expect(shop.rested("2027-03-25 17:00")).toBe("2027-03-30 09:00"); // Good Friday to Easter Monday
  });

  test("past midnight the opening is in the evening", () => {
    const shop = shopFrom("2027-03-08", [
      { weekday: 1, opens: 22 * 60, closes: 6 * 60 },
      { weekday: 2, opens: 22 * 60, closes: 6 * 60 },
    ]);
    expect(shop.rested("2027-03-09 05:00")).toBe("2027-03-09 22:00"); // 17 h
    expect(shop.rested("2027-03-09 10:01")).toBe("2027-03-15 22:00"); // 22:01 is past Tuesday's, so Monday's
  });

  test("open day and night there is none, and twelve hours are a night", () => {
    const always = shopFrom("2027-03-08", undefined, [{ from: "2027-03-10", to: "2027-03-10" }]);
    expect(always.rested("2027-03-08 20:00")).toBe("2027-03-09 08:00");
    expect(always.rested("2027-03-09 20:00")).toBe("2027-03-11 00:00"); // 08:00 is on the closed day
    const working = shopFrom("2027-03-08", spans([1, 2, 3, 4, 5], 0, 24));
    expect(working.rested("2027-03-09 20:00")).toBe("2027-03-10 08:00");
    expect(working.rested("2027-03-12 11:59")).toBe("2027-03-12 23:59");
    expect(working.rested("2027-03-12 12:00")).toBe("2027-03-15 00:00"); // closed from Friday's midnight
    // One day round the clock, 24 h, is day and night; 23 h are not.
    expect(shopFrom("2027-03-08", spans([1], 0, 24)).rested("2027-03-08 03:00")).toBe("2027-03-08 15:00");
    expect(shopFrom("2027-03-08", spans([1], 0, 23)).rested("2027-03-08 03:00")).toBe("2027-03-15 00:00");
  });

  test("a night of less than 12 h is not skipped: work goes on 12 h later", () => {
    const shop = shopFrom("2027-03-08", spans([1, 2, 3, 4, 5], 7, 20));
    expect(shop.rested("2027-03-08 19:00")).toBe("2027-03-09 07:00");
    expect(shop.rested("2027-03-08 19:30")).toBe("2027-03-09 07:30");
    expect(shop.rested("2027-03-08 20:00")).toBe("2027-03-09 08:00");
    // 12 h later it is still the same day.
    expect(shop.rested("2027-03-08 07:30")).toBe("2027-03-09 07:00");
  });

  test("the last opening at or before a moment is the way back", () => {
    const shop = makeShopTime({ hours: weekdays, closed: [] }, dayNumber("2027-03-08")!);
    expect(lastOpening(shop, 9 * hourMs - 1)).toBeUndefined();
    expect(lastOpening(shop, 9 * hourMs)).toBe(9 * hourMs);
    expect(lastOpening(shop, 33 * hourMs - 1)).toBe(9 * hourMs); // Tuesday 08:59
    expect(lastOpening(shop, 40 * hourMs)).toBe(33 * hourMs);
    const working = makeShopTime(
      { hours: spans([1, 2, 3, 4, 5], 0, 24), closed: [] },
      dayNumber("2027-03-08")!,
    );
    expect(lastOpening(working, 40 * hourMs)).toBe(40 * hourMs);
    expect(lastOpening(working, 130 * hourMs)).toBe(120 * hourMs - 1); // Saturday 10:00: Friday, just before midnight
    expect(lastOpening(makeShopTime({ hours: [], closed: [] }, 0), 0)).toBeUndefined();
  });
});

describe("closed days, half days and odd years", () => {
  test("closed ranges include both ends and may overlap", () => {
    const shop = shopFrom("2027-03-22", withSaturday, [
      { from: "2027-03-26", to: "2027-03-29" },
      { from: "2027-03-28", to: "2027-03-30" },
      { from: "2027-02-30", to: "2027-04-30" }, // no date: left out
    ]);
    expect(shop.opening("2027-03-25 17:00")).toBe("2027-03-31 09:00");
    expect(shop.worked("2027-03-25 16:00", 2)).toBe("2027-03-31 10:00");
  });

  test("Saturday closes at thirteen", () => {
    const shop = shopFrom("2027-03-08", withSaturday);
    expect(shop.worked("2027-03-13 12:00", 2)).toBe("2027-03-15 10:00");
    expect(shop.between("2027-03-08 00:00", "2027-03-15 00:00")).toBe(44); // 5 · 8 + 4
  });

  test("leap days and year ends are days like others", () => {
    const leap = shopFrom("2028-02-28", weekdays); // Monday; the 29th is a Tuesday
    expect(leap.worked("2028-02-28 09:00", 20)).toBe("2028-03-01 13:00");
    const year = shopFrom("2027-12-30", weekdays, [{ from: "2027-12-31", to: "2028-01-01" }]); // Thursday
    expect(year.worked("2027-12-30 16:00", 2)).toBe("2028-01-03 10:00");
  });

  test("past midnight, day and night, and never", () => {
    const night = shopFrom("2027-03-08", [{ weekday: 1, opens: 22 * 60, closes: 6 * 60 }]);
    expect(night.worked("2027-03-08 22:00", 7)).toBe("2027-03-09 05:00");
    expect(night.worked("2027-03-08 22:00", 9)).toBe("2027-03-15 23:00");
    const always = shopFrom("2027-03-08", undefined, [{ from: "2027-03-10", to: "2027-03-10" }]);
    expect(always.worked("2027-03-08 00:00", 49)).toBe("2027-03-11 01:00"); // two days, a closed day, an hour
    expect(nextOpening(makeShopTime({ hours: [], closed: [] }, 0), 0)).toBe(Number.POSITIVE_INFINITY);
  });

  test("work fits a span up to the longest of the week", () => {
    const shop = makeShopTime({ hours: withSaturday, closed: [] }, 0);
    expect(fitsSomeSpan(shop, 8 * hourMs)).toBe(true);
    expect(fitsSomeSpan(shop, 8 * hourMs + 1)).toBe(false);
    const joined = makeShopTime({ hours: [...spans([1], 9, 12), ...spans([1], 12, 17)], closed: [] }, 0);
    expect(fitsSomeSpan(joined, 8 * hourMs)).toBe(true);
  });
});

test("the shortest night of a shop", () => {
  const everyDay = [1, 2, 3, 4, 5, 6, 7];
  expect(minimumOvernightHours(spans(everyDay, 9, 17), 0)).toBe(16); // 17:00 to 09:00
  expect(minimumOvernightHours(weekdays, 0)).toBe(16);
  expect(minimumOvernightHours(undefined, 0)).toBe(12);
  expect(minimumOvernightHours(spans(everyDay, 0, 24), 0)).toBe(12);
  expect(minimumOvernightHours(spans([1, 2, 3, 4, 5], 0, 24), 0)).toBe(12);
  expect(minimumOvernightHours(spans(everyDay, 6, 22), 0)).toBe(12); // 18:00 to 06:00
  expect(minimumOvernightHours(spans([3], 9, 17), 0)).toBe(160); // Wednesday 17:00 to 09:00 in a week: 168 − 8
  expect(minimumOvernightHours([], 0)).toBe(Number.POSITIVE_INFINITY);
});

test("the shortest night that begins some hours after a task", () => {
  const everyDay = [1, 2, 3, 4, 5, 6, 7];
  expect(minimumOvernightHours(spans(everyDay, 9, 17), 3)).toBe(13); // 17:00, 20:00, 09:00
  expect(minimumOvernightHours(spans(everyDay, 9, 17), 5)).toBe(12); // 16:00, 21:00, 09:00
  // 09:00, 07:00 the next day, 19:00, 09:00 the day after: 26 h; from 17:00 it is 15:00, 03:00, 09:00: 18 h.
  expect(minimumOvernightHours(spans(everyDay, 9, 17), 22)).toBe(18);
  expect(minimumOvernightHours(spans(everyDay, 9, 17), 168 + 3)).toBe(13); // a week later the same
  expect(minimumOvernightHours(undefined, 7)).toBe(12);
  expect(minimumOvernightHours(spans(everyDay, 9, 17))).toBe(12); // begun at any time
  expect(minimumOvernightHours(spans(everyDay, 9, 17), Number.POSITIVE_INFINITY)).toBe(12);
});

test("how long a shop is surely still closed some hours after a task", () => {
  const everyDay = [1, 2, 3, 4, 5, 6, 7];
  expect(minimumClosedHours(spans(everyDay, 9, 17), 9)).toBe(7); // 17:00, 02:00, 09:00
  expect(minimumClosedHours(spans(everyDay, 9, 17), 8)).toBe(8); // 17:00, 01:00, 09:00
  expect(minimumClosedHours(spans(everyDay, 9, 17), 16)).toBe(0); // 17:00, 09:00
  expect(minimumClosedHours(spans(everyDay, 9, 17), 3)).toBe(0);
  expect(minimumClosedHours(undefined, 9)).toBe(0);
  expect(minimumClosedHours([], 9)).toBe(0);
});

test("no night of a random shop is shorter than the shortest, and one is as short", () => {
  const hours = fc.array(
    fc
      .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 0, max: 23 }), fc.integer({ min: 1, max: 16 }))
      .map(([weekday, opens, length]) => ({
        weekday,
        opens: opens * 60,
        closes: Math.min(24, opens + length) * 60,
      })),
    { minLength: 1, maxLength: 6 },
  );
  fc.assert(
    fc.property(hours, fc.integer({ min: 0, max: 200 }), (open, waited) => {
      const isOpen = makeOpenMinute({ hours: open, closed: [], crew: 1 });
      const zero = minuteOf("2027-03-08");
      let shortest = Number.POSITIVE_INFINITY;
      let shut = Number.POSITIVE_INFINITY;
      for (let hour = 0; hour < 168; hour++) {
        const end = zero + hour * 60;
        if (!isOpen(end) && !isOpen(end - 1)) continue; // within hours, or just closing
        const begun = end + waited * 60;
        let opening = begun;
        while (!isOpen(opening)) opening++;
        shut = Math.min(shut, opening - begun);
        shortest = Math.min(
          shortest,
          morningAfter({ hours: open, closed: [], crew: 1 }, isOpen, begun) - begun,
        );
      }
      expect(minimumOvernightHours(open, waited)).toBe(shortest / 60);
      expect(minimumClosedHours(open, waited)).toBe(shut / 60);
    }),
    { numRuns: 100, seed: 2 },
  );
});

test("agrees with counting minutes in random shops", () => {
  const hours = fc.array(
    fc
      .tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 0, max: 23 }), fc.integer({ min: 1, max: 10 }))
      .map(([weekday, opens, length]) => ({
        weekday,
        opens: opens * 60,
        closes: Math.min(24, opens + length) * 60,
      })),
    { minLength: 1, maxLength: 8 },
  );
  const closed = fc.array(
    fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 3 })).map(([day, more]) => ({
      from: `2028-02-${String(day).padStart(2, "0")}`,
      to: `2028-02-${String(day + more).padStart(2, "0")}`,
    })),
    { maxLength: 3 },
  );
  const moment = fc.integer({ min: 0, max: 30 * 96 }).map((quarter) => quarter * 15);
  fc.assert(
    fc.property(hours, closed, moment, moment, (open, shut, a, b) => {
      const first = "2028-02-01";
      const shop = makeShopTime({ hours: open, closed: shut }, dayNumber(first)!);
      const isOpenMinute = makeOpenMinute({ hours: open, closed: shut, crew: 1 });
      const zero = minuteOf(first);
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      let counted = 0;
      for (let minute = from; minute < to; minute++) if (isOpenMinute(zero + minute)) counted++;
      expect(workingTimeBetween(shop, from * minuteMs, to * minuteMs)).toBe(counted * minuteMs);
      let opening = from;
      while (!isOpenMinute(zero + opening)) opening++;
      expect(nextOpening(shop, from * minuteMs)).toBe(opening * minuteMs);
      const night = morningAfter({ hours: open, closed: shut, crew: 1 }, isOpenMinute, zero + from) - zero;
      expect(nightEnd(shop, from * minuteMs, 12 * hourMs)).toBe(night * minuteMs);
      // And back: the latest moment whose night has ended by then.
      const latest = latestBeforeNightEnd(shop, night * minuteMs, 12 * hourMs)!;
      expect(latest).toBeGreaterThanOrEqual(from * minuteMs);
      expect(nightEnd(shop, latest, 12 * hourMs)).toBeLessThanOrEqual(night * minuteMs);
      expect(nightEnd(shop, latest + 1, 12 * hourMs)).toBeGreaterThan(night * minuteMs);
      let end = from;
      for (let left = 300; left > 0; end++) if (isOpenMinute(zero + end)) left--;
      expect(addWorkingTime(shop, from * minuteMs, 300 * minuteMs)).toBe(end * minuteMs);
    }),
    { numRuns: 300, seed: 1 },
  );
});
