/**
 * Units against published values and two independent libraries.
 *
 * mathjs holds its units to the exact definitions, so agreement there is asked to the last few bits; js-quantities
 * rounds the gallon, so it is asked for six digits only.
 */
import { createRequire } from "node:module";
import fc from "fast-check";
import { unit as mathUnit } from "mathjs";
import { describe, expect, test } from "vitest";
import { UNIT_ALIASES, UNIT_GROUPS } from "../../../grammar/src/units.ts";
import {
  differenceToCanonical,
  findUnit,
  litresOfGrams,
  spreadingRateOfWeight,
  toCanonical,
  unitsOf,
} from "../../../server/src/core/measure/units.ts";
import { fromCanonical } from "../../oracles/from-canonical.ts";

interface JsQuantity {
  readonly scalar: number;
  to(unit: string): JsQuantity;
}
const Qty = createRequire(import.meta.url)("js-quantities") as (text: string) => JsQuantity;

const inCanonical = (n: number, text: string): number => toCanonical(n, findUnit(text)!);

function expectRelative(actual: number, expected: number, tolerance: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.abs(expected) * tolerance);
}

describe("every spelling of the grammar has a size", () => {
  const spellings = Object.values(UNIT_GROUPS).flat();
  test.each([...spellings, ...Object.keys(UNIT_ALIASES)])("%s", (text) => {
    const definition = findUnit(text);
    expect(definition?.source).toMatch(/\S/u);
    expect(toCanonical(2, definition!)).not.toBeNaN();
  });

  test("and no other word has", () => {
    for (const text of ["", "constructor", "__proto__", "cups", "M"]) expect(findUnit(text)).toBeUndefined();
  });

  test("the grammar's groups and the dimensions agree", () => {
    for (const [group, texts] of Object.entries(UNIT_GROUPS)) {
      for (const text of texts) {
        expect(findUnit(text)?.dimension).toBe(
          ["g/m2", "m2/kg", "ft2/lb"].includes(text) ? "weight by area" : group,
        );
      }
    }
  });
});

describe("published values", () => {
  test.each([
    // NIST Handbook 44 appendix C: 1 gal = 231 in3 = 3.785411784 L exactly; quart, pint, fluid ounce are its parts.
    [1, "gal", 3.785411784],
    [1, "qt", 0.946352946],
    [1, "pt", 0.473176473],
    [1, "floz", 0.0295735295625],
    // 16 CFR 500.19: 1 in = 25.4 mm, 1 ft2 = 0.09290304 m2 exactly.
    [1, "in", 25.4],
    [3, "mil", 0.0762],
    [400, "ft2", 37.161216],
    // NIST SP 811: 1 lb = 453.59237 g, 1 oz = 28.349523125 g exactly.
    [1, "lb", 453.59237],
    [1, "oz", 28.349523125],
    // 453.59237 g / 3.785411784 L = 119.8264273 g/L, so 3.5 lb/gal = 419.39250 g/L.
    [3.5, "lb/gal", 419.3924955],
    // 0.09290304 m2 / 3.785411784 L = 0.0245423867 m2/L, so 400 ft2/gal = 9.81695 m2/L.
    [400, "ft2/gal", 9.8169547],
    // F = 1.8 C + 32.
    [50, "F", 10],
    [73.4, "F", 23],
    [-40, "F", -40],
    // By definition.
    [100, "mL/m2", 10],
    [1.03, "kg/L", 1030],
    [946, "mL", 0.946],
    [2, "m3", 2000],
    [30, "min", 0.5],
    [21, "days", 504],
    [1, "months", 720],
    [15, "min/m2", 0.25],
    [100, "cfm", 169.901079552],
  ])("%d %s", (n, text, expected) => {
    expectRelative(inCanonical(n, text), expected, 1e-9);
  });

  test("16 CFR 500.19 the other way: 1 L is 0.264172 gal and 1.05669 qt", () => {
    expect(fromCanonical(1, findUnit("gal")!)).toBeCloseTo(0.264172, 6);
    expect(fromCanonical(1, findUnit("qt")!)).toBeCloseTo(1.05669, 5);
  });

  test("450 g/L is 3.755432 lb/gal", () => {
    expect(fromCanonical(450, findUnit("lb/gal")!)).toBeCloseTo(3.755432, 6);
  });
});

