/**
 * Where two rules look at the same line only one of them speaks, and rules on habits of the bench stay silent wherever
 * a sound recipe could be meant.
 */
import { describe, expect, it } from "vitest";
import { findingsOf, summary } from "../harness/check-text.ts";

const SAFETY =
  "safety dust_mask, ventilate, no_ignition, wet_rags, gloves, vapour_respirator, eye_protection";
const MATERIALS = `material white_oil "White oil paint" {
  family alkyd paint
  colour white
}
material white_water "White enamel" {
  family acrylic paint
  colour white
}
material dark_stain "Dark stain" {
  family oil stain
  colour "#3b2a1c"
}
`;

interface Work {
  readonly wood?: string;
  readonly shape?: string;
  readonly built?: number;
  readonly existing?: string;
  readonly lines: readonly string[];
}

function rulesOf({ wood = "beech", shape = "panel 1 m x 1 m x 20 mm", built = 1995, existing, lines }: Work) {
  const text = `${MATERIALS}piece board {
  built ${built}
  surface face {
    shape ${shape}
    wood ${wood}
    existing ${existing ?? "bare"}
  }
}
recipe work {
  ${SAFETY}
  ${lines.join("\n  ")}
  wait until cured
}
job boards {
  piece board
  apply work to face
}
`;
  return summary(text).map((line) => line.split(" ")[1]);
}

const CLEAR = ["wait until cured", "layer oil_varnish"];

describe("one rule a mistake", () => {
  const cases: readonly (readonly [string, Work, readonly string[]])[] = [
    ["waterborne white on pine", { wood: "pine", lines: ["layer white_water"] }, ["tannin-bleed"]],
    ["oil white on pine", { wood: "pine", lines: ["layer white_oil"] }, ["knots-not-sealed"]],
    [
      "oil white on pine, the second coat",
      { wood: "pine", lines: ["layer white_oil x 2 {", "wait until recoat", "}"] },
      ["knots-not-sealed"],
    ],
    ["oil white on oak", { wood: "white oak", lines: ["layer white_oil"] }, []],
    [
      "oil white over alkyd primer",
      { wood: "pine", lines: ["layer alkyd_primer", "wait 24 h", "layer white_oil"] },
      [],
    ],
    [
      "dark stain on 100",
      { lines: ["step sand 80, 100", "step dust", "layer dark_stain, wiped off", ...CLEAR] },
      ["grit-too-coarse"],
    ],
    [
      "dark stain on 120 over solid maple",
      { wood: "maple", lines: ["step sand 120", "step dust", "layer dark_stain, wiped off", ...CLEAR] },
      ["blotchy-stain"],
    ],
    [
      "paint on wood sanded to 600",
      { lines: ["step sand 120, 220, 320, 600", "step dust", "layer white_oil"] },
      ["grit-too-fine"],
    ],
    [
      "scuffed metal painted without primer",
      { wood: "metal", lines: ["step scuff 220", "step dust", "layer white_oil"] },
      ["slick-surface-without-primer"],
    ],
    [
      "metal painted neither scuffed nor primed",
      { wood: "metal", lines: ["layer white_oil"] },
      ["slick-surface-without-primer"],
    ],
    [
      "metal neither scuffed nor cleaned",
      { wood: "metal", lines: ["layer bonding_primer", "wait until recoat", "layer white_oil"] },
      ["coat-on-unscuffed-surface"],
    ],
    [
      "wax never taken off",
      {
        existing: "oil varnish, paste wax",
        lines: ["step clean with soap", "step sand 80, 120", "step dust", "layer oil_varnish"],
      },
      ["coat-over-wax"],
    ],
    [
      "40 goes through in the end",
      {
        wood: "walnut, veneer 0.6 mm",
        lines: ["step sand 40, 60, 80, 120", "step dust", "layer oil_varnish"],
      },
      ["sand-through"],
    ],
    [
      "tape on a coat that the next one comes too early for as well",
      {
        lines: [
          "layer white_oil",
          "wait 10 h",
          'step mask "a stripe"',
          "layer white_oil",
          "wait until touch",
          "step unmask",
        ],
      },
      ["recoat-too-early"],
    ],
    [
      "steel wool and then oil varnish, waterborne only above it",
      {
        lines: ["layer oil_varnish", "wait 24 h", 'note "Steel wool, 0000."', "layer oil_varnish"],
      },
      [],
    ],
  ];
  it.each(cases)("%s", (_, work, expected) => {
    expect(rulesOf(work)).toEqual(expected);
  });
});

describe("words that take themselves back", () => {
  const covered = (note: string) =>
    rulesOf({ lines: ["layer white_water", "wait 24 h", `note "${note}"`] }).filter(
      (rule) => rule === "covered-before-cure",
    ).length;
  it.each([
    ["Stack them face to face.", 1],
    ["Wrap it in blankets.", 1],
    ["Do not stack them.", 0],
    ["Stack them once they have hardened.", 0],
    ["Stack the doors with spacers.", 0],
    ["Wrap the paper round a cork block.", 0],
    ["Stackable chairs: mind the feet.", 0],
  ])("%s", (note, found) => {
    expect(covered(note)).toBe(found);
  });

  it("steel wool is named in every sense, and only a plain word counts", () => {
    const found = (note: string) =>
      rulesOf({
        lines: [
          "layer white_water",
          "wait 4 h",
          `note "${note}"`,
          "step sand 320",
          "step dust",
          "layer white_water",
        ],
      });
    expect(found("Rub with 0000 steel wool.")).toEqual(["steel-wool-under-waterborne"]);
    expect(found("Don't use steel wool.")).toEqual([]);
    expect(found("A grey pad instead of steel wool.")).toEqual([]);
    expect(found("Synthetic steel wool, grey.")).toEqual([]);
  });
});

it("a message names the material that a parameter stands for", () => {
  const text = `material hall_clear "Clear" {
  family waterborne polyurethane
  recoat 2 h to 24 h
}
recipe coats(clear: material = hall_clear) {
  layer clear x 2 {
    wait 1 min
  }
  wait  until cured
}
recipe built_in(clear: material = waterborne_polyurethane) {
  layer clear x 2 {
    wait 1 min
  }
  wait  until cured
}
`;
  const times = findingsOf(text).map(({ why }) => why.split("\n").at(-1));
  expect(times).toEqual([
    "The label of `clear` (`hall_clear`, waterborne polyurethane) asks for 2 h.",
    "3 h is a typical figure for `clear` (`waterborne_polyurethane`), the label decides.",
  ]);
});
