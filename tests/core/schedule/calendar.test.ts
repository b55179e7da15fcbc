/**
 * Opening hours: hand-worked moments, odd calendars (leap day, year end, Saturday half day, past midnight), and the
 * arithmetic against counting every minute.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { OpeningSpan } from "../../../server/src/core/model/model.ts";
import {
  addWorkingTime,
  dayNumber,
  firstOpeningAtLeast,
  fitsSomeSpan,
  hourMs,
  isOpen,
  makeShopTime,
  minimumOvernightHours,
  minuteMs,
  nextOpening,
  workingTimeBetween,
} from "../../../server/src/core/schedule/calendar.ts";
import { makeOpenMinute, minuteOf } from "./open-hours.ts";

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
    rested: (text: string) => write(firstOpeningAtLeast(shop, read(text), 12 * hourMs)),
    worked: (text: string, hours: number) => write(addWorkingTime(shop, read(text), hours * hourMs)),
    between: (from: string, to: string) => workingTimeBetween(shop, read(from), read(to)) / hourMs,
    isOpen: (text: string) => isOpen(shop, read(text)),
  };
}

describe("Monday to Friday 09:00 to 17:00", () => {
  const shop = shopFrom("2027-03-08", weekdays); // a Monday

  test("opens at nine and is closed at seventeen sharp", () => {
    expect(shop.opening("2027-03-08 03:00")).toBe("2027-03-08 09:00");
    expect(shop.opening("2027-03-08 12:34")).toBe("2027-03-08 12:34");
    expect(shop.opening("2027-03-08 17:00")).toBe("2027-03-09 09:00");
    expect(shop.opening("2027-03-12 17:00")).toBe("2027-03-15 09:00"); // Friday evening
    expect(shop.isOpen("2027-03-08 09:00")).toBe(true);
    expect(shop.isOpen("2027-03-08 16:59")).toBe(true);
    expect(shop.isOpen("2027-03-08 17:00")).toBe(false);
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
    expect(shop.rested("2027-03-11 22:00")).toBe("2027-03-12 10:00"); // open when the rest is over
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
  expect(minimumOvernightHours(spans(everyDay, 9, 17))).toBe(16); // 17:00 to 09:00
  expect(minimumOvernightHours(weekdays)).toBe(16);
  expect(minimumOvernightHours(undefined)).toBe(12);
  expect(minimumOvernightHours(spans(everyDay, 0, 24))).toBe(12);
  expect(minimumOvernightHours(spans(everyDay, 6, 22))).toBe(12); // 18:00 to 06:00
  expect(minimumOvernightHours(spans([3], 9, 17))).toBe(160); // Wednesday 17:00 to 09:00 in a week: 168 − 8
  expect(minimumOvernightHours([])).toBe(Number.POSITIVE_INFINITY);
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
      let end = from;
      for (let left = 300; left > 0; end++) if (isOpenMinute(zero + end)) left--;
      expect(addWorkingTime(shop, from * minuteMs, 300 * minuteMs)).toBe(end * minuteMs);
    }),
    { numRuns: 300, seed: 1 },
  );
});
