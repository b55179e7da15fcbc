/** An unknown clear is judged as what its spot tests leave; one that is not tested as the worst that it may be. */
import { describe, expect, it } from "vitest";
import { summary } from "../harness/check-text.ts";

const SAFETY = "safety ventilate, no_ignition, dust_mask, vapour_respirator, eye_protection, gloves";

const rules = (surface: readonly string[], layer: string): readonly (string | undefined)[] =>
  summary(`piece box {
  built 1995
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
${surface.map((line) => `    ${line}\n`).join("")}  }
}
recipe renew {
  ${SAFETY}
  step   clean with soap
  step   scuff 320
  step   dust
  layer  ${layer}
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`).map((line) => line.split(" ")[1]);

const UNKNOWN = "existing unknown clear";
const LACQUER = "precatalyzed_lacquer, by hvlp";

describe("an unknown clear", () => {
  // Lacquer thinner lifts varnish; lacquer melts into lacquer, and shellac is the usual barrier below it.
  it.each([
    ["not tested", [UNKNOWN], LACQUER, "solvent-lifts-layer", true],
    [
      "lacquer by two lines of tests",
      [UNKNOWN, "tested alcohol nothing", "tested lacquer thinner softens"],
      LACQUER,
      "solvent-lifts-layer",
      false,
    ],
    ["shellac by its test", [UNKNOWN, "tested alcohol softens"], LACQUER, "solvent-lifts-layer", false],
    ["not tested below polyurethane", [UNKNOWN], "waterborne_polyurethane", "waxed-shellac-below", true],
    [
      "no shellac by its test",
      [UNKNOWN, "tested alcohol nothing"],
      "waterborne_polyurethane",
      "waxed-shellac-below",
      false,
    ],
    [
      "tested through its wax",
      [`${UNKNOWN}, paste wax`, "tested alcohol softens, alcohol nothing"],
      LACQUER,
      "test-contradicts-existing",
      true,
    ],
    [
      "tests that leave nothing",
      [UNKNOWN, "tested alcohol nothing, alcohol softens"],
      "waterborne_polyurethane",
      "waxed-shellac-below",
      true,
    ],
    [
      "not the finish on top",
      [`${UNKNOWN}, alkyd paint`, "tested alcohol nothing"],
      LACQUER,
      "test-contradicts-existing",
      false,
    ],
  ] as const)("%s", (_, surface, layer, rule, found) => {
    expect(rules(surface, layer).includes(rule)).toBe(found);
  });

  it("is lead's to test all the same", () => {
    const old = (...surface: readonly string[]) =>
      rules(surface, "dewaxed_shellac").filter((rule) => rule?.startsWith("lead"));
    expect(old(UNKNOWN, "tested alcohol softens")).toEqual(old(UNKNOWN));
  });
});
