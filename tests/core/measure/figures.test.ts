/** The one format of each kind of figure; expected texts are written out by hand from the numbers beside them. */
import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import {
  airText,
  areaText,
  cansText,
  cents,
  dayText,
  degreesText,
  exactArea,
  exactFilm,
  exactLitres,
  filmText,
  gramsText,
  humidityText,
  litresText,
  momentText,
  moneyText,
  monthDayText,
  percentText,
  printed,
  shortMomentText,
  thicknessText,
  timeText,
  weekdayText,
} from "../../../server/src/core/measure/figures.ts";
import { figuresIn, UNIT_SYSTEMS } from "../../../server/src/core/measure/shown-figures.ts";

test("litres: in millilitres under a tenth, with four decimals in sums", () => {
  expect([0.0405, 0.1, 0.254, 1.2, 12.34].map(litresText)).toEqual([
    "41 mL",
    "0.1 L",
    "0.25 L",
    "1.2 L",
    "12.3 L",
  ]);
  expect(exactLitres(1 / 15)).toBe("0.0667 L");
  expect(
    cansText([
      { count: 2, litres: 0.946 },
      { count: 1, litres: 0.375 },
    ]),
  ).toBe("2 × 0.946 L + 1 × 0.375 L");
});

test("areas, films, thicknesses, grams and shares", () => {
  expect([areaText(1.7816), exactArea(1.78164)]).toEqual(["1.78 m2", "1.7816 m2"]);
  expect([filmText(33.34), exactFilm(33.34)]).toEqual(["33 um", "33.3 um"]);
  expect([thicknessText(0.6), gramsText(43.4), gramsText(1097), percentText(12.5)]).toEqual([
    "0.6 mm",
    "43 g",
    "1097 g",
    "12.5 %",
  ]);
});

test("air: as much of it as is known", () => {
  expect(airText({ temperature: 15, humidity: 60 })).toBe("15 C and 60 % RH");
  expect(airText({ temperature: 15.5 })).toBe(degreesText(15.5));
  expect([degreesText(15.5), humidityText(62.5)]).toEqual(["15.5 C", "62.5 % RH"]);
});

test("money has two decimals, never a minus sign before nothing, and only letters and signs of a currency", () => {
  expect(moneyText(112)).toBe("112.00");
  expect(moneyText(1.005, "EUR")).toBe("1.01 EUR");
  expect(moneyText(-0.001, "EUR")).toBe("0.00 EUR");
  expect(moneyText(1, "E\u001b[1m")).toBe("1.00 E\ufffd\ufffd1m");
  expect([cents(2.675), printed(0.1 + 0.2)]).toEqual([2.68, 0.3]);
});

test("dates have their weekday, day, month and year; short ones leave the year out", () => {
  const iso = "2027-03-08T09:05";
  expect(momentText(iso)).toBe("Mon 8 Mar 2027 09:05");
  expect(momentText("2027-03-08")).toBe("Mon 8 Mar 2027");
  expect(dayText(iso)).toBe("Mon 8 Mar 2027");
  expect(shortMomentText(iso)).toBe("Mon 8 Mar 09:05");
  expect([monthDayText(iso), timeText(iso), timeText("2027-03-08")]).toEqual(["8 Mar", "09:05", ""]);
});

test("weekdays are those of an independent calendar, leap years and ends of centuries among them", () => {
  const names = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
  for (const iso of ["1900-02-28", "2000-02-29", "2026-12-31", "2027-01-01", "2028-02-29", "2100-03-01"]) {
    expect(weekdayText(iso)).toBe(names[Temporal.PlainDate.from(iso).dayOfWeek - 1]);
  }
});

describe("an area of many", () => {
  test.each([
    // 2 × 1.1847 = 2.3694; told as 2.37, which 2 × 1.18 = 2.36 does not come to.
    [2, 1.1847, "2 × 1.185 m2 = 2.37 m2"],
    [2, 1.7816, "2 × 1.78 m2 = 3.56 m2"],
    [6, 0.0787, "6 × 0.079 m2 = 0.47 m2"],
    [1, 1.1847, "1.18 m2"],
  ])("%d of %d m2", (count, m2, said) => {
    expect(figuresIn("metric").areaOfMany(count, m2)).toBe(said);
  });

  test("comes to what is shown when it is multiplied, in both systems", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        (count, m2) => {
          for (const units of UNIT_SYSTEMS) {
            const { area, areaOfMany } = figuresIn(units);
            const [, one, all, unit] = /× ([\d.]+) \S+ = ([\d.]+) (\S+)$/u.exec(areaOfMany(count, m2))!;
            expect(`${all} ${unit}`).toBe(area(count * m2));
            // As far as the decimals that are shown of all go.
            const decimals = all!.split(".")[1]?.length ?? 0;
            expect(Math.abs(count * Number(one) - Number(all))).toBeLessThanOrEqual(
              0.5 * 10 ** -decimals + 1e-9,
            );
          }
        },
      ),
    );
  });
});
