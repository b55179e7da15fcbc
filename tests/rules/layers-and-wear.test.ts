/**
 * Borders of the rules on layers and wear that an example on a rule's page would be too long for.
 */
import { describe, expect, it } from "vitest";
import { analyse, lineOf, summary } from "../harness/check-text.ts";

const box = (wood: string, existing?: string, wear = "normal") => `piece box {
  built 1995
  surface lid {
    shape area 1 m2
    wood ${wood}
    ${existing ? `existing ${existing}` : "existing bare"}
    wear ${wear}
  }
}
`;
const SAFETY =
  "safety dust_mask, ventilate, no_ignition, wet_rags, gloves, vapour_respirator, eye_protection";
const recipe = (...lines: readonly string[]) => `recipe work {\n  ${SAFETY}\n  ${lines.join("\n  ")}\n}\n`;
const JOB = "job boxes {\n  piece box\n  apply work to lid\n}\n";

const rules = (text: string) => summary(text).map((line) => line.split(" ")[1]);
const rulesOf = (piece: string, ...lines: readonly string[]) => rules(piece + recipe(...lines) + JOB);

describe("an old finish", () => {
  it.each([
    [
      "scuffed through its wax, then dewaxed",
      "oil varnish, paste wax",
      ["step scuff 220", "step dewax with mineral_spirits", "step clean with soap"],
      [],
    ],
    [
      "scuffed, with its wax left on",
      "oil varnish, paste wax",
      ["step clean with soap", "step scuff 220", "step dust"],
      ["coat-over-wax"],
    ],
    [
      "sanded off, never cleaned",
      "oil varnish",
      ["step sand 80, 120", "step dust"],
      ["coat-on-unclean-surface"],
    ],
    [
      "scuffed and not dusted",
      "oil varnish",
      ["step clean with soap", "step scuff 220"],
      ["coat-on-unclean-surface"],
    ],
    ["cleaned only", "oil varnish", ["step clean with soap"], ["coat-on-unscuffed-surface"]],
    ["porous paint, cleaned only", "milk paint", ["step clean with soap"], []],
    [
      "wax under the finish",
      "paste wax, oil varnish",
      ["step clean with soap", "step scuff 220", "step dust"],
      [],
    ],
  ] as const)("%s", (_, existing, lines, expected) => {
    expect(rulesOf(box("beech", existing), ...lines, "layer oil_varnish", "wait until cured")).toEqual(
      expected,
    );
  });

  it("is judged as the worst it may be", () => {
    const lines = ["step clean with soap", "step scuff 220", "step dust"];
    const over = (layer: string) =>
      rulesOf(box("beech", "unknown clear"), ...lines, `layer ${layer}`, "wait until cured");
    expect(over("dewaxed_shellac")).toEqual([]);
    expect(over("oil_varnish")).toEqual([]);
    expect(over("oil_polyurethane")).toEqual(["waxed-shellac-below"]);
    expect(over("nitrocellulose_lacquer")).toEqual(["solvent-lifts-layer"]);
  });
});

describe("hard wear", () => {
  const hard = box("beech", undefined, "hard");
  const END = "wait until cured";
  it.each([
    ["two coats", ["layer oil_varnish x 2 {", "wait until recoat", "}", END], ["too-weak-for-wear"]],
    ["three coats", ["layer oil_varnish x 3 {", "wait until recoat", "}", END], []],
    [
      "two coats of enamel",
      ["layer alkyd_paint x 2 {", "wait until recoat", "}", END],
      ["too-weak-for-wear"],
    ],
    ["three coats of enamel", ["layer alkyd_paint x 3 {", "wait until recoat", "}", END], []],
    [
      "enamel over its primer",
      ["layer alkyd_primer", "wait 24 h", "layer alkyd_paint x 2 {", "wait until recoat", "}", END],
      [],
    ],
    [
      "two coats of conversion varnish",
      ["layer conversion_varnish x 2 {", "wait until recoat", "}", END],
      [],
    ],
    ["one coat of hardwax oil", ["layer hardwax_oil, wiped off", END], ["too-weak-for-wear"]],
    ["two of hardwax oil", ["layer hardwax_oil x 2, wiped off {", "wait until recoat", "}", END], []],
    [
      "five wiped coats",
      ["layer wiping_varnish x 5, wiped off {", "wait until recoat", "}", END],
      ["too-weak-for-wear"],
    ],
    ["six wiped coats", ["layer wiping_varnish x 6, wiped off {", "wait until recoat", "}", END], []],
    [
      "linseed oil",
      ["layer drying_oil x 3, wiped off {", "wait until recoat", "}", END],
      ["not-for-this-use"],
    ],
    ["a stain alone", ["layer oil_stain, wiped off", END], ["unprotected-layer"]],
    [
      "enamel and one clear",
      ["layer alkyd_paint", "wait until recoat", "layer oil_varnish", END],
      ["too-weak-for-wear"],
    ],
    ["nothing but preparation", ["step sand 150", "step dust"], []],
  ] as const)("%s", (_, lines, expected) => {
    expect(rulesOf(hard, ...lines)).toEqual(expected);
  });
});

describe("work in parts", () => {
  const parts = `${box("beech")}recipe coloured {
  ${SAFETY}
  layer oil_stain, wiped off
  wait 72 h
}
recipe varnished {
  ${SAFETY}
  layer oil_varnish
  wait until cured
}
job first {
  piece box
  apply coloured to lid
}
`;
  it("is judged where it ends", () => {
    expect(summary(parts)).toEqual(["12 unprotected-layer"]);
    expect(
      summary(`${parts}job second {\n  piece box\n  after first\n  apply varnished to all\n}\n`),
    ).toEqual([]);
  });
});

it("a recipe of another file that is not for the surface is reported on the line that applies it", () => {
  const job = `use "recipes.finish"\n${box("laminate")}${JOB}`;
  const analysis = analyse({
    "job.finish": job,
    "recipes.finish": `recipe work {\n  for wood\n  ${SAFETY}\n  step scuff 220\n  step dust\n  layer bonding_primer\n  wait until cured\n}\n`,
  });
  const found = analysis.findings("job.finish").map((f) => `${lineOf(job, f.span.start)} ${f.rule}`);
  expect(found).toEqual(["13 recipe-not-for-surface"]);
});
