/**
 * Which surfaces a recipe is judged on where no job applies it. The expected pairs are what a reader of the file would
 * say at once; where two readers could differ, none is expected.
 */
import { describe, expect, test } from "vitest";
import { findingsOf } from "../../harness/check-text.ts";
import { meantIn } from "./run-of.ts";

const surface = (name: string, substrate = "wood beech", more = ""): string =>
  `  surface ${name} {\n    shape area 1 m2\n    ${substrate}\n${more}  }\n`;

const piece = (name: string, ...surfaces: readonly string[]): string =>
  `piece ${name} {\n  built 2020\n${surfaces.join("")}}\n`;

const recipe = (name: string, kinds?: string, lines = "layer oil_varnish"): string =>
  `recipe ${name} {\n${kinds ? `  for ${kinds}\n` : ""}  ${lines}\n}\n`;

describe("a recipe that no job applies is meant", () => {
  test.each([
    [
      "for all of the only piece",
      [piece("desk", surface("top"), surface("legs")), recipe("clear")],
      { clear: ["top", "legs"] },
    ],
    [
      "for every piece, where it is the only recipe",
      [piece("desk", surface("top")), piece("stool", surface("seat")), recipe("clear")],
      { clear: ["desk.top", "stool.seat"] },
    ],
    [
      "for what its `for` fits alone",
      [
        piece("desk", surface("top"), surface("frame", "wood steel")),
        recipe("clear", "wood"),
        recipe("paint", "metal"),
      ],
      { clear: ["top"], paint: ["frame"] },
    ],
    [
      "for nothing that its `for` rules out",
      [piece("desk", surface("frame", "wood steel")), recipe("clear", "wood")],
      { clear: [] },
    ],
    [
      "for the piece that its name names",
      [
        piece("desk", surface("top")),
        piece("stool", surface("seat")),
        recipe("brown_desk"),
        recipe("white_stools"),
      ],
      { brown_desk: ["desk.top"], white_stools: ["stool.seat"] },
    ],
    [
      "for the surface that its name names, and no other",
      [piece("desk", surface("top"), surface("legs")), recipe("hard_top")],
      { hard_top: ["top"] },
    ],
    [
      "for none where two recipes are left",
      [piece("desk", surface("top")), recipe("pale"), recipe("matt")],
      { pale: [], matt: [] },
    ],
    [
      "for none that an earlier job left",
      [piece("desk", surface("top", "wood beech", "    existing as left by first\n")), recipe("clear")],
      { clear: [] },
    ],
  ])("%s", (_, text, expected) => {
    expect(meantIn(text.join("\n"))).toEqual(expected);
  });

  test("and nothing is looked for without a piece, or where jobs and recipes use it", () => {
    const desk = piece("desk", surface("top"));
    const job = (name: string) => `job one {\n  piece desk\n  apply ${name} to top\n}\n`;
    expect(meantIn(recipe("clear"))).toEqual({ clear: undefined });
    expect(meantIn([desk, recipe("clear"), job("clear")].join("\n"))).toEqual({ clear: undefined });
    expect(meantIn([desk, recipe("clear"), recipe("pale"), job("clear")].join("\n"))).toEqual({
      clear: undefined,
      pale: undefined,
    });
    expect(meantIn([desk, recipe("clear"), recipe("all", undefined, "follow clear")].join("\n"))).toEqual({
      clear: undefined,
      all: ["top"],
    });
  });

  test("one that another piece waits for is left alone when a job is written", () => {
    const text = [
      piece("desk", surface("top")),
      piece("stool", surface("seat")),
      recipe("clear"),
      recipe("pale"),
    ];
    const job = "job one {\n  piece desk\n  apply clear to top\n}\n";
    expect(meantIn([...text, job].join("\n"))).toEqual({ clear: undefined, pale: ["seat"] });
  });
});

describe("what is found of such a recipe", () => {
  const found = (text: string, rule: string) => findingsOf(text).filter((each) => each.rule === rule);
  const stain = recipe("brown", "wood", "layer oil_stain");

  test("names the piece and its surfaces, and says that no job applies it", () => {
    const [finding, ...more] = found(
      [piece("shelf", surface("top", "wood pine"), surface("back", "wood pine")), stain].join("\n"),
      "blotchy-stain",
    );
    expect(more).toEqual([]);
    expect(finding?.where).toBe(
      "Piece `shelf`, surfaces `top` and `back`: no job applies this recipe yet, and this is what it seems to be for.",
    );
    expect(finding?.job).toBeUndefined();
  });

  test("is as grave as in a job, and said once", () => {
    const text = [
      piece("bench", surface("seat", "wood pine", "    wear hard\n    existing unknown paint\n")).replace(
        "2020",
        "1950",
      ),
      recipe("smooth", "wood", "step sand 120"),
    ].join("\n");
    const job = "job all {\n  piece bench\n  apply smooth to seat\n}\n";
    const rules = (all: string) =>
      findingsOf(all)
        .map((each) => `${each.severity} ${each.rule}`)
        .toSorted();
    expect(rules(text)).toContain("error lead-not-tested");
    expect(rules(text)).toEqual(rules(`${text}\n${job}`));
  });

  test("holds whatever the job where it needs no piece", () => {
    const text = recipe("varnish", "wood", "layer oil_varnish, sprayed");
    const alone = findingsOf(text).map((each) => each.message);
    const paired = findingsOf([piece("desk", surface("top")), text].join("\n")).map((each) => each.message);
    expect(paired).toEqual(alone);
  });

  test("assumes no shop, no date and no stock", () => {
    const groups = findingsOf([piece("desk", surface("top")), stain].join("\n")).map(({ rule }) => rule);
    for (const rule of ["no-schedule", "not-enough-on-hand", "ventilation-too-weak", "late", "over-budget"])
      expect(groups).not.toContain(rule);
  });
});
