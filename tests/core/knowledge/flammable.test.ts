/** Categories of flammable liquids against 29 CFR 1910.106(a)(19). */
import { expect, test } from "vitest";
import { flammableCategory, vapourCanIgnite } from "../../../server/src/core/knowledge/flammable.ts";
import { canLight } from "../../../server/src/core/knowledge/ignition.ts";

// 29 CFR 1910.106(a)(19): category 1 flash < 23 °C and boiling ≤ 35 °C; 2 flash < 23 and boiling > 35;
// 3 flash 23 to 60 °C; 4 above 60 to 93 °C.
const vectors: readonly [number, number | undefined, 1 | 2 | 3 | 4 | undefined][] = [
  [-45, 34.6, 1],
  [-18, 56, 2],
  [13, 78, 2],
  [35, 154, 3],
  [40, 150, 3],
  [22.9, 35.0, 1],
  [22.9, 35.1, 2],
  [23.0, 20, 3],
  [23.0, undefined, 3],
  [60, 200, 3],
  [60.1, 200, 4],
  [93, 200, 4],
  [93.1, 200, undefined],
];

test.each(vectors)("flash %d °C, boiling %d °C is category %s", (flash, boils, category) => {
  expect(flammableCategory(flash, boils)).toBe(category);
});

test("without a boiling point a low flash point counts as category 2", () => {
  expect(flammableCategory(10)).toBe(2);
});

test("without a flash point there is no category", () => {
  expect(flammableCategory(undefined)).toBeUndefined();
  expect(flammableCategory(Number.NaN)).toBeUndefined();
});

test("the vapour of categories 1 to 3 can be lit, by any source but none", () => {
  expect(vapourCanIgnite(60)).toBe(true);
  expect(vapourCanIgnite(60.1)).toBe(false);
  expect(canLight("pilot light", 39, 154)).toBe(true);
  expect(canLight("none", -18, 56)).toBe(false);
  expect(canLight("heater", undefined)).toBe(false);
  expect(canLight("candle", -18)).toBe(false);
});
