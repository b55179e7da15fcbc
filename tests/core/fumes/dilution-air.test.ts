/**
 * Dilution air against worked examples: Abulencia & Theodore, Fluid Flow for the Practicing Chemical Engineer, example
 * 20.2; ACGIH, Industrial Ventilation (its examples are from memory, and reproduce by the formula); 29 CFR 1910.94.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fireDilutionM3PerH, vapourM3PerH } from "../../../server/src/core/fumes/dilution-air.ts";
import {
  airChangesPerH,
  airNeededM3PerH,
  airToLimitM3,
  gramsKeptPerH,
} from "../../../server/src/core/fumes/room-air.ts";
import { solventByName } from "../../harness/solvents.ts";
import {
  cfmAtTemperature,
  dilutionFt3PerGallon,
  fireDilutionCfm,
  healthDilutionCfm,
  healthDilutionM3PerH,
  mixtureExposure,
} from "../../oracles/us-dilution.ts";

const ACETONE = solventByName("acetone")!;
const ETHANOL = solventByName("ethanol")!;
const MINERAL_SPIRITS = solventByName("mineral spirits")!;
const TOLUENE = solventByName("toluene")!;

const M3_PER_H_OF_CFM = 1.69901079552;
const GRAMS_OF_PINT = 473.176473;

const within = (actual: number, expected: number, share: number): void => {
  expect(Math.abs(actual / expected - 1)).toBeLessThan(share);
};

describe("Abulencia & Theodore, example 20.2: adhesive with toluene, 80 ppm, K = 5", () => {
  test("the metric form from 8.24 g/min at 293 K: 2.15 L/min of vapour, 134 375 L/min of air", () => {
    const toluene = { gramsPerH: 8.24 * 60, molecularWeight: 92, temperatureC: 19.85 };
    within((vapourM3PerH(toluene) * 1000) / 60, 2.15, 0.005);
    within((healthDilutionM3PerH(toluene, 80, 5) * 1000) / 60, 134_375, 0.005);
  });
  test("the 403 formula gives 4763.7 cfm, within 1 % of the book's 4745", () => {
    const cfm = healthDilutionCfm({ specificGravity: 0.87, molecularWeight: 92, pintsPerMin: 0.02 }, 80, 5);
    expect(cfm).toBeCloseTo(4763.7, 0);
    within(cfm, 4745, 0.01);
  });
});

describe("ACGIH worked examples", () => {
  test("1,1,1-trichloroethane, 1.5 pt/h, 350 ppm, K = 5: 285 cfm, with K 1425 cfm", () => {
    const solvent = { specificGravity: 1.32, molecularWeight: 133.4, pintsPerMin: 1.5 / 60 };
    within(healthDilutionCfm(solvent, 350, 1), 285, 0.002);
    within(healthDilutionCfm(solvent, 350, 5), 1425, 0.002);
  });
  test("MEK and toluene, 2 pt/h each, act alike: 3000 + 12 627 = 15 627 cfm", () => {
    const mek = { specificGravity: 0.805, molecularWeight: 72.1, pintsPerMin: 2 / 60 };
    const toluene = { specificGravity: 0.866, molecularWeight: 92.13, pintsPerMin: 2 / 60 };
    within(healthDilutionCfm(mek, 200, 4), 3000, 0.001);
    within(healthDilutionCfm(toluene, 50, 5), 12_627, 0.001);
    within(healthDilutionCfm(mek, 200, 4) + healthDilutionCfm(toluene, 50, 5), 15_627, 0.001);
  });
  test("xylene in an oven at 350 F: 159 cfm at 70 F, 243 cfm at 350 F", () => {
    const xylene = { specificGravity: 0.88, molecularWeight: 106, pintsPerMin: 2 / 60 };
    const cfm = fireDilutionCfm(xylene, 1, 10, true);
    within(cfm, 159.3, 0.001);
    within(cfmAtTemperature(cfm, 350), 243.5, 0.001);
  });
});

describe("a pint an hour, K = 5: air for common solvents by the 403 formula", () => {
  test.each([
    ["mineral spirits at 100 ppm", 0.78, 140, 100, 1871],
    ["acetone at 250 ppm", 0.79, 58.08, 250, 1827],
    ["isopropanol at 400 ppm", 0.786, 60.1, 400, 1097],
    ["ethanol at 1000 ppm", 0.79, 46.1, 1000, 575],
    ["turpentine at 20 ppm", 0.86, 136.2, 20, 10_603],
  ])("%s", (_, specificGravity, molecularWeight, limit, cfm) => {
    within(healthDilutionCfm({ specificGravity, molecularWeight, pintsPerMin: 1 / 60 }, limit, 5), cfm, 0.01);
  });
});

describe("29 CFR 1910.94(c)(6)(ii)", () => {
  test("a gallon of toluene (30.4 ft3 of vapour, 1.4 %) wants 8564 ft3 of air", () => {
    // 4 · 98.6 · 30.4 / 1.4
    expect(dilutionFt3PerGallon(30.4, 1.4)).toBeCloseTo(8564, 0);
  });
  test.each([
    // Its table of ft3 of vapour a gallon at 70 F, against 8 pints by the 403 formula: within 5 %.
    ["acetone", 44.0, ACETONE],
    ["toluene", 30.4, TOLUENE],
    ["ethanol", 55.2, ETHANOL],
  ] as const)("the vapour of a gallon of %s", (_, ft3, solvent) => {
    within((8 * 403 * solvent.specificGravity) / solvent.molecularWeight, ft3, 0.05);
  });
});

describe("the two forms agree within half a percent", () => {
  const specificGravity = fc.double({ min: 0.6, max: 1.5, noNaN: true });
  const molecularWeight = fc.double({ min: 30, max: 200, noNaN: true });
  const pintsPerH = fc.double({ min: 0.01, max: 50, noNaN: true });
  test("for breathing and for fire", () => {
    fc.assert(
      fc.property(specificGravity, molecularWeight, pintsPerH, (sg, mw, rate) => {
        const us = { specificGravity: sg, molecularWeight: mw, pintsPerMin: rate / 60 };
        const metric = { gramsPerH: rate * GRAMS_OF_PINT * sg, molecularWeight: mw };
        within(healthDilutionM3PerH(metric, 100, 5), healthDilutionCfm(us, 100, 5) * M3_PER_H_OF_CFM, 0.005);
        within(fireDilutionM3PerH(metric, 1.1), fireDilutionCfm(us, 1.1) * M3_PER_H_OF_CFM, 0.005);
      }),
    );
  });
});

describe("rooms", () => {
  test("560 cfm in a room of 20 ft × 14 ft × 12 ft (3360 ft3) are 10 air changes an hour", () => {
    expect(airChangesPerH(560 * 60, 20 * 14 * 12)).toBeCloseTo(10, 12);
  });
  test("29 CFR 1910.1000(d)(2): 500/1000 + 45/200 + 40/200 = 0.925, within the limit", () => {
    const vapours = [
      { concentration: 500, limit: 1000 },
      { concentration: 45, limit: 200 },
      { concentration: 40, limit: 200 },
    ];
    expect(mixtureExposure(vapours)).toBeCloseTo(0.925, 12);
  });
  test("a limit of a working day: 240 g of mineral spirits in 8 h, 350 mg/m3, K = 5", () => {
    // 240 000 mg / 350 mg/m3 = 685.7 m3; / 8 h = 85.7 m3/h, times 5 = 428.6 m3/h.
    const m3 = airToLimitM3(MINERAL_SPIRITS, 240, "shift");
    within(m3, 685.71, 1e-4);
    within(airNeededM3PerH(m3, 8, "shift", 1), 85.714, 1e-4);
    within(airNeededM3PerH(m3, 8, "shift"), 428.57, 1e-4);
  });
  test("a limit of 15 minutes: 50 g of mineral spirits in it, 1800 mg/m3, K = 5", () => {
    // 50 000 / 1800 = 27.78 m3; / 0.25 h · 5 = 555.6 m3/h.
    within(airNeededM3PerH(airToLimitM3(MINERAL_SPIRITS, 50, "short"), 0.25, "short"), 555.56, 1e-4);
    // Ethanol has none.
    expect(airToLimitM3(ETHANOL, 50, "short")).toBe(0);
  });
  test("fire: 100 g/h of mineral spirits kept to a tenth of 0.8 %, without K", () => {
    // 100 / 140 mol/h · 24.45 L = 17.464 L/h; 0.017464 · 100 · 10 / 0.8 = 21.83 m3/h.
    within(airNeededM3PerH(airToLimitM3(MINERAL_SPIRITS, 100, "fire"), 1, "fire"), 21.83, 0.001);
  });
  test("the exposure sum is ACGIH's: 1e6 · vapour · K / ppm at 25 C", () => {
    // Toluene, 100 ppm = 376.7 mg/m3 (published 375).
    const acgih = healthDilutionM3PerH({ gramsPerH: 60, molecularWeight: 92.1, temperatureC: 25 }, 100, 5);
    within(airNeededM3PerH(airToLimitM3(TOLUENE, 60, "shift"), 1, "shift"), acgih, 1e-9);
  });
  test("what air keeps is what needs that air: 90 m3/h · 350 mg/m3 / 5 = 6.3 g/h", () => {
    const kept = gramsKeptPerH(90, 350);
    expect(kept).toBeCloseTo(6.3, 12);
    within(airNeededM3PerH(airToLimitM3(MINERAL_SPIRITS, kept, "shift"), 1, "shift"), 90, 1e-9);
    expect(gramsKeptPerH(90, 350, 1)).toBeCloseTo(31.5, 12);
  });
});
