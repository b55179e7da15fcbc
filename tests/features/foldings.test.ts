/** What can be folded, drawn as `first-last kind` with lines from 1. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { anyText, edited } from "../grammar/any-text.ts";
import { analyse, lineOf } from "../harness/check-text.ts";

/** Those of more than one line. */
const draw = (text: string): readonly string[] =>
  analyse({ a: text })
    .foldings("a")
    .map(({ span, kind }) => [lineOf(text, span.start), lineOf(text, span.end), kind] as const)
    .filter(([first, last]) => first < last)
    .map(([first, last, kind]) => `${first}-${last} ${kind}`);

test("blocks, one in the other", () => {
  const text = [
    "piece p {", // 1
    "  surface top {",
    "    wood oak",
    "  }",
    "}", // 5
    "recipe r(a: material) {",
    "  layer a x 2 {",
    "    step dust",
    "  }",
    "}", // 10
  ].join("\n");
  expect(draw(text)).toEqual(["1-5 block", "2-4 block", "6-10 block", "7-9 block"]);
});

test("what stands between the braces is hidden", () => {
  const text = "shop s {  # it\n  crew 2\n}  # end";
  const [block] = analyse({ a: text }).foldings("a");
  expect(text.slice(block!.span.start, block!.span.end)).toBe("  # it\n  crew 2\n");
});

test("`use` lines in a row, also with comments and blank lines among them", () => {
  const text = 'use "a"\n# more\n\nuse "b"\nshop s {\n}\nuse "c"\n';
  expect(draw(text)).toEqual(["1-4 uses", "5-6 block"]);
});

test("comments one below the other, on lines of their own", () => {
  const text =
    "# a\n# b\n\n# alone\n\n## doc\n## doc\nshop s {  # x\n  # y\n  # z\n  crew 2  # v\n  # w\n}\n";
  expect(draw(text)).toEqual(["1-2 comment", "6-7 comment", "8-13 block", "9-10 comment"]);
});

test("regions, which comments do not run over", () => {
  const text =
    "# region Stock\n# what\n# else\n#region inner\n#endregion\n# endregion\n# endregion\n# regional\n";
  expect(draw(text)).toEqual(["1-6 region", "2-3 comment", "4-5 region"]);
});

test("statements and heads that commas carry over", () => {
  const text = "recipe r(a: material,\n  b: number) {\n  safety gloves,\n    dust_mask\n  step dust\n}\n";
  expect(draw(text)).toEqual(["1-2 statement", "2-6 block", "3-4 statement"]);
});

test("a block that is not closed folds nothing, and the blocks in it fold", () => {
  expect(draw("piece p {\n  surface top {\n    wood oak\n  }\n")).toEqual(["2-4 block"]);
  expect(draw("}\n}\nshop s {\n}\n")).toEqual(["3-4 block"]);
});

test("for any text they are in order and within it", () => {
  fc.assert(
    fc.property(fc.oneof(anyText, edited), (text) => {
      let start = 0;
      for (const { span } of analyse({ a: text }).foldings("a")) {
        expect(span.start).toBeGreaterThanOrEqual(start);
        expect(span.end).toBeGreaterThanOrEqual(span.start);
        expect(span.end).toBeLessThanOrEqual(text.length);
        start = span.start;
      }
    }),
    { numRuns: 80, seed: 20270308 },
  );
});
