/** What a missing or wrong brace, comma or quote costs, and what stays of the file around it. */
import { describe, expect, it } from "vitest";
import { parseFile } from "../../grammar/src/parse.ts";
import { mended, outline, problemsOf } from "./show.ts";

const PIECE = `piece p "T" {
  built 1936
  surface top {
    shape disc 9 mm
    wood oak
  }
  surface base {
    shape disc 9 mm
    wood oak
  }
}
`;
const RECIPE = `recipe r {
  for wood
  layer a x 3 {
    wait until recoat
    step sand 220
  }
  wait until cured
}
`;
const NEXT = "material next {\n  family soap\n}\n";

function without(text: string, line: number): string {
  return text
    .split("\n")
    .filter((_, idx) => idx !== line - 1)
    .join("\n");
}

/** The problems of a broken text with a sound declaration after it, and what the file consists of. */
function check(broken: string, problems: readonly string[], pieces: readonly string[]): void {
  const text = `${broken}\n${NEXT}`;
  const tree = parseFile(text);
  expect(problemsOf(text)).toEqual(problems);
  const kinds = tree.pieces.map((piece) => (piece.kind === "declaration" ? piece.key : piece.kind));
  expect(kinds.filter((kind) => kind !== "trivia")).toEqual([...pieces, "material next"]);
  if (mended(text) !== text) {
    expect(problemsOf(mended(text)).length).toBeLessThanOrEqual(problems.length);
  }
}

const MISSING = "expected `}` on a line of its own at the end of this";

describe("a missing `}`", () => {
  it("of a declaration is reported at its head", () => {
    check(without(PIECE, 11), [`1:1 "piece p" ${MISSING} piece [Add the \`}\`]`], ["piece p"]);
    check(without(RECIPE, 8), [`1:1 "recipe r" ${MISSING} recipe [Add the \`}\`]`], ["recipe r"]);
  });

  it("of a surface is reported at the surface", () => {
    check(without(PIECE, 6), [`3:3 "surface top" ${MISSING} surface [Add the \`}\`]`], ["piece p"]);
    check(without(PIECE, 10), [`7:3 "surface base" ${MISSING} surface [Add the \`}\`]`], ["piece p"]);
  });

  it("of a layer is reported at the layer, and the lines after it are the recipe's", () => {
    check(without(RECIPE, 6), [`3:3 "layer a" ${MISSING} layer [Add the \`}\`]`], ["recipe r"]);
    expect(outline(without(RECIPE, 6))).toBe(outline(RECIPE));
  });

  it("does not depend on indentation where the braces are right", () => {
    const flat = PIECE.replace(/^ +/gmu, "");
    check(flat, [], ["piece p"]);
    check(flat.replaceAll("\n}", "\n    }"), [], ["piece p"]);
  });

  it("at the end of the file leaves blank lines to the declaration", () => {
    const tree = parseFile("recipe r {\n  \n");
    expect(tree.pieces).toHaveLength(1);
  });

  it("leaves the documentation of the next declaration alone", () => {
    const tree = parseFile(`recipe r {\n  step dust\n\n## Docs.\n${NEXT}`);
    const next = tree.pieces.at(-1);
    expect(next?.kind === "declaration" && next.body.syntax.docs).toBe("Docs.");
  });
});

describe("a `}` too many", () => {
  it("costs only itself", () => {
    check(`${RECIPE}}\n`, ['9:1 "}" this `}` closes nothing [Remove the `}`]'], ["recipe r", "stray"]);
    check(
      PIECE.replace("  surface base", "  }\n  surface base"),
      ['7:3 "}" this `}` closes nothing [Remove the `}`]'],
      ["piece p"],
    );
  });

  it("is what a lost inner head leaves", () => {
    check(without(RECIPE, 3), ['5:3 "}" this `}` closes nothing [Remove the `}`]'], ["recipe r"]);
  });
});

