/** Help with arguments at the caret `|`: the signature, with the parameter that is being given in `[ ]`. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyText, edited } from "../grammar/any-text.ts";
import { analyse } from "../harness/check-text.ts";

const RECIPES = `
## Three thin coats.
recipe hard(stain: material, clear: material, coats: number = 3, dry: duration = 2 h) "Hard clear" {
  layer stain, wiped off
  layer clear x coats
  wait  dry
}

recipe plain {
  step dust
}

recipe outer(next: recipe = hard) {
  follow next(|)
}
`;

function help(line: string, recipes = RECIPES.replace("|", "")): readonly string[] {
  const marked = `${recipes}\njob j {\n  ${line}\n}\n`;
  const offset = marked.indexOf("|");
  return signatures(marked.replace("|", ""), offset);
}

const signatures = (text: string, offset: number): readonly string[] =>
  analyse({ a: text })
    .signatures("a", offset)
    .map(({ label, parameters, active }) => {
      const span = active === undefined ? undefined : parameters[active]!.span;
      return span
        ? `${label.slice(0, span.start)}[${label.slice(span.start, span.end)}]${label.slice(span.end)}`
        : label;
    });

const HARD = "hard(stain: material, clear: material, coats: number = 3, dry: duration = 2 h)";
const hard = (active: string): readonly string[] => [HARD.replace(active, `[${active}]`)];

describe("the parameter", () => {
  test.each([
    ["the first that is missing", "apply hard(|", "stain: material"],
    ["the next behind a comma", "apply hard(stain: gel_stain, |", "clear: material"],
    ["the one that is missing before others", "apply hard(|, stain: gel_stain) to all", "clear: material"],
    ["the one that is named", "apply hard(coats: |", "coats: number = 3"],
    ["at its number", "apply hard(coats: 3|)", "coats: number = 3"],
    ["at its name", "apply hard(cl|ear: shellac, stain: x) to all", "clear: material"],
    ["the one whose name begins like this", "apply hard(co|", "coats: number = 3"],
    ["by its place, where no name fits", "apply hard(gel_stain|", "stain: material"],
    ["in the next line", "apply hard(stain: gel_stain,\n    dr|y: 3 h) to all", "dry: duration = 2 h"],
    ["behind a comment", "apply hard(stain: gel_stain,  # why\n    |", "clear: material"],
  ])("%s", (_, line, active) => expect(help(line)).toEqual(hard(active)));

  test("is none where a name fits none, or all are given", () => {
    expect(help("apply hard(colour: |")).toEqual([HARD]);
    expect(help("apply hard(stain: a, clear: b, coats: 1, dry: 1 h, |")).toEqual([HARD]);
  });
});

describe("there is help", () => {
  test("for a recipe without parameters", () => {
    expect(help("apply plain(|) to all")).toEqual(["plain()"]);
  });

  test("for what a recipe parameter may stand for", () => {
    const offset = RECIPES.indexOf("|");
    expect(signatures(RECIPES.replace("|", ""), offset)).toEqual(hard("stain: material"));
    const second = `${RECIPES.replace("|", "")}\nrecipe thin(oil: material) {\n}\njob j {\n  apply outer(next: thin) to all\n}\n`;
    expect(signatures(second, offset)).toEqual([...hard("stain: material"), "thin([oil: material])"]);
  });
});

describe("there is no help", () => {
  test.each([
    ["before the parenthesis", "apply hard|(stain: x)"],
    ["behind it", "apply hard(stain: x)| to all"],
    ["for what is no recipe", "apply soft(|"],
    ["in a comment", "apply hard(stain: x,  # (|"],
    ["on the next line, which begins afresh", "apply hard(stain: x\n  ready |"],
    ["in the head of a recipe", "}\nrecipe hard(|"],
  ])("%s", (_, line) => expect(help(line)).toEqual([]));
});

test("says what the recipe does and what a parameter takes", () => {
  const text = `${RECIPES.replace("|", "")}\njob j {\n  apply hard(`;
  const [signature] = analyse({ a: text }).signatures("a", text.length);
  expect(signature?.markdown).toBe("Hard clear\n\nThree thin coats.");
  expect(signature?.parameters.map(({ markdown }) => markdown)).toEqual([
    "The name of a material. It must be given.",
    "The name of a material. It must be given.",
    "A number, such as `3`. It may be left out.",
    "A time, such as `72 h`. It may be left out.",
  ]);
});

test("for any text and place there is an answer", () => {
  fc.assert(
    fc.property(fc.oneof(anyText, edited), fc.nat(8000), (text, at) => {
      for (const { label, parameters, active } of analyse({ a: text }).signatures("a", at)) {
        expect(active === undefined || active < parameters.length).toBe(true);
        for (const { span } of parameters) expect(label.slice(span.start, span.end)).not.toBe("");
      }
    }),
    { numRuns: 80, seed: 20270308 },
  );
});
