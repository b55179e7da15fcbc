/** Wait factors: hand calculations of each law, and that no air ever shortens or stops a wait. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  AIR_NOT_STATED,
  ordinaryWaitFactor,
  type WaitFactor,
  waitFactor,
} from "../../../server/src/core/air/wait-factor.ts";
import { dryingSchema } from "../../../server/src/core/knowledge/family-schema.ts";
import { reasonSentences } from "../../../server/src/core/surface/wait-words.ts";

/** As a hover has them, one after the other. */
const textOf = (factor: WaitFactor): string => `${reasonSentences(factor).join(". ")}.`;

const LABEL = { temperature: 21, humidity: 50 };

describe("hand calculations", () => {
  test("waterborne: 20 C and 80 % against 25 C and 50 %", () => {
    // By ASHRAE's tables the deficits are 1584.6 and 467.8 Pa, a ratio of 3.388; the Magnus form is within 0.5 % of it.
    const { factor } = waitFactor(
      "waterborne",
      { temperature: 25, humidity: 50 },
      { temperature: 20, humidity: 80 },
    );
    expect(Math.abs(factor / 3.388 - 1)).toBeLessThan(0.005);
  });
  test("waterborne: only damper, 85 % against 50 %, is exactly 50 / 15", () => {
    const { factor } = waitFactor(
      "waterborne",
      { temperature: 25, humidity: 50 },
      { temperature: 25, humidity: 85 },
    );
    expect(factor).toBeCloseTo(10 / 3, 12);
  });
  test("waterborne in a mill room of 18 C and 60 %", () => {
    // e(21) = 0.61094 exp(17.625·21 / 264.04) = 0.61094 · 4.0623 = 2.4818; e(18) = 0.61094 exp(317.25 / 261.04) = 2.0595.
    // 2.4818 · 0.5 / (2.0595 · 0.4) = 1.2409 / 0.8238 = 1.5063
    const found = waitFactor("waterborne", LABEL, { temperature: 18, humidity: 60 });
    expect(found.factor).toBeCloseTo(1.5063, 3);
    expect(textOf(found)).toBe(
      "Water leaves by the vapour-pressure deficit: 0.824 kPa at 18 C and 60 % RH, 1.241 kPa at the label's 21 C and 50 % RH; times are 1.241 / 0.824 = 1.51 times the label's.",
    );
  });
  test.each([
    // A factor 2 for 10 C: 24 h at 25 C are 48 h at 15 C, 33.94 h at 20 C, 67.88 h at 10 C.
    [15, 48],
    [20, 33.94],
    [10, 67.88],
    [35, 24],
  ])("reacting at %d C: 24 h become %d h", (temperature, hours) => {
    const rated = { temperature: 25, humidity: 50 };
    expect(24 * waitFactor("reacting", rated, { temperature }).factor).toBeCloseTo(hours, 2);
    expect(24 * waitFactor("oxidising", rated, { temperature, humidity: 90 }).factor).toBeCloseTo(hours, 2);
  });
  test("solvent release, 10 C colder", () => {
    // exp(4700 (1/284.15 − 1/294.15)) = exp(4700 · 1.196446e-4) = exp(0.5623296) = 1.7548
    const { factor } = waitFactor("solvent release", LABEL, { temperature: 11 });
    expect(factor).toBeCloseTo(1.7548, 3);
  });
  test("what does not dry waits for no air", () => {
    expect(waitFactor("none", LABEL, { temperature: 2, humidity: 95 }).factor).toBe(1);
  });
});

describe("a label that states no air of its own", () => {
  const at = (temperature: number, humidity?: number): number =>
    ordinaryWaitFactor("waterborne", LABEL, { temperature, ...(humidity === undefined ? {} : { humidity }) })
      .factor;

  test("is told for ordinary room air: from 19 C on, at 55 % RH at most", () => {
    expect([at(19, 50), at(20, 50), at(20, 55), at(21, 55), at(23, 50), at(20)]).toEqual([1, 1, 1, 1, 1, 1]);
    expect(ordinaryWaitFactor("oxidising", LABEL, { temperature: 20 }).factor).toBe(1);
    // Colder or damper than that, the whole factor counts: 2^(3/10) = 1.2311, and (1 − 0.5) / (1 − 0.6) = 1.25.
    expect(ordinaryWaitFactor("oxidising", LABEL, { temperature: 18 }).factor).toBeCloseTo(1.2311, 4);
    expect(at(21, 60)).toBeCloseTo(1.25, 9);
  });
  test("says so", () => {
    expect(textOf(ordinaryWaitFactor("waterborne", LABEL, { temperature: 20, humidity: 50 }))).toBe(
      "The label names no air of its own, and 20 C and 50 % RH is ordinary room air, so its times stand.",
    );
  });
});

describe("what is missing or extreme", () => {
  test("no shop", () => {
    expect(waitFactor("waterborne", LABEL, undefined)).toEqual({
      factor: 1,
      cause: { law: "air not stated" },
    });
    expect(textOf(AIR_NOT_STATED)).toBe("The shop's air is not stated, so the label's times stand.");
  });
  test("no humidity: the label's, and it says so", () => {
    // Only e(T) counts: e(21) / e(18) = 2.4818 / 2.0595 = 1.2051
    const found = waitFactor("waterborne", LABEL, { temperature: 18 });
    expect(found.factor).toBeCloseTo(1.205, 2);
    expect(textOf(found)).toContain("The shop's humidity is not stated; the label's is used.");
  });
  test("air at 100 % counts as 99.9 %, and it says so", () => {
    const full = waitFactor("waterborne", LABEL, { temperature: 21, humidity: 100 });
    expect(full.factor).toBeCloseTo(500, 6); // 50 / 0.1
    expect(textOf(full)).toContain("Air at 100 % RH dries no water; 99.9 % is used.");
  });
  test("warmer and drier air leaves the label's time", () => {
    const found = waitFactor("waterborne", LABEL, { temperature: 28, humidity: 30 });
    expect(found.factor).toBe(1);
    expect(textOf(found)).toContain("the label's times stand");
  });
  test("the label's own air changes nothing", () => {
    for (const drying of dryingSchema.options) expect(waitFactor(drying, LABEL, LABEL).factor).toBe(1);
  });
});

describe("properties", () => {
  const drying = fc.constantFrom(...dryingSchema.options);
  const temperature = fc.double({ min: -300, max: 300, noNaN: true });
  const humidity = fc.double({ min: 0, max: 120, noNaN: true });
  const air = fc.record({ temperature, humidity });

  test("finite, and never below 1", () => {
    fc.assert(
      fc.property(drying, air, air, (how, rated, shop) => {
        const { factor } = waitFactor(how, rated, shop);
        expect(factor).toBeGreaterThanOrEqual(1);
        expect(Number.isFinite(factor)).toBe(true);
      }),
    );
  });

  test("colder or damper is never quicker", () => {
    const step = fc.double({ min: 0, max: 30, noNaN: true });
    fc.assert(
      fc.property(drying, air, air, step, step, (how, rated, shop, colder, damper) => {
        const worse = { temperature: shop.temperature - colder, humidity: shop.humidity + damper };
        const before = waitFactor(how, rated, shop).factor;
        expect(waitFactor(how, rated, worse).factor).toBeGreaterThanOrEqual(before * (1 - 1e-9));
      }),
    );
  });
});
