/** How grave a time is that is too short: the boundaries by hand, and that less time is never milder. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SEVERITIES, type Severity } from "../../../server/src/core/findings.ts";
import { isWithinMargin, shortfallLevel, shortfallOf } from "../../../server/src/core/surface/wait-margin.ts";

const stated = (hours: number) => ({ hours, isTypical: false });
const typical = (hours: number) => ({ hours, isTypical: true });

describe("the margin", () => {
  it.each([
    // 5 % of 20 h is 1 h: 19 h are within, a minute less is not.
    [20, 20, undefined],
    [20, 19, "hint"],
    [20, 19 - 1 / 60, "warning"],
    // 5 % of 80 h is 4 h, as much as the most.
    [80, 76, "hint"],
    [80, 76 - 1 / 60, "warning"],
    // 5 % of 504 h would be 25.2 h; 4 h are the most: 500 h are within, 499 h 59 min are not.
    [504, 500, "hint"],
    [504, 500 - 1 / 60, "warning"],
  ] as const)("of %d h after %d h", (needed, had, level) => {
    expect(shortfallLevel("warning", stated(needed), had)).toBe(level);
  });

  it("is a hint 0.1 C below the label's air, where 72 h are waited", () => {
    // 2^(0.1 / 10) = 1.00696; 72 h · 1.00696 = 72.50 h, of which 0.50 h or 0.69 % is missing.
    expect(shortfallLevel("error", stated(72 * 2 ** 0.01), 72)).toBe("hint");
  });

  it("leaves a hint a hint", () => {
    expect(shortfallLevel("hint", stated(20), 1)).toBe("hint");
    expect(shortfallLevel("hint", stated(20), 19.5)).toBe("hint");
  });

  it("can be smaller, never larger", () => {
    // 3 % of 20 h are 0.6 h.
    expect(shortfallLevel("warning", stated(20), 19.4, 3)).toBe("hint");
    expect(shortfallLevel("warning", stated(20), 19.3, 3)).toBe("warning");
    expect(shortfallLevel("warning", stated(20), 18.9, 50)).toBe("warning");
    expect(shortfallLevel("warning", stated(20), 19.999, 0)).toBe("warning");
  });
});

describe("an error on a typical figure", () => {
  it.each([
    // A quarter of 72 h is 18 h: 54 h are enough for a warning, a minute less is an error.
    [54, "warning"],
    [54 - 1 / 60, "error"],
    // 5 % of 72 h are 3.6 h.
    [68.4, "hint"],
    [68.3, "warning"],
  ] as const)("of 72 h after %d h", (had, level) => {
    expect(shortfallLevel("error", typical(72), had)).toBe(level);
  });

  it("is an error beyond the margin where the label states it", () => {
    expect(shortfallLevel("error", stated(72), 54)).toBe("error");
  });
});

describe("properties", () => {
  const hours = fc.double({ min: 0.01, max: 5000, noNaN: true });
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const level = fc.constantFrom<Severity>("error", "warning", "hint");
  const margin = fc.double({ min: 0, max: 5, noNaN: true });
  const gravity = (severity: Severity | undefined): number =>
    severity === undefined ? SEVERITIES.length : SEVERITIES.indexOf(severity);

  it("less time, or a smaller margin, is never milder", () => {
    fc.assert(
      fc.property(
        hours,
        share,
        share,
        level,
        fc.boolean(),
        margin,
        margin,
        (needed, a, b, of, isTypical, m, n) => {
          const time = { hours: needed, isTypical };
          const [less, more] = [Math.min(a, b) * needed, Math.max(a, b) * needed];
          expect(gravity(shortfallLevel(of, time, less, m))).toBeLessThanOrEqual(
            gravity(shortfallLevel(of, time, more, m)),
          );
          expect(gravity(shortfallLevel(of, time, less, Math.min(m, n)))).toBeLessThanOrEqual(
            gravity(shortfallLevel(of, time, less, Math.max(m, n))),
          );
        },
      ),
    );
  });

  it("a hint of a graver rule misses at most 5 % and 4 h", () => {
    fc.assert(
      fc.property(hours, share, (needed, had) => {
        if (!isWithinMargin(shortfallOf({ hours: needed }, had * needed))) return;
        expect(needed - had * needed).toBeLessThanOrEqual(Math.min(needed * 0.05, 4) + 1e-5);
      }),
    );
  });
});
