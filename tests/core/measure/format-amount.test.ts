/** Amounts as people read them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  formatAmount,
  formatDuration,
  formatWork,
  roundTo,
  spokenDuration,
} from "../../../server/src/core/measure/format-amount.ts";
import { readQuantity } from "../../../server/src/core/measure/read-quantity.ts";
import type { Dimension } from "../../../server/src/core/measure/units.ts";
import { quantityOf } from "./quantity-of.ts";

test.each([
  ["area", 1.782, "1.78 m2"],
  ["area", 0.0012, "0.0012 m2"],
  ["area", 0.0564, "0.056 m2"],
  ["area", 0, "0 m2"],
  ["volume", 0.25, "0.25 L"],
  ["volume", 0.05, "50 mL"],
  ["volume", 1.17612, "1.18 L"],
  ["volume", 12.34, "12.3 L"],
  ["time", 36, "36 h"],
  ["time", 0.5, "30 min"],
  ["time", 504, "21 days"],
  ["length", 0.1, "100 um"],
  ["length", 1800, "1800 mm"],
  ["temperature", 21, "21 C"],
  ["temperature", -5.04, "-5 C"],
  ["density", 180, "180 g/L"],
  ["spreading rate", 9.8169547, "9.8 m2/L"],
  ["mass", 2500, "2.5 kg"],
  ["share", 33.3333, "33.3 %"],
  ["air flow", 169.9, "170 m3/h"],
  ["air change", 2, "2 air changes/h"],
  ["time by area", 0.25, "15 min/m2"],
  ["number", 3, "3"],
  ["volume", Number.NaN, "unknown"],
] as const)("%s of %d", (dimension, value, expected) => {
  expect(formatAmount({ dimension, value })).toBe(expected);
});

test("full figures for a working", () => {
  expect(formatAmount({ dimension: "area", value: 1.782 }, "full")).toBe("1.782 m2");
  expect(formatAmount({ dimension: "volume", value: 1.17612 }, "full")).toBe("1.17612 L");
});

describe("durations", () => {
  test.each([
    [0, "0 min"],
    [1 / 120, "1 min"],
    [0.005, "18 s"],
    [0.5, "30 min"],
    [2.5, "2 h 30 min"],
    [24, "1 day"],
    [28, "1 day 4 h"],
    [36, "1 day 12 h"],
    [504, "21 days"],
    [23.999, "1 day"],
    [-2, "-2 h"],
    [Number.POSITIVE_INFINITY, "unknown"],
  ])("%d h", (hours, expected) => {
    expect(formatDuration(hours)).toBe(expected);
  });

  /** 141 days / 30.4375 = 4.63; 1461 days are four years. */
  test.each([
    [141 * 24, "about 5 months"],
    [60 * 24, "about 2 months"],
    [59 * 24 + 3, "59 days 3 h"],
    [1461 * 24, "about 4 years"],
    [2.5, "2 h 30 min"],
  ])("%d h in a message", (hours, expected) => {
    expect(spokenDuration(hours)).toBe(expected);
  });

  test("can be typed back, within half of the last part", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), (hours) => {
        const read = readQuantity(quantityOf(formatDuration(hours)), ["time"]);
        expect(read.ok && Math.abs(read.amount.value - hours)).toBeLessThanOrEqual(
          hours < 24 ? 1 / 119 : 0.51,
        );
      }),
    );
  });
});

test("rounded amounts can be typed back and differ by little", () => {
  const dimensions: Dimension[] = [
    "length",
    "area",
    "volume",
    "time",
    "mass",
    "density",
    "spreading rate",
    "share",
  ];
  fc.assert(
    fc.property(
      fc.constantFrom(...dimensions),
      fc.double({ min: 0.02, max: 1e5, noNaN: true }),
      (dimension, value) => {
        const read = readQuantity(quantityOf(formatAmount({ dimension, value })), [dimension]);
        expect(read.ok && Math.abs(read.amount.value - value) / value).toBeLessThanOrEqual(0.0501);
      },
    ),
  );
});

test("halves go away from zero, whatever the last bit says", () => {
  expect(roundTo(1.005, 2)).toBe(1.01);
  expect(roundTo(-2.5, 0)).toBe(-3);
  expect(roundTo(0.1 + 0.2, 1)).toBe(0.3);
});

describe("hours of work", () => {
  test.each([
    [0.5, "30 min"],
    [8, "8 h"],
    // 36 · 60 + 25 = 2185 min.
    [2185 / 60, "36 h 25 min"],
    [240, "240 h"],
    [Number.NaN, "unknown"],
  ])("%d h is %s, never days", (hours, text) => expect(formatWork(hours)).toBe(text));
});
