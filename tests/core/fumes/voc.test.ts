/** The two ways of counting VOC, against published and hand-worked coatings. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  materialVoc,
  mixVocGrams,
  regulatoryVoc,
  vocGrams,
  vocPerSolids,
} from "../../../server/src/core/fumes/voc.ts";

const NOTHING = { water: 0, waterVolume: 0, exempt: 0, exemptVolume: 0 };

describe("worked coatings", () => {
  test("published: 100 gal with 33.20 lb organic solvent and 62.4 gal water", () => {
    // 33.20 / 100 = 0.332 lb/gal; 33.20 / (100 − 62.4) = 0.883 lb/gal. The weight of the water cancels.
    const water = 62.4 * 8.33;
    const paint = { ...NOTHING, volume: 100, volatiles: 33.2 + water, water, waterVolume: 62.4 };
    expect(materialVoc(paint)).toBeCloseTo(0.332, 3);
    expect(regulatoryVoc(paint)).toBeCloseTo(0.883, 3);
    // Over its 33.06 gal of solids: 1.004 lb/gal.
    expect((materialVoc(paint) * 100) / 33.06).toBeCloseTo(1.004, 3);
  });
  test("a waterborne litre: 1050 g, 58 % water, 7 % VOC by weight", () => {
    // VOC 73.5 g; water 609 g = 0.609 L; 73.5 / 0.391 = 187.98 g/L.
    const litre = { ...NOTHING, volume: 1, volatiles: 682.5, water: 609, waterVolume: 0.609 };
    expect(materialVoc(litre)).toBeCloseTo(73.5, 9);
    expect(regulatoryVoc(litre)).toBeCloseTo(187.98, 2);
  });
  test("a lacquer litre: 900 g, 30 % acetone, 50 % VOC, is over 680 by the regulatory count alone", () => {
    // Acetone 270 g / 790 g/L = 0.341772 L; 450 / 0.658228 = 683.65.
    const litre = { ...NOTHING, volume: 1, volatiles: 720, exempt: 270, exemptVolume: 270 / 790 };
    expect(materialVoc(litre)).toBeCloseTo(450, 9);
    expect(regulatoryVoc(litre)).toBeCloseTo(683.65, 2);
  });
  test("30 TAC 115.423: 3.5 lb/gal is 6.6736 lb a gallon of solids", () => {
    // 3.5 / (1 − 3.5 / 7.36) = 3.5 · 7.36 / 3.86
    expect(vocPerSolids(3.5)).toBeCloseTo(6.6736, 4);
  });
});

describe("properties", () => {
  const part = fc.double({ min: 0, max: 0.3, noNaN: true });
  test("without water and exempt solvent both counts are one", () => {
    fc.assert(
      fc.property(part, (volatiles) => {
        const coating = { ...NOTHING, volume: 1, volatiles: volatiles * 1000 };
        expect(regulatoryVoc(coating)).toBe(materialVoc(coating));
      }),
    );
  });
  test("water or acetone added changes the material count alone", () => {
    fc.assert(
      fc.property(part, part, part, (voc, water, acetone) => {
        const base = { ...NOTHING, volume: 1, volatiles: voc * 1000 };
        const more = {
          volume: 1 + water + acetone,
          volatiles: voc * 1000 + water * 1000 + acetone * 790,
          water: water * 1000,
          waterVolume: water,
          exempt: acetone * 790,
          exemptVolume: acetone,
        };
        expect(regulatoryVoc(more)).toBeCloseTo(regulatoryVoc(base), 6);
        expect(materialVoc(more)).toBeLessThanOrEqual(materialVoc(base) + 1e-6);
      }),
    );
  });
});

test("grams of a job are litres with their spare times the material count", () => {
  // 1.17612 L · 180 g/L = 211.7016 g
  expect(vocGrams(1.17612, 180)).toBeCloseTo(211.7016, 9);
  // A litre of 400 g/L thinned with a quarter litre of spirits at 780 g/L: 400 + 195.
  expect(
    mixVocGrams([
      { litres: 1, vocGPerL: 400 },
      { litres: 0.25, vocGPerL: 780 },
    ]),
  ).toBeCloseTo(595, 9);
});
