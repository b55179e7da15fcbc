/** What texts say of heat, machines and filters; sentences as people write them at the bench, no source. */
import { describe, expect, test } from "vitest";
import {
  BLASTING,
  clauseNaming,
  clauseNearHeat,
  HEAT_GUN,
  hottestC,
  LOUD_MACHINE,
  OPEN_FLAME,
  SANDING_MACHINE,
  saysHepa,
  saysWet,
  type Words,
} from "../../server/src/core/rules/work-words.ts";

const NAMED: readonly [string, Words][] = [
  ["Burn the old paint off with the gas torch and push it away with the scraper.", OPEN_FLAME],
  ["Burn the paint off before you sand.", OPEN_FLAME],
  ["Warm the oil and turpentine in a pan on the gas ring until it smokes.", OPEN_FLAME],
  ["blowlamp and scraper", OPEN_FLAME],
  ["Char the surface with a propane torch, then brush it", OPEN_FLAME],
  ["Pass a flame quickly over the wet shellac", OPEN_FLAME],
  ["old varnish, burning it away", OPEN_FLAME],
  ["heat gun, 400 C", HEAT_GUN],
  ["Soften it with a hot-air gun", HEAT_GUN],
  ["belt sander", SANDING_MACHINE],
  ["Two hours with the random-orbit sander.", SANDING_MACHINE],
  ["Sand the top by machine", SANDING_MACHINE],
  ["Angle grinder with a flap disc", SANDING_MACHINE],
  ["Have it sandblasted", BLASTING],
  ["soda blasting", BLASTING],
  ["The compressor runs beside the bench.", LOUD_MACHINE],
];

const NOT_NAMED: readonly [string, Words][] = [
  ["No blowlamp and no heat gun: the paint is taken off with gel and scraper only.", OPEN_FLAME],
  ["No blowlamp and no heat gun: the paint is taken off with gel and scraper only.", HEAT_GUN],
  ["Never burn old paint off.", OPEN_FLAME],
  ["Keep naked flames away.", OPEN_FLAME],
  ["No open flame since the boiler moved next door.", OPEN_FLAME],
  ["Look along the top with a torch held low.", OPEN_FLAME],
  ["A flame birch veneer with burn marks", OPEN_FLAME],
  ["Fill dents with burn-in sticks", OPEN_FLAME],
  ["Scrape by hand instead of using a belt sander", SANDING_MACHINE],
  ["The belt sander must never touch veneer", SANDING_MACHINE],
  ["Sand by hand with a cork block", SANDING_MACHINE],
];

describe("tools and flames", () => {
  test.each(NAMED)("named: %s", (text, what) => expect(clauseNaming(text, what)).toBeDefined());
  test.each(NOT_NAMED)("not named: %s", (text, what) => expect(clauseNaming(text, what)).toBeUndefined());
});

describe("near heat", () => {
  test.each([
    "Dry the legs beside the stove.",
    "Stand it by the radiator overnight",
    "Warm the tin on the hot plate",
    "Put it in front of the gas fire",
    "hang the cloths over the boiler",
  ])("said: %s", (text) => expect(clauseNearHeat(text)).toBeDefined());
  test.each([
    "Keep it away from the stove.",
    "Never dry it by the radiator",
    "Mask the radiator",
    "The heater is off while the can is open",
    "Do not stand it near the boiler",
  ])("not said: %s", (text) => expect(clauseNearHeat(text)).toBeUndefined());
});

test("the highest temperature of a text, in Celsius", () => {
  // 1100 F = (1100 − 32) × 5/9 = 593.33 C.
  expect(hottestC("heat gun at 1100 F")).toBeCloseTo(593.33, 2);
  expect(hottestC("heat gun, 300 to 400 °C")).toBe(400);
  expect(hottestC("450 degrees C at most")).toBe(450);
  expect(hottestC("grit 120, 2 coats")).toBeUndefined();
});

test("filters and water", () => {
  expect(saysHepa("orbital sander with HEPA vacuum")).toBe(true);
  expect(saysHepa("orbital sander with a dust bag")).toBe(false);
  expect(saysWet("mist it with water first")).toBe(true);
  expect(saysWet("not wet, but dry")).toBe(false);
});
