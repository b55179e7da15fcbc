/** The order of findings in the terminal: by level, and within one level people first and spelling last. */
import { expect, test } from "vitest";
import { gravestFirst } from "../../server/src/reports/reported.ts";
import { findingsOf } from "../harness/check-text.ts";

/** In the text: a misspelt verb, a missing wait, and at the end rags that nobody wets. */
const TEXT = `recipe oiled {
  for    wood
  safety no_ignition, ventilate, dust_mask
  step   snad 120, 180
  step   dust
  layer  gel_stain, wiped off
  layer  waterborne_polyurethane
  wait   until cured
}
`;

test("lead, poison and fire come before the film, and the film before the words", () => {
  const errors = gravestFirst(findingsOf(TEXT)).filter(({ severity }) => severity === "error");
  expect(errors.map(({ rule }) => rule)).toEqual([
    "rags-not-wetted",
    "waterborne-over-uncured-oil",
    "unknown-word",
  ]);
});
