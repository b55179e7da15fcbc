/** Units as print has them, behind figures alone. */
import { expect, test } from "vitest";
import { printedUnits } from "../../server/src/escape/printed-units.ts";

test.each([
  ["2 × 1.185 m2 = 2.37 m2", "2 × 1.185 m² = 2.37 m²"],
  ["1584 m3/h in 145 m3", "1584 m³/h in 145 m³"],
  ["under the 350 mg/m3 of mineral spirits", "under the 350 mg/m³ of mineral spirits"],
  ["12 m2/L, 20 ft2", "12 m²/L, 20 ft²"],
  ["wet 100 um at 18 to 22 C", "wet 100 µm at 18 to 22 °C"],
  ["65\u00a0F", "65\u00a0°F"],
  // Not behind a figure, or part of a word.
  ["surface m2, coats 1 and 2 (B, C), 3 Cans, 4 m2x", "surface m2, coats 1 and 2 (B, C), 3 Cans, 4 m2x"],
])("%s", (typed, printed) => {
  expect(printedUnits(typed)).toBe(printed);
});
