/** Abrasive grades against ISO 6344 (P) and ANSI B74.18 (CAMI), by way of the tables that print them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  GRIT_JUMP_HINT_RATIO,
  GRIT_JUMP_WARNING_RATIO,
  gradesBetween,
  gritRatio,
  materialTakenMm,
  medianUm,
  P_GRADES,
} from "../../../server/src/core/knowledge/abrasives.ts";
import { CAMI_GRADES } from "../../oracles/cami-grades.ts";

// ISO 6344-2, P12 to P220; ISO 6344-3, P240 to P2500: median size, µm.
const iso: readonly [number, number][] = [
  [12, 1815],
  [16, 1324],
  [20, 1000],
  [24, 764],
  [30, 642],
  [36, 538],
  [40, 425],
  [50, 336],
  [60, 269],
  [80, 201],
  [100, 162],
  [120, 125],
  [150, 100],
  [180, 82],
  [220, 68],
  [240, 58.5],
  [280, 52.2],
  [320, 46.2],
  [360, 40.5],
  [400, 35],
  [500, 30.2],
  [600, 25.8],
  [800, 21.8],
  [1000, 18.3],
  [1200, 15.3],
  [1500, 12.6],
  [2000, 10.3],
  [2500, 8.4],
];

// ANSI B74.18; two tables differ by a micrometre or so, hence ranges; 800 from memory, confidence medium.
const ansi: readonly [number, number, number][] = [
  [16, 1320, 1320],
  [20, 905, 905],
  [24, 708, 715],
  [30, 638, 638],
  [36, 535, 535],
  [40, 428, 428],
  [50, 351, 351],
  [60, 268, 268],
  [80, 192, 192],
  [100, 141, 141],
  [120, 115, 116],
  [150, 92, 93],
  [180, 82, 82],
  [220, 68, 68],
  [240, 52, 53],
  [280, 42, 44],
  [320, 35, 36],
  [360, 28, 28],
  [400, 22, 23.6],
  [500, 18, 19.7],
  [600, 15, 16],
  [800, 12, 12],
  [1000, 9.2, 10.3],
];

describe("grades", () => {
  test.each(iso)("P%i has a median of %d µm (ISO 6344)", (grit, um) => {
    expect(medianUm(grit)).toBe(um);
  });
  test("there are no other P grades", () => {
    expect(P_GRADES.map((grade) => grade.grit)).toEqual(iso.map(([grit]) => grit));
  });
  test.each(ansi)("CAMI %i has a median of %d to %d µm (ANSI B74.18)", (grit, low, high) => {
    const um = CAMI_GRADES.find((grade) => grade.grit === grit)?.um;
    expect(um).toBeGreaterThanOrEqual(low);
    expect(um).toBeLessThanOrEqual(high);
  });
  test("there are no other CAMI grades", () => {
    expect(CAMI_GRADES.map((grade) => grade.grit)).toEqual(ansi.map(([grit]) => grit));
  });
  test("the same number is finer on the CAMI scale: CAMI 220 to 400 is 68/23, P400 to CAMI 400 is 35/23", () => {
    const cami = (grit: number) => CAMI_GRADES.find((grade) => grade.grit === grit)!.um;
    expect(cami(220) / cami(400)).toBeCloseTo(2.96, 2);
    expect(medianUm(400)! / cami(400)).toBeCloseTo(1.52, 2);
    // Comparison charts: CAMI 400 is near P800, CAMI 600 near P1200.
    expect(Math.abs(cami(400) / medianUm(800)! - 1)).toBeLessThan(0.1);
    expect(Math.abs(cami(600) / medianUm(1200)! - 1)).toBeLessThan(0.1);
  });
  test("the scales agree at 220 and part above it: P400 is 35 µm, CAMI 400 about 23 µm", () => {
    const cami = (grit: number) => CAMI_GRADES.find((grade) => grade.grit === grit)!.um;
    expect(medianUm(220)).toBe(cami(220));
    expect(medianUm(400)! / cami(400)).toBeCloseTo(35 / 23, 1);
    expect(Math.abs(cami(320) - medianUm(400)!)).toBeLessThanOrEqual(1);
  });
});

describe("between and beyond the grades", () => {
  test("a grit between two grades lies between their sizes, on logarithmic axes", () => {
    // P320 46.2 µm, P360 40.5 µm: at 340, 46.2 · (40.5/46.2)^(ln(340/320)/ln(360/320)) = 43.17 µm.
    expect(medianUm(340)).toBeCloseTo(43.17, 2);
  });
  test("off the scale there is no size", () => {
    for (const grit of [0, -80, 11, 2501, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(medianUm(grit), String(grit)).toBeUndefined();
    }
    expect(gritRatio(80, 5000)).toBeUndefined();
  });
  test("finer grits are smaller", () => {
    fc.assert(
      fc.property(fc.integer({ min: 12, max: 2499 }), (grit) => medianUm(grit)! > medianUm(grit + 1)!),
    );
  });
});

describe("steps", () => {
  // Ratios computed by hand from the ISO 6344 medians.
  const steps: readonly [number, number, number, "fine" | "hint" | "warning"][] = [
    [80, 100, 1.241, "fine"],
    [80, 120, 1.608, "fine"],
    [80, 150, 2.01, "hint"],
    [80, 180, 2.451, "hint"],
    [80, 220, 2.956, "warning"],
    [80, 240, 3.436, "warning"],
    [100, 150, 1.62, "fine"],
    [120, 180, 1.524, "fine"],
    [120, 220, 1.838, "fine"],
    [150, 220, 1.471, "fine"],
    [180, 240, 1.402, "fine"],
    [220, 320, 1.472, "fine"],
    [320, 400, 1.32, "fine"],
  ];
  test.each(steps)("from %i to %i the particles are %d times larger: %s", (from, to, ratio, level) => {
    const actual = gritRatio(from, to)!;
    expect(actual).toBeCloseTo(ratio, 3);
    // Language reference, thresholds: a hint above a ratio of 2, a warning above 2.5.
    const reached =
      actual > GRIT_JUMP_WARNING_RATIO ? "warning" : actual > GRIT_JUMP_HINT_RATIO ? "hint" : "fine";
    expect(reached).toBe(level);
  });
  test("a jump names the grits between", () => {
    expect(gradesBetween(80, 180)).toEqual([100, 120, 150]);
    expect(gradesBetween(180, 80)).toEqual([]);
  });
  test("a grit G takes 10/G mm of wood (language reference)", () => {
    expect(materialTakenMm(80)).toBe(0.125);
    expect(materialTakenMm(100) + materialTakenMm(120) + materialTakenMm(150)).toBeCloseTo(0.25, 10);
  });
});
