/** The table of hands-on times: complete, sane for a chair, and linear in the area. */
import { describe, expect, test } from "vitest";
import { METHODS, VERBS } from "../../../grammar/src/vocabulary.ts";
import {
  abrasiveUse,
  defaultTaskHours,
  LAYER_TIMES,
  m2PerSheet,
  STEP_TIMES,
} from "../../../server/src/core/quantities/abrasives.ts";

describe("the table", () => {
  test("has every verb and every method of the notation", () => {
    expect(Object.keys(STEP_TIMES).sort()).toEqual(Object.keys(VERBS).sort());
    expect(Object.keys(LAYER_TIMES).sort()).toEqual([...METHODS].sort());
  });

  test("a chair by hand takes about two hours", () => {
    const areaM2 = 0.9;
    const between = [
      { verb: "scuff", areaM2, grits: 1 },
      { verb: "dust", areaM2 },
    ];
    const tasks = [
      { verb: "clean", areaM2 },
      { verb: "sand", areaM2, grits: 3 },
      { verb: "dust", areaM2 },
      { verb: "layer", areaM2, method: "brush" as const },
      ...between,
      { verb: "layer", areaM2, method: "brush" as const },
      ...between,
      { verb: "layer", areaM2, method: "brush" as const },
    ];
    const hours = tasks.reduce((sum, task) => sum + defaultTaskHours(task), 0);
    expect(hours).toBeGreaterThan(1.75);
    expect(hours).toBeLessThan(2.25);
  });

  test("hours are fixed minutes and minutes by area", () => {
    // Brush: 5 min + 10 min/m2 · 2 m2 = 25 min. Sanding three grits: 3 · (3 + 12 · 1) = 45 min.
    expect(defaultTaskHours({ verb: "layer", areaM2: 2 })).toBeCloseTo(25 / 60, 12);
    expect(defaultTaskHours({ verb: "sand", areaM2: 1, grits: 3 })).toBeCloseTo(0.75, 12);
    // Cloth 4 + 8, wiped off 2 + 6: 20 min.
    expect(defaultTaskHours({ verb: "layer", method: "cloth", areaM2: 1, wiped: true })).toBeCloseTo(
      20 / 60,
      12,
    );
    expect(defaultTaskHours({ verb: "toString", areaM2: 1 })).toBeCloseTo(10 / 60, 12);
  });
});

describe("abrasive paper", () => {
  test("whole sheets and discs by grit", () => {
    // 3 m2 at 1 m2 a sheet are 3 sheets; a 125 mm disc is π · 62.5² / 64 400 = 0.1906 of a sheet, so 15.7 discs.
    expect(abrasiveUse(3, [80, 150])).toMatchObject([
      { grit: 80, sheets: 3, discs: 16 },
      { grit: 150, sheets: 2, discs: 11 },
    ]);
    expect(abrasiveUse(0, [80])).toMatchObject([{ sheets: 0, discs: 0 }]);
  });
  test("finer paper goes further", () => {
    const grits = [40, 60, 80, 100, 120, 180, 220, 240, 320, 400];
    const areas = grits.map(m2PerSheet);
    expect(areas).toEqual([...areas].sort((a, b) => a - b));
  });
});
