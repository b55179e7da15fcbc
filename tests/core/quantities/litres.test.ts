/** Litres of layers and steps: hand calculations, and what must not change them. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { METHODS, SPRAY_METHODS } from "../../../grammar/src/vocabulary.ts";
import {
  layerLitres,
  mixLitres,
  stepLitres,
  TRANSFER_EFFICIENCY,
} from "../../../server/src/core/quantities/litres.ts";

const TABLE_TOP = {
  areaM2: 1.782,
  pieces: 2,
  coats: 3,
  coversM2PerL: 10,
  method: "brush",
  sparePercent: 10,
} as const;

describe("layers", () => {
  test("two table tops, three coats", () => {
    // 1.782 · 2 · 3 / 10 = 1.0692; · 1.1 = 1.17612
    const litres = layerLitres(TABLE_TOP);
    expect(litres.mixL).toBeCloseTo(1.17612, 12);
    expect(litres).toMatchObject({ thinnerL: 0, tintL: 0 });
    expect(litres.materialL).toBe(litres.mixL);
    expect(litres.working).toBe("1.782 m2 × 2 pieces × 3 coats / 10 m2/L × 1.1 = 1.1761 L");
  });

  test("sprayed", () => {
    // 1.17612 / 0.65 = 1.80941538…; 1.17612 / 0.5 = 2.35224
    expect(layerLitres({ ...TABLE_TOP, method: "hvlp" }).mixL).toBeCloseTo(1.8094153846, 9);
    expect(layerLitres({ ...TABLE_TOP, method: "airless" }).mixL).toBeCloseTo(2.35224, 12);
    expect(layerLitres({ ...TABLE_TOP, method: "hvlp" }).working).toContain(" / 0.65 (hvlp)");
  });

  test("hand methods take the label's rate as it is", () => {
    const byHand = METHODS.filter((method) => !SPRAY_METHODS.has(method));
    expect(byHand.map((method) => TRANSFER_EFFICIENCY[method])).toEqual([1, 1, 1, 1, 1, 1]);
  });

  test("by wet film in place of the label's rate", () => {
    // 100 um on 1.782 m2 is 0.1782 L.
    const litres = layerLitres({ ...TABLE_TOP, pieces: 1, coats: 1, sparePercent: 0, wetUm: 100 });
    expect(litres.mixL).toBeCloseTo(0.1782, 12);
    expect(litres.working).toBe("1.782 m2 × 100 um wet = 0.1782 L");
  });

  test("thinned 4:1 and tinted 5 %", () => {
    // Of 1 L: tint 0.05; the rest 0.95 is 4/5 material 0.76 and 1/5 thinner 0.19.
    const litres = layerLitres({
      areaM2: 10,
      pieces: 1,
      coats: 1,
      coversM2PerL: 10,
      method: "pad",
      sparePercent: 0,
      thinned: { a: 4, b: 1 },
      tintPercent: 5,
    });
    expect(litres.tintL).toBeCloseTo(0.05, 12);
    expect(litres.materialL).toBeCloseTo(0.76, 12);
    expect(litres.thinnerL).toBeCloseTo(0.19, 12);
  });

  test("nothing known, nothing invented", () => {
    const litres = layerLitres({ areaM2: 1, pieces: 1, coats: 1, method: "brush", sparePercent: 10 });
    expect(litres).toMatchObject({ mixL: 0, working: "no spreading rate is known" });
  });
});

describe("published coverage", () => {
  test.each([
    // 100 ft2 at 1.5 mil dry and 35 % solids: 100 · 1.5 / (1604.1667 · 0.35 · TE) gal; TE 0.65 gives 0.41102 gal.
    ["hvlp", 0.41102],
    // TE 0.50: 0.2671613 / 0.5 = 0.53432 gal.
    ["airless", 0.53432],
  ] as const)("%s", (method, gallons) => {
    const wetUm = (1.5 * 25.4) / 0.35;
    const { mixL } = layerLitres({ areaM2: 9.290304, pieces: 1, coats: 1, wetUm, method, sparePercent: 0 });
    expect(mixL / 3.785411784).toBeCloseTo(gallons, 4);
  });
});

describe("steps", () => {
  test("by area where the material states a rate", () => {
    // 1.5 · 2 / 20 · 1.1 = 0.165
    const step = stepLitres({ areaM2: 1.5, pieces: 2, coversM2PerL: 20, sparePercent: 10 });
    expect(step.litres).toBeCloseTo(0.165, 12);
    expect(step.working).toBe("1.5 m2 × 2 pieces / 20 m2/L × 1.1 = 0.165 L");
  });
  test("as the step states it, for each piece, without spare", () => {
    const step = stepLitres({ areaM2: 1.5, pieces: 2, coversM2PerL: 20, usesL: 0.05, sparePercent: 10 });
    expect(step).toEqual({ litres: 0.1, working: "0.05 L × 2 pieces = 0.1 L" });
  });
  test("filling uses only what is stated", () => {
    const fill = { areaM2: 1.5, pieces: 1, coversM2PerL: 20, sparePercent: 10, onlyAsStated: true };
    expect(stepLitres(fill).litres).toBe(0);
    expect(stepLitres({ ...fill, usesL: 0.05 }).litres).toBe(0.05);
  });
  test("unknown", () => {
    expect(stepLitres({ areaM2: 1, pieces: 1, sparePercent: 10 }).litres).toBe(0);
  });
});

test("the hardener's share of a two-part material mixed 10:1", () => {
  const { materialL, hardenerL } = mixLitres(1.1, 10, 1);
  expect(hardenerL).toBeCloseTo(0.1, 12);
  expect(materialL).toBeCloseTo(1, 12);
});

describe("properties", () => {
  const amount = fc.double({ min: 0.01, max: 100, noNaN: true });
  test("splitting an area in two changes no litres", () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        fc.integer({ min: 1, max: 6 }),
        amount,
        (left, right, coats, coversM2PerL) => {
          const litres = (areaM2: number): number =>
            layerLitres({ areaM2, pieces: 1, coats, coversM2PerL, method: "hvlp", sparePercent: 10 }).mixL;
          expect(litres(left) + litres(right)).toBeCloseTo(litres(left + right), 6);
        },
      ),
    );
  });

  test("the parts are the whole, and a rate is its wet film", () => {
    fc.assert(
      fc.property(
        amount,
        amount,
        amount,
        amount,
        fc.integer({ min: 0, max: 100 }),
        (areaM2, coversM2PerL, a, b, tintPercent) => {
          const input = {
            areaM2,
            pieces: 1,
            coats: 2,
            method: "brush",
            sparePercent: 10,
            thinned: { a, b },
            tintPercent,
          } as const;
          const byRate = layerLitres({ ...input, coversM2PerL });
          const byFilm = layerLitres({ ...input, wetUm: 1000 / coversM2PerL });
          expect((byRate.materialL + byRate.thinnerL + byRate.tintL) / byRate.mixL).toBeCloseTo(1, 9);
          expect(byFilm.mixL / byRate.mixL).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});
