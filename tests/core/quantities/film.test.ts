/** Film thickness against the charts of coating makers, a military handbook, and the arithmetic of mixing. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dryFilmUm, mixSolids, wetFilmUm } from "../../../server/src/core/quantities/film.ts";
import {
  coverageFt2PerGallon,
  FT2_MIL_PER_GALLON,
  gallonsForFilm,
  spreadingRateM2PerL,
  wetFilmForDry,
} from "../../oracles/film.ts";

describe("the US identity", () => {
  test("1604.1666… ft2·mil a gallon: 231 in3 / 0.001 in / 144 in2", () => {
    expect(FT2_MIL_PER_GALLON).toBeCloseTo(1604.1666666667, 9);
  });
  test("the same as the metric one through exact units", () => {
    // ft2·mil in litres: 0.09290304 m2 · 25.4e-6 m · 1000 = 0.002359737216 L.
    expect(3.785411784 / 0.002359737216).toBeCloseTo(FT2_MIL_PER_GALLON, 8);
  });
  test("400 ft2/gal is 4.010 mil or 101.9 um wet", () => {
    const wet = wetFilmUm(400 * 0.0245423867);
    expect(wet).toBeCloseTo(101.86, 1);
    expect(wet / 25.4).toBeCloseTo(4.01, 2);
  });
});

describe("a technical bulletin's chart of 1604 · solids / dry film, ft2 a gallon", () => {
  const mils = [1, 2, 3, 4, 5, 6, 8, 10];
  test.each([
    [30, [481, 241, 160, 120, 96, 80, 60, 48]],
    [35, [561, 281, 187, 140, 112, 94, 70, 56]],
    [40, [642, 321, 214, 160, 128, 107, 80, 64]],
    [45, [722, 361, 241, 180, 144, 120, 90, 72]],
    [50, [802, 401, 267, 201, 160, 134, 100, 80]],
    [60, [962, 481, 321, 241, 192, 160, 120, 96]],
    [70, [1123, 561, 374, 281, 225, 187, 140, 112]],
    [100, [1604, 802, 535, 401, 321, 267, 201, 160]],
  ])("%d %% solids", (solids, printed) => {
    for (const [index, mil] of mils.entries()) {
      expect(Math.abs(coverageFt2PerGallon(solids, mil) - printed[index]!)).toBeLessThanOrEqual(1);
    }
  });

  test("and the misprint of another chart: 72 % at 2 mil is 577, not 527", () => {
    expect(coverageFt2PerGallon(72, 2)).toBeCloseTo(577.5, 1);
  });
});

describe("published examples", () => {
  test("spreading-rate sheet: 65 % at 125 um covers 5.2 m2/L", () => {
    expect(spreadingRateM2PerL(wetFilmForDry(125, 65))).toBeCloseTo(5.2, 12);
  });
  test("spreading-rate sheet: 65 % at 5 mil covers 208.52 ft2/gal with the rounded 1604", () => {
    expect(coverageFt2PerGallon(65, 5)).toBeCloseTo(208.54, 2);
  });
  test("trade column, October 2003: 52 %, 30 % transfer, 1.5 mil: 167 ft2 from a gallon", () => {
    expect(1 / gallonsForFilm(1, 1.5, 52, 0.3)).toBeCloseTo(166.83, 2);
  });
  test("UFC 3-190-06 procedure 13: 1.5 mil dry at 42 % is 3.57 mil wet; 100 um at 62 % is 161 um", () => {
    expect(wetFilmForDry(1.5, 42)).toBeCloseTo(3.57, 2);
    expect(wetFilmForDry(100, 62)).toBeCloseTo(161.3, 1);
  });
  test.each([
    [0.25, 1.0686],
    [0.65, 0.41102],
    [0.9, 0.29685],
  ])("100 ft2, 1.5 mil, 35 %%, transfer efficiency %d", (efficiency, gallons) => {
    expect(gallonsForFilm(100, 1.5, 35, efficiency)).toBeCloseTo(gallons, 4);
  });
});

describe("mixes", () => {
  test("60 % thinned a quart a gallon is 48 %, neither 35 nor 45", () => {
    expect(mixSolids({ solidsPercent: 60, thinned: { a: 4, b: 1 } })).toBeCloseTo(48, 12);
  });
  test("35 % thinned by a tenth: 2.8 mil dry wants 8.8 mil wet, 8 mil wet dries to 2.545", () => {
    const solids = mixSolids({ solidsPercent: 35, thinned: { a: 10, b: 1 } });
    expect(wetFilmForDry(2.8, solids)).toBeCloseTo(8.8, 10);
    expect(dryFilmUm(8, solids)).toBeCloseTo(2.545, 3);
  });
  test("tinted 5 % with a stain of 10 %", () => {
    // 0.95 · 33 + 0.05 · 10 = 31.35 + 0.5
    expect(mixSolids({ solidsPercent: 33, tint: { percent: 5, solidsPercent: 10 } })).toBeCloseTo(31.85, 12);
  });
  test("thinned 1:1 and then tinted 10 %", () => {
    // (40 / 2) · 0.9 + 20 · 0.1 = 18 + 2
    const mix = { solidsPercent: 40, thinned: { a: 1, b: 1 }, tint: { percent: 10, solidsPercent: 20 } };
    expect(mixSolids(mix)).toBeCloseTo(20, 12);
  });
  test("two parts, 10:1, 40 % and 84 %", () => {
    // (40 · 10 + 84) / 11 = 44
    expect(mixSolids({ solidsPercent: 40, hardener: { a: 10, b: 1, solidsPercent: 84 } })).toBeCloseTo(
      44,
      12,
    );
  });
  test("m2 per litre of unthinned paint at a dry film do not depend on the thinning", () => {
    const fraction = fc.double({ min: 0, max: 2, noNaN: true });
    fc.assert(
      fc.property(fraction, fc.integer({ min: 5, max: 100 }), (t, solidsPercent) => {
        const mix = mixSolids({ solidsPercent, thinned: { a: 1, b: t } });
        const perMixL = spreadingRateM2PerL(wetFilmForDry(30, mix));
        expect(perMixL * (1 + t)).toBeCloseTo(spreadingRateM2PerL(wetFilmForDry(30, solidsPercent)), 6);
      }),
    );
  });
});

test("10 m2/L at 33 % is 100 um wet and 33 um dry", () => {
  expect(wetFilmUm(10)).toBe(100);
  expect(dryFilmUm(100, 33)).toBeCloseTo(33, 12);
});
