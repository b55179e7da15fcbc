/** What a job gives off, by hand. */
import { expect, test } from "vitest";
import { vocGrams } from "../../../server/src/core/fumes/voc.ts";

test("grams of a job are litres with their spare times the material count", () => {
  // 1.17612 L · 180 g/L = 211.7016 g
  expect(vocGrams(1.17612, 180)).toBeCloseTo(211.7016, 9);
});
