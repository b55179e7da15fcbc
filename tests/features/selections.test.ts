/** What a selection grows to from the caret `|`: the texts, from the inside out. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyText, edited } from "../grammar/any-text.ts";
import { analyse } from "../harness/check-text.ts";

function grow(marked: string): readonly string[] {
  const offset = marked.indexOf("|");
  const text = marked.replace("|", "");
  return analyse({ a: text })
    .selections("a", offset)
    .map(({ start, end }) => text.slice(start, end));
}

describe("from a word", () => {
  test("of a value: the value, all that the line says, the line, its block, the declaration, the file", () => {
    const block = "family glaze\n  packs  1 L for 5.00, 2 L for 9.00";
    const declaration = `material m {\n  ${block}\n}`;
    expect(grow(`# top\n\n## doc\n${declaration.replace("9.00", "9.|00")}\n`)).toEqual([
      "9.00",
      "2 L for 9.00",
      "1 L for 5.00, 2 L for 9.00",
      "packs  1 L for 5.00, 2 L for 9.00",
      block,
      declaration,
      `## doc\n${declaration}`,
      `# top\n\n## doc\n${declaration}\n`,
    ]);
  });

  test("of an argument: the argument, the call, the statement", () => {
    expect(grow("job j {\n  apply r(a: b|c, d: e) to top, base\n}").slice(0, 5)).toEqual([
      "bc",
      "a: bc",
      "r(a: bc, d: e)",
      "r(a: bc, d: e) to top, base",
      "apply r(a: bc, d: e) to top, base",
    ]);
  });

  test("of a line with a block: the line, then the block with it", () => {
    const layer = "layer clear x 2 {\n    step dust\n  }";
    const text = `recipe r {\n  step scrape\n  ${layer}\n}\n`;
    expect(grow(text.replace("clear", "cl|ear"))).toEqual([
      "clear",
      "clear x 2",
      "layer clear x 2",
      layer,
      `step scrape\n  ${layer}`,
      text.trimEnd(),
      text,
    ]);
    expect(grow(text.replace("dust", "|dust")).slice(0, 3)).toEqual(["dust", "step dust", layer]);
  });

  test("of a head: what it says, the head, the declaration", () => {
    const text = "recipe r(a: material, n: number = 3) {\n}";
    expect(grow(text.replace("number", "num|ber"))).toEqual([
      "number",
      "n: number = 3",
      "r(a: material, n: number = 3)",
      "recipe r(a: material, n: number = 3)",
      text,
    ]);
  });

  test("of a quantity of several parts", () => {
    expect(grow("piece p {\n  surface s {\n    shape area 5 f|t 6 in\n  }\n}").slice(0, 3)).toEqual([
      "ft",
      "5 ft 6 in",
      "area 5 ft 6 in",
    ]);
  });
});

describe("from a text or a comment", () => {
  test("in quotes: the word, what the quotes hold, the quotes", () => {
    expect(grow('shop s "Old m|ill" {\n}').slice(0, 4)).toEqual([
      "mill",
      "Old mill",
      '"Old mill"',
      's "Old mill"',
    ]);
  });

  test("on a line of its own: the word, the comment, those around it", () => {
    expect(grow("# one\n# two th|ree\n\n# four\n")).toEqual([
      "three",
      "# two three",
      "# one\n# two three",
      "# one\n# two three\n\n# four\n",
    ]);
  });

  test("behind a line: the word, the comment, the block", () => {
    expect(grow("shop s {\n  crew 2  # hands o|n deck\n}")).toEqual([
      "on",
      "# hands on deck",
      "crew 2  # hands on deck",
      "shop s {\n  crew 2  # hands on deck\n}",
    ]);
  });
});

test("on a blank line there is the declaration and the file, and in an empty file nothing more", () => {
  const text = "shop s {\n|\n  crew 2\n}\n";
  expect(grow(text)).toEqual(["shop s {\n\n  crew 2\n}", "shop s {\n\n  crew 2\n}\n"]);
  expect(grow("|")).toEqual([""]);
});

test("for any text each holds the caret and the one before it, and the last is the file", () => {
  fc.assert(
    fc.property(fc.oneof(anyText, edited), fc.nat(2000), (text, at) => {
      const offset = Math.min(at, text.length);
      const spans = analyse({ a: text }).selections("a", offset);
      let inner = { start: offset, end: offset };
      for (const [idx, span] of spans.entries()) {
        expect(span.start <= inner.start && inner.end <= span.end).toBe(true);
        expect(idx === 0 || span.end - span.start > inner.end - inner.start).toBe(true);
        inner = span;
      }
      expect(inner).toEqual({ start: 0, end: text.length });
    }),
    { numRuns: 80, seed: 20270308 },
  );
});
