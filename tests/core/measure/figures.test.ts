/** The one format of each kind of figure; expected texts are written out by hand from the numbers beside them. */
import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
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
