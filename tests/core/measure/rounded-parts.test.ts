/** Printed parts add up to the printed sum. Worked by hand, then for any parts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { roundedParts } from "../../../server/src/core/measure/rounded-parts.ts";

describe("by hand", () => {
  test("a third of a euro three times is one euro", () => {
    expect(roundedParts([1 / 3, 1 / 3, 1 / 3], 2)).toEqual([0.34, 0.33, 0.33]);
  });

  test("the one that lost most is rounded up", () => {
    // 255.4 + 327.3 + 94.6 + 140.9 = 818.2: down they are 816, so two are missing: 140.9 and 94.6 lost most.
    expect(roundedParts([255.4, 327.3, 94.6, 140.9], 0)).toEqual([255, 327, 95, 141]);
    // 0.5 + 0.5 + 0.5 = 1.5, rounded 2: two of three are 1.
    expect(roundedParts([0.5, 0.5, 0.5], 0)).toEqual([1, 1, 0]);
  });

  test("a total that is given is met", () => {
    expect(roundedParts([33.333, 33.333, 33.333], 2, 100)).toEqual([33.34, 33.33, 33.33]);
    expect(roundedParts([1.005, 1.005], 2, 2)).toEqual([1, 1]);
  });

  test("what is exact stays as it is", () => {
    expect(roundedParts([0.1, 0.2, 19.6], 2)).toEqual([0.1, 0.2, 19.6]);
    expect(roundedParts([], 2)).toEqual([]);
  });
});

test("for any parts: they add up, and none is off by a unit", () => {
  const part = fc.double({ min: 0, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(fc.array(part, { maxLength: 30 }), fc.integer({ min: 0, max: 4 }), (parts, decimals) => {
      const rounded = roundedParts(parts, decimals);
      const unit = 10 ** -decimals;
      // Integers of the last decimal, so that the sums of this test are exact.
      const units = rounded.map((value) => Math.round(value / unit));
      const total = parts.reduce((sum, value) => sum + value, 0) / unit;
      expect(Math.abs(units.reduce((sum, value) => sum + value, 0) - total)).toBeLessThanOrEqual(0.5 + 1e-3);
      parts.forEach((value, index) => {
        expect(Math.abs(rounded[index]! - value)).toBeLessThan(unit * 1.001);
      });
    }),
  );
});
