/**
 * A finish renewed in a job of its own after years of use: what cleaning it needs, by the finish. Common practice, no
 * source: wax is dusted and waxed again; every other finish is washed or wiped with mineral spirits first, and a film
 * that has set is scuffed as well.
 */
import { describe, expect, it } from "vitest";
import { findingsOf } from "../harness/check-text.ts";

const DUTIES = "safety no_ignition, dust_mask, ventilate, gloves, wet_rags";

/** The findings from hints up on a finish made in 2024 and renewed in 2026. */
function renewed(layer: string, ...steps: readonly string[]): readonly string[] {
  const text = `shop mill {
  country US
  hours   Mon to Fri 08:00 to 17:00
}
piece shelf {
  built 2015
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}
recipe made {
  for  wood
  ${DUTIES}
  step sand 120, 180
  step dust
  layer ${layer}
  wait until cured
}
recipe renewed {
  for  wood
  ${DUTIES}
  ${[...steps, `layer ${layer}`].join("\n  ")}
  wait until cured
}
job made_new {
  piece shelf
  in    mill
  start 2024-01-08
  apply made to top
}
job made_again {
  piece shelf
  in    mill
  after made_new
  start 2026-01-12
  apply renewed to top
}
`;
  return findingsOf(text)
    .filter(({ severity }) => severity !== "information")
    .map(({ rule, severity }) => `${severity} ${rule}`);
}

describe("wax", () => {
  it.each([
    ["dusted", ["step dust"]],
    ["buffed up", ["step buff"]],
    ["washed", ["step clean with soap", "wait 24 h"]],
    ["wiped with mineral spirits", ["step clean with mineral_spirits"]],
    ["dewaxed", ["step dewax with mineral_spirits"]],
  ])("%s is renewed without a word", (_, steps) => {
    expect(renewed("paste_wax", ...steps)).toEqual([]);
  });

  it("is to be dusted, which is no more than a hint", () => {
    expect(renewed("paste_wax")).toEqual(["hint coat-on-unclean-surface"]);
  });
});

describe("other finishes", () => {
  it.each([
    ["hardwax_oil, wiped off", []],
    ["drying_oil, wiped off", []],
    ["dewaxed_shellac", []],
    ["oil_varnish", ["step scuff 320", "step dust"]],
    ["waterborne_polyurethane", ["step scuff 320", "step dust"]],
  ])("%s is renewed once it is clean", (layer, scuffing) => {
    for (const cleaning of [["step clean with soap", "wait 24 h"], ["step clean with mineral_spirits"]])
      expect(renewed(layer, ...cleaning, ...scuffing)).toEqual([]);
    expect(renewed(layer, "step dust", ...scuffing)).toEqual(["warning coat-on-unclean-surface"]);
  });

  it("scuffing from when the finish was new is worn smooth", () => {
    expect(renewed("oil_varnish", "step clean with mineral_spirits")).toEqual([
      "warning coat-on-unscuffed-surface",
    ]);
  });
});
