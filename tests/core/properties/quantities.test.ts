/** What must hold of areas, litres, cans and fumes whatever the program: scaling, splitting, spelling, covering. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { coatFumes, jobFumes } from "../../../server/src/core/fumes/job-fumes.ts";
import type { JobResult } from "../../../server/src/core/totals/job-totals.ts";
import { anyProgram, type ProgramSpec, reckon, resultOf, type ShapeSpec, textOf } from "./programs.ts";

/** Equal but for rounding in the last places. */
function near(actual: number | null, expected: number | null, share = 1e-9): void {
  if (actual === null || expected === null) expect(actual).toBe(expected);
  else expect(Math.abs(actual - expected)).toBeLessThanOrEqual(share * Math.max(1e-6, Math.abs(expected)));
}

const litresByName = ({ totals }: JobResult): ReadonlyMap<string, number | null> =>
  new Map(totals.materials.map(({ name, litres }) => [name, litres]));

function sameLitres(actual: JobResult, expected: JobResult, factor = 1): void {
  const wanted = litresByName(expected);
  const found = litresByName(actual);
  expect([...found.keys()].sort()).toEqual([...wanted.keys()].sort());
  for (const [name, litres] of wanted) near(found.get(name)!, litres === null ? null : litres * factor);
}

const scaled = (program: ProgramSpec, k: number): ProgramSpec => ({
  ...program,
  surfaces: program.surfaces.map((shapes) =>
    shapes.map((shape) => ({
      ...shape,
      sizes: shape.sizes.map((size): number | readonly [number, number] =>
        typeof size === "number" ? size * k : [size[0] * k, size[1] * k],
      ),
    })),
  ),
});

test("the programs drawn here are in the notation, in both spellings", () => {
  fc.assert(
    fc.property(anyProgram, (program) => {
      resultOf(textOf(program));
      resultOf(textOf(program, "US"));
    }),
    { numRuns: 4, seed: 1 },
  );
});

test("all lengths times k: areas, litres and fumes times k squared", () => {
  fc.assert(
    fc.property(anyProgram, fc.constantFrom(2, 3, 10, 1 / 2, 1 / 8), (program, k) => {
      const one = reckon(program);
      const other = reckon(scaled(program, k));
      near(other.totals.area_m2, one.totals.area_m2! * k * k);
      for (const [index, surface] of other.totals.surfaces.entries()) {
        const before = one.totals.surfaces[index]!;
        near(surface.area_m2, before.area_m2! * k * k);
        // Film is by the square metre: it does not scale.
        near(surface.dry_film_um, before.dry_film_um);
      }
      sameLitres(other, one, k * k);
      near(other.totals.voc_g, one.totals.voc_g! * k * k);
    }),
    { numRuns: 5, seed: 2 },
  );
});

/** A surface cut in two where its list of shapes is cut, or one of several like shapes put on each side. */
function split(shapes: readonly ShapeSpec[]): readonly (readonly ShapeSpec[])[] {
  const [first] = shapes;
  if (shapes.length > 1) return [shapes.slice(0, 1), shapes.slice(1)];
  if (first!.count < 2) return [shapes];
  return [[{ ...first!, count: 1 }], [{ ...first!, count: first!.count - 1 }]];
}

test("a surface split in two under the same recipe: the same area, litres before cans, cans and fumes", () => {
  fc.assert(
    fc.property(anyProgram, (program) => {
      const one = reckon(program);
      const two = reckon({ ...program, surfaces: program.surfaces.flatMap(split) });
      near(two.totals.area_m2, one.totals.area_m2);
      sameLitres(two, one);
      near(two.totals.voc_g, one.totals.voc_g);
      near(two.totals.material_cost, one.totals.material_cost);
    }),
    { numRuns: 5, seed: 3 },
  );
});

test("metric and US spelling of the same program have the same totals", () => {
  fc.assert(
    fc.property(anyProgram, (program) => {
      const metric = reckon(program);
      const us = reckon(program, "US");
      for (const field of ["area_m2", "hands_on_h", "voc_g", "labour_cost"] as const) {
        near(us.totals[field], metric.totals[field]);
      }
      sameLitres(us, metric);
      us.totals.surfaces.forEach((surface, index) => {
        near(surface.area_m2, metric.totals.surfaces[index]!.area_m2);
        near(surface.dry_film_um, metric.totals.surfaces[index]!.dry_film_um);
      });
      us.totals.materials.forEach((material, index) => {
        const other = metric.totals.materials[index]!;
        expect(material.containers.map(({ count, price }) => [count, price])).toEqual(
          other.containers.map(({ count, price }) => [count, price]),
        );
        near(material.cost, other.cost);
      });
      // Temperatures go through a conversion, and a plan is kept to the millisecond.
      if (metric.schedule.status === "planned") near(us.totals.elapsed_h, metric.totals.elapsed_h, 1e-6);
      expect(us.schedule.status).toBe(metric.schedule.status);
    }),
    { numRuns: 5, seed: 4 },
  );
});

describe("containers", () => {
  test("cover what is needed less what is on hand, and none could be left out", () => {
    fc.assert(
      fc.property(anyProgram, (program) => {
        for (const { litres, onHand, totals } of reckon(program).needs) {
          const bought = totals.containers.reduce((sum, each) => sum + each.litres * each.count, 0);
          const short = litres! - onHand;
          expect(bought).toBeGreaterThanOrEqual(short - 1e-6);
          if (short <= 0) expect(totals.containers).toEqual([]);
          for (const each of totals.containers) expect(bought - each.litres).toBeLessThan(short);
        }
      }),
      { numRuns: 5, seed: 5 },
    );
  });

  test("more on hand never costs more", () => {
    fc.assert(
      fc.property(anyProgram, fc.integer({ min: 1, max: 60 }), (program, more) => {
        const richer = {
          ...program,
          materials: program.materials.map((each) => ({ ...each, onHandFloz: each.onHandFloz + more })),
        };
        expect(reckon(richer).totals.material_cost!).toBeLessThanOrEqual(
          reckon(program).totals.material_cost! + 1e-9,
        );
      }),
      { numRuns: 4, seed: 6 },
    );
  });
});

describe("fumes", () => {
  test("the coats' grams and the hours' grams both add up to the job's", () => {
    fc.assert(
      fc.property(anyProgram, (program) => {
        const result = reckon(program);
        const { coats, byHour } = jobFumes(result);
        near(
          coats.reduce((sum, { grams }) => sum + grams!, 0),
          result.totals.voc_g,
        );
        if (result.schedule.status !== "planned") return;
        near(
          byHour!.reduce((sum, { grams }) => sum + grams, 0),
          result.totals.voc_g,
          1e-6,
        );
      }),
      { numRuns: 5, seed: 7 },
    );
  });

  test("a coat on twice as many pieces gives off twice as much", () => {
    fc.assert(
      fc.property(anyProgram, (program) => {
        const gramsOf = (pieces: number) =>
          coatFumes(reckon({ ...program, pieces }).draws).map(({ grams }) => grams!);
        const one = gramsOf(1);
        for (const [index, grams] of gramsOf(2).entries()) near(grams, one[index]! * 2);
      }),
      { numRuns: 4, seed: 8 },
    );
  });
});
