/**
 * A file that is being typed: an open brace or a half-typed line takes no safety duty out of view, and what is stated
 * already is not asked for again at any keystroke.
 */
import { describe, expect, it } from "vitest";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf } from "../harness/check-text.ts";

const DUTY_RULES =
  /^(?:rags-not-wetted|flames-not-kept-away|no-(?:dust-mask|gloves|ventilation|respirator|eye-protection|hearing-protection|lead-safe-work))$/u;

const missingDuties = (text: string): readonly string[] =>
  [
    ...new Set(
      findingsOf(text)
        .flatMap(partsOf)
        .map(({ rule }) => rule),
    ),
  ]
    .filter((rule) => DUTY_RULES.test(rule))
    .toSorted();

const HEAD = `recipe finish {
  for    wood
  safety ventilate, gloves
  step   sand 120, 180
  step   dust
`;
const PIECE = `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  oak
`;

describe("what is half typed hides no duty that a sound line brings", () => {
  // Sanding asks for the mask; oil varnish for wet rags and for no flame near its spirits.
  const expected = ["flames-not-kept-away", "no-dust-mask", "rags-not-wetted"];
  it.each([
    ["whole", `${HEAD}  layer  oil_varnish\n  wait   until cured\n}\n`],
    ["without the last brace", `${HEAD}  layer  oil_varnish\n  wait   until cured\n`],
    ["an open coat block", `${HEAD}  layer  oil_varnish x 2 {\n    wait until re`],
    ["a layer without a material", `${HEAD}  layer  oil_varnish\n  layer`],
    ["half a name", `${HEAD}  layer  oil_varnish\n  layer  waterborne_polyur`],
    ["an open text", `${HEAD}  layer  oil_varnish\n  note "half typed\n`],
    ["half a follow", `${HEAD}  layer  oil_varnish\n  follow `],
    ["no opening brace", `${HEAD.replace(" {", "")}  layer  oil_varnish\n`],
    ["a piece above left open", `${PIECE}  }\n${HEAD}  layer  oil_varnish\n}\n`],
    ["a surface above left open", `${PIECE}\n${HEAD}  layer  oil_varnish\n}\n`],
    [
      "a job below left open",
      `${HEAD}  layer  oil_varnish\n}\n${PIECE}  }\n}\njob j {\n  apply finish to top\n`,
    ],
    ["another recipe below", `${HEAD}  layer  oil_varnish\n\nrecipe other {\n  layer\n`],
  ])("%s", (_, text) => {
    expect(missingDuties(text)).toEqual(expected);
  });
});

it("what is stated is asked for at no keystroke", () => {
  const start = `recipe finish {
  for    wood
  safety ventilate, no_ignition, wet_rags, dust_mask, gloves
`;
  const rest = `  step   sand 120, 180
  step   dust
  layer  oil_stain, wiped off after 10 min
  wait   until cured
  layer  oil_varnish x 2 {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
${PIECE}  }
}
job shelves {
  piece shelf
  apply finish to top
}
`;
  const asked = [...rest].flatMap((_, at) => {
    const typed = start + rest.slice(0, at);
    return missingDuties(typed).map((rule) => `${rule} after ${JSON.stringify(typed.slice(-20))}`);
  });
  expect(asked).toEqual([]);
});