describe("a missing `{`", () => {
  it("is reported at the head, and the block is read", () => {
    const text = RECIPE.replace("r {", "r");
    check(
      text,
      ['1:1 "recipe r" expected `{` at the end of the line: `recipe` opens a block [Add the `{`]'],
      ["recipe r"],
    );
    expect(outline(text)).toBe(outline(RECIPE));
  });

  it("of a surface or layer is seen by what follows", () => {
    for (const [text, from, word] of [
      [PIECE, "top {", "surface"],
      [RECIPE, "x 3 {", "layer"],
    ] as const) {
      const broken = text.replace(from, from.slice(0, -2));
      const problems = problemsOf(broken);
      expect(problems).toHaveLength(1);
      expect(problems[0]).toContain(`expected \`{\` at the end of the line: \`${word}\` opens a block`);
      expect(outline(broken)).toBe(outline(text));
      expect(mended(broken)).toBe(text);
    }
  });

  it("may be on the next line", () => {
    const text = PIECE.replace('"T" {', '"T"\n{');
    check(text, ['2:1 "{" `{` ends the line that it belongs to [Put the `{` on this line]'], ["piece p"]);
    expect(mended(text)).toBe(PIECE);
  });
});

describe("a block on one line", () => {
  it("is read", () => {
    check("material a { family soap }\n", [], ["material a"]);
    check("material a {\n  family soap }\n", [], ["material a"]);
  });

  it("may be followed by a declaration on its last line", () => {
    check(
      "material a {\n  family soap\n} material b {\n  family soap\n}\n",
      ['3:3 "" expected a line of its own for this declaration [Start a new line]'],
      ["material a", "stray", "material b"],
    );
  });

  it("of a misspelt word is skipped, since the word is reported elsewhere", () => {
    check("piece p {\n  surfce top {\n    wood oak\n  }\n  built 1936\n}\n", [], ["piece p"]);
  });
});

describe("a comma at the end of a line", () => {
  it("continues it, also before a comment or a blank line", () => {
    const text = "material a {\n  packs 1 L for 3, # small\n\n       5 L for 9\n}\n";
    check(text, [], ["material a"]);
    expect(outline(text)).toContain("sizes[1]");
  });

  it("is the error when the next line starts afresh", () => {
    const message =
      "nothing goes on after this comma: remove it, or go on in the next line [Remove the comma]";
    check("material a {\n  cure 3 h,\n  voc 3 g/L\n}\n", [`2:11 "," ${message}`], ["material a"]);
    check("material a {\n  cure 3 h,\n}\n", [`2:11 "," ${message}`], ["material a"]);
    check('material a {\n  family soap\n}\nuse "a",\n', [`4:8 "," ${message}`], ["material a", "use a"]);
  });

  it("goes on within parentheses before a word of the block that has a colon", () => {
    check("recipe r(a: material,\n  for: number) {\n  follow q(a: 3,\n    step: 3)\n}\n", [], ["recipe r"]);
  });

  it("within open parentheses before a line that starts afresh misses the parenthesis", () => {
    check(
      "recipe r {\n  follow q(a: 3,\n  step dust\n}\n",
      ['2:16 "" expected `)`, such as `follow prepare(clear: hall_clear)` [Add the `)`]'],
      ["recipe r"],
    );
  });
});

describe("an unclosed string", () => {
  it("ends at the end of its line, and leaves the `{` outside", () => {
    check(
      'piece p "Tab {\n  built 1936\n}\n',
      ['1:9 "\\"Tab" expected `"` at the end of this text [Close the quotes]'],
      ["piece p"],
    );
  });
});

describe("a lost head", () => {
  it("is one error, whatever the block had", () => {
    check(
      without(PIECE, 1),
      ['1:3 "built 1936" expected a declaration: `use`, `material`, `piece`, `shop`, `recipe` or `job`'],
      ["stray"],
    );
  });

  it("of a job does not make a declaration of its piece", () => {
    const text = `  piece table x 2\n  apply r to top\n}\n${NEXT}`;
    expect(parseFile(text).pieces.map((piece) => piece.kind)).toEqual(["stray", "declaration"]);
  });
});
