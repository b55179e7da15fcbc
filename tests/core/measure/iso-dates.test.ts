/** Dates by an independent library: what `Temporal` says of days, times and moments after others. */
import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import { dayAfter, dayIn, isDate, momentAfter, timeIn } from "../../../server/src/core/measure/iso-dates.ts";

const RUNS = { numRuns: 300, seed: 20271 };
const dates = fc
  .integer({ min: -700_000, max: 2_900_000 })
  .map((days) => Temporal.PlainDate.from("1970-01-01").add({ days }).toString())
  .filter((text) => text.length === 10);
const times = fc
  .integer({ min: 0, max: 86_399 })
  .map((seconds) => new Temporal.PlainTime().add({ seconds }).toString({ smallestUnit: "second" }));

describe("as Temporal has them", () => {
  test("days and the day after", () => {
    fc.assert(
      fc.property(dates, (text) => {
        const date = Temporal.PlainDate.from(text);
        expect(dayIn(text)).toBe(
          Temporal.PlainDate.from("1970-01-01").until(date, { largestUnit: "day" }).days,
        );
        expect(dayAfter(text)).toBe(date.add({ days: 1 }).toString());
      }),
      RUNS,
    );
  });

  test.each(["second", "minute"] as const)("moments after others, to the %s", (smallestUnit) => {
    fc.assert(
      fc.property(dates, times, fc.integer({ min: -9_000_000, max: 9_000_000 }), (date, time, seconds) => {
        const text = `${date}T${time}`;
        const moment = Temporal.PlainDateTime.from(text);
        expect(momentAfter(text, seconds, smallestUnit)).toBe(
          moment.add({ seconds }).toString({ smallestUnit }),
        );
        const midnight = moment.withPlainTime();
        expect(timeIn(text)).toBe(midnight.until(moment).total("milliseconds"));
      }),
      RUNS,
    );
  });

  test("what is no day is none", () => {
    for (const text of ["2027-02-29", "2027-13-01", "2027-00-10", "2027-03-32", "tomorrow", "", "2027-3-8"]) {
      expect(() => Temporal.PlainDate.from(text), text).toThrow(RangeError);
      expect(isDate(text), text).toBe(false);
      expect(() => dayIn(text), text).toThrow(RangeError);
    }
    expect(isDate("2028-02-29")).toBe(true);
    expect(() => timeIn("2027-03-08T24:00")).toThrow(RangeError);
    expect(() => timeIn("2027-03-08T12:60")).toThrow(RangeError);
  });
});
