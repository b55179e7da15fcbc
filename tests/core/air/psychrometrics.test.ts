/**
 * Damp air against PsychroLib (ASHRAE Handbook of Fundamentals 2017) and its printed values.
 *
 * The Magnus form and the ASHRAE equations are independent fits to one set of tables, so they are asked to agree to
 * 0.03 C of dew point and 0.4 % of pressure in the range of workshops.
 */
import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { condensation } from "../../../server/src/core/air/condensation.ts";
import {
  dewPointC,
  saturationPressureKPa,
  vapourPressureDeficitKPa,
} from "../../../server/src/core/air/psychrometrics.ts";

interface Psychrolib {
  readonly SI: number;
  SetUnitSystem(system: number): void;
  GetSatVapPres(temperatureC: number): number;
  GetTDewPointFromRelHum(temperatureC: number, humidity: number): number;
}
const psychrolib = createRequire(import.meta.url)("psychrolib") as Psychrolib;
psychrolib.SetUnitSystem(psychrolib.SI);

describe("printed values", () => {
  test.each([
    // Air, humidity, dew point by PsychroLib 1.1.1.
    [20, 50, 9.2724],
    [25, 50, 13.864],
    [25, 60, 16.7011],
    [22, 78, 17.9893],
    [30, 85, 27.1986],
    [10, 85, 7.5975],
    [15, 75, 10.6099],
  ])("dew point at %d C and %d %%", (temperature, humidity, dewPoint) => {
    expect(Math.abs(dewPointC(temperature, humidity) - dewPoint)).toBeLessThan(0.03);
  });

  test.each([
    [10, 1.228],
    [15, 1.7054],
    [20, 2.3388],
    [25, 3.1692],
    [30, 4.246],
  ])("saturation at %d C is %d kPa", (temperature, pressure) => {
    expect(Math.abs(saturationPressureKPa(temperature) / pressure - 1)).toBeLessThan(0.004);
  });

  test("at 0 C it is the constant itself, 0.61094 kPa", () => {
    expect(saturationPressureKPa(0)).toBe(0.61094);
  });

  test("25 C at 50 % lacks 1584.6 Pa to saturation", () => {
    expect(vapourPressureDeficitKPa(25, 50)).toBeCloseTo(1.5846, 2);
  });
});

describe("against PsychroLib", () => {
  const temperature = fc.double({ min: 1, max: 45, noNaN: true });
  test("saturation pressure", () => {
    fc.assert(
      fc.property(temperature, (t) => {
        const theirs = psychrolib.GetSatVapPres(t) / 1000;
        expect(Math.abs(saturationPressureKPa(t) / theirs - 1)).toBeLessThan(0.004);
      }),
    );
  });
  test("dew point", () => {
    const warm = fc.double({ min: 8, max: 40, noNaN: true });
    fc.assert(
      fc.property(warm, fc.double({ min: 65, max: 100, noNaN: true }), (t, humidity) => {
        const theirs = psychrolib.GetTDewPointFromRelHum(t, humidity / 100);
        expect(Math.abs(dewPointC(t, humidity) - theirs)).toBeLessThan(0.03);
      }),
    );
  });
});

describe("dew point", () => {
  test("is the air's temperature when the air is full", () => {
    expect(dewPointC(18, 100)).toBeCloseTo(18, 12);
    expect(dewPointC(18, 120)).toBeCloseTo(18, 12);
  });
  test("of dry air there is none", () => {
    expect(dewPointC(18, 0)).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe("condensation: the surface 3 C above the dew point (ISO 8502-4; UFC 3-190-06 paragraph 9.6.6)", () => {
  const air = { temperature: 25, humidity: 60 };
  test("19.5 C in air of 25 C and 60 % is 2.80 above: too near", () => {
    expect(condensation(air, 19.5)).toMatchObject({ isNear: true });
    expect(condensation(air, 19.5).marginC).toBeCloseTo(2.8, 2);
  });
  test("20.0 C is 3.30 above: good", () => {
    expect(condensation(air, 20)).toMatchObject({ isNear: false });
    expect(condensation(air, 20).marginC).toBeCloseTo(3.3, 2);
  });
  test("exactly 3 C is good", () => {
    expect(condensation(air, dewPointC(25, 60) + 3).isNear).toBe(false);
  });
  test("a piece is as warm as its room", () => {
    // 18 C and 60 %: dew point 10.1 C by PsychroLib.
    const { dewPointC: dewPoint, isNear } = condensation({ temperature: 18, humidity: 60 });
    expect(Math.abs(dewPoint - psychrolib.GetTDewPointFromRelHum(18, 0.6))).toBeLessThan(0.03);
    expect(isNear).toBe(false);
  });
});