describe("temperatures: points and differences are not the same", () => {
  test("a difference of 5.4 F is 3 C, not −14.8 C", () => {
    expect(differenceToCanonical(5.4, findUnit("F")!)).toBeCloseTo(3, 12);
    expect(inCanonical(5.4, "F")).toBeCloseTo(-14.7778, 4);
  });
});

describe("by weight", () => {
  test("2.5 kg of a material of 1250 g/L is 2 L", () => {
    expect(litresOfGrams(2500, 1250)).toBe(2);
  });
  test("100 g/m2 of a material of 1250 g/L is 12.5 m2/L", () => {
    // 1 L weighs 1250 g, which is spread over 1250 / 100 = 12.5 m2.
    expect(spreadingRateOfWeight(100, 1250)).toBe(12.5);
  });
});

const MATH_UNITS: Readonly<Record<string, readonly [string, string]>> = {
  um: ["um", "mm"],
  cm: ["cm", "mm"],
  m: ["m", "mm"],
  in: ["inch", "mm"],
  ft: ["ft", "mm"],
  yd: ["yard", "mm"],
  mil: ["mil", "mm"],
  mm2: ["mm^2", "m^2"],
  cm2: ["cm^2", "m^2"],
  in2: ["sqin", "m^2"],
  ft2: ["sqft", "m^2"],
  mL: ["mL", "L"],
  floz: ["floz", "L"],
  pt: ["pint", "L"],
  qt: ["quart", "L"],
  gal: ["gallon", "L"],
  m3: ["m^3", "L"],
  ft3: ["cuft", "L"],
  s: ["s", "h"],
  min: ["minute", "h"],
  day: ["day", "h"],
  week: ["week", "h"],
  F: ["degF", "degC"],
  kg: ["kg", "g"],
  oz: ["oz", "g"],
  lb: ["lbm", "g"],
  "kg/L": ["kg/L", "g/L"],
  "lb/gal": ["lbm/gallon", "g/L"],
  "ft2/gal": ["sqft/gallon", "m^2/L"],
  "ft2/L": ["sqft/L", "m^2/L"],
  "ft2/qt": ["sqft/quart", "m^2/L"],
  cfm: ["cuft/minute", "m^3/h"],
  "min/m2": ["minute/m^2", "h/m^2"],
};

describe("independent libraries", () => {
  test.each(Object.entries(MATH_UNITS))("%s as mathjs has it", (text, [from, to]) => {
    for (const n of [0.37, 1, 12.5, 400]) {
      expectRelative(inCanonical(n, text), mathUnit(n, from).toNumber(to), 1e-12);
    }
  });

  test.each([
    ["gal", "gal", "l"],
    ["ft2/gal", "ft^2/gal", "m^2/l"],
    ["lb/gal", "lb/gal", "g/l"],
    ["cfm", "ft^3/min", "m^3/h"],
    ["F", "tempF", "tempC"],
  ])("%s as js-quantities has it", (text, from, to) => {
    expectRelative(inCanonical(68, text), Qty(`68 ${from}`).to(to).scalar, 1e-6);
  });
});

describe("there and back", () => {
  const definitions = (["length", "volume", "temperature", "spreading rate", "density"] as const).flatMap(
    unitsOf,
  );
  test("a value read in a unit is the same value in that unit", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...definitions),
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        (definition, n) => {
          expectRelative(fromCanonical(toCanonical(n, definition), definition), n, 1e-9);
        },
      ),
    );
  });
});
