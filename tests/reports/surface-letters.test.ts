import { expect, test } from "vitest";
import { surfaceLetters } from "../../server/src/reports/surface-letters.ts";

test("letters go on behind Z as the columns of a sheet do", () => {
  const titles = Array.from({ length: 54 }, (_, i) => `surface ${i}`);
  const letters = surfaceLetters(titles);
  expect([0, 25, 26, 27, 51, 52].map((i) => letters.get(`surface ${i}`))).toEqual([
    "A",
    "Z",
    "AA",
    "AB",
    "AZ",
    "BA",
  ]);
  expect(surfaceLetters(["Top", "Top"]).size).toBe(0);
});
