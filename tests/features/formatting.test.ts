/** Formatting of some lines of a file; the layout itself is tested with the grammar. */
import { describe, expect, test } from "vitest";
import { applyChanges } from "../../grammar/src/format.ts";
import { analyse } from "../harness/check-text.ts";

/** The text after its marked parts (`«…»`) were formatted. */
function formatMarked(marked: string): string {
  const text = marked.replace(/[«»]/gu, "");
  const spans = [...marked.matchAll(/«([^»]*)»/gu)].map((match, idx) => {
    const start = match.index - 2 * idx;
    return { start, end: start + match[1]!.length };
  });
  return applyChanges(text, analyse({ a: text }).formatting("a", spans));
}

describe("a range", () => {
  test.each([
    ["a caret", "shop s {\n air  18 C\n cr«»ew  1\n}\n", "shop s {\n air  18 C\n  crew 1\n}\n"],
    ["part of two lines", "shop s {\n air  1«8 C\n c»rew  1\n}\n", "shop s {\n  air  18 C\n  crew 1\n}\n"],
    ["a whole line", "shop s {\n« air   18 C\n» crew  1\n}\n", "shop s {\n  air  18 C\n crew  1\n}\n"],
    ["two parts", "shop  s«» {\n air  18 C\n crew  1\n }«»\n", "shop s {\n air  18 C\n crew  1\n}\n"],
    ["blank lines", "shop s {\n}\n«\n\n\n»shop  t {\n}\n", "shop s {\n}\n\nshop  t {\n}\n"],
    ["the end", "shop  s {\n}«»", "shop  s {\n}\n"],
  ])("%s", (_, before, after) => expect(formatMarked(before)).toBe(after));

  test("takes the column of its block, also from lines that it does not touch", () => {
    expect(formatMarked("shop s {\n «air» 18 C\n ignition none\n}\n")).toBe(
      "shop s {\n  air      18 C\n ignition none\n}\n",
    );
  });
});

test("a file that is not there has nothing to format", () => {
  expect(analyse({}).formatting("b")).toEqual([]);
});
