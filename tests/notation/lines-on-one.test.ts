/**
 * Several lines written on one: a block between its braces, lines with `;` between them, work that follows other work, pieces
 * and recipes in a list. All is read as if each stood on a line of its own, and the plain form writes it so.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { composeChanges } from "../../grammar/src/compose-changes.ts";
import { applyChanges, formatFile, type TextChange } from "../../grammar/src/format.ts";
import { fileProblems, parseFile } from "../../grammar/src/parse.ts";
import { FORMS, type FormBlock } from "./forms.ts";
import { formatted, meaningOf } from "./said.ts";

const SEED = 20261130;

describe("a text on fewer lines", () => {
  test.each([
    [
      "a block between its braces, with semicolons",
      'material oak_stain "Oak stain" { family water stain; recoat 2 h }  # the light one\n',
      'material oak_stain "Oak stain" {\n  family water stain\n  recoat 2 h\n}  # the light one\n',
    ],
    [
      "with commas between its fields",
      "material mint { family chalky paint, packs 1 L for 17.50, 2 L for 30.00, recoat 4 h }\n",
      "material mint {\n  family chalky paint\n  packs  1 L for 17.50, 2 L for 30.00\n  recoat 4 h\n}\n",
    ],
    [
      "with wide gaps",
      "material black { family iron acetate  mix white vinegar, steel wool  recoat 1 h }\n",
      'material black {\n  family iron acetate\n  mix    "white vinegar, steel wool"\n  recoat 1 h\n}\n',
    ],
    [
      "blocks in blocks",
      "piece stool { surface top { shape panel 300 mm x 300 mm x 20 mm; wood beech } surface legs { shape 4 of post 30 mm x 450 mm; wood beech } }\n",
      "piece stool {\n  surface top {\n    shape panel 300 mm x 300 mm x 20 mm\n    wood  beech\n  }\n  surface legs {\n    shape 4 of post 30 mm x 450 mm\n    wood  beech\n  }\n}\n",
    ],
    [
      "a field before a block within, and one behind it",
      "piece a { bought 8.00; surface all { shape area 1 m2; wood beech }; built 1990 }\n",
      "piece a {\n  bought  8.00\n  surface all {\n    shape area 1 m2\n    wood  beech\n  }\n  built   1990\n}\n",
    ],
    [
      "work before coats with a block, and two blocks",
      "recipe r { step dust, layer clear x 2 { sand 220; dust }; wait until cured; layer wax { wait 2 h } }\n",
      "recipe r {\n  step  dust\n  layer clear x 2 {\n    step sand 220\n    step dust\n  }\n  wait  until cured\n  layer wax {\n    wait 2 h\n  }\n}\n",
    ],
    [
      "a semicolon at the end of every line",
      "material a {\n  family shellac;\n  recoat 2 h;\n}\n",
      "material a {\n  family shellac\n  recoat 2 h\n}\n",
    ],
    [
      "a layer without its word, with a block",
      "recipe r {\n  clear x 3, by pad {\n    wait until recoat\n  }\n  2 x clear { sand 220 }\n}\n",
      "recipe r {\n  layer clear x 3, by pad {\n    wait until recoat\n  }\n  layer clear x 2 {\n    step sand 220\n  }\n}\n",
    ],
    ["a block of nothing", "piece a {}\n", "piece a {\n}\n"],
    [
      "work that follows other work",
      "recipe r {\n  sand 120, 180, then dust\n  step sand 220, dust\n  vacuum, tack\n}\n",
      'recipe r {\n  step sand 120, 180\n  step dust\n  step sand 220\n  step dust\n  step dust "vacuum"\n  step dust "tack cloth"\n}\n',
    ],
    [
      "pieces in a list",
      "job j {\n  piece table, stool x 2 and bench\n  apply oiled\n}\n",
      "job j {\n  piece table\n  piece stool x 2\n  piece bench\n  apply oiled\n}\n",
    ],
    [
      "recipes in a list",
      "job j {\n  piece table\n  apply stained(stain: dark, coats: 2), waxed to top, legs\n}\n",
      "job j {\n  piece table\n  apply stained(stain: dark, coats: 2) to top, legs\n  apply waxed to top, legs\n}\n",
    ],
  ])("%s", (_, written, plain) => {
    expect(formatted(written)).toBe(plain);
    expect(formatted(plain)).toBe(plain);
    expect(meaningOf(written)).toBe(meaningOf(plain));
  });

  test.each([
    ["a price behind a semicolon", "material a {\n  packs 1 L for 9.00; 2 L for 15.00\n}\n"],
    ["a coat that waits", "recipe r {\n  layer clear x 2, wait 30 min\n}\n"],
  ])("is not made of %s", (_, text) => {
    expect(parseFile(text).pieces.flatMap((piece) => ("body" in piece ? piece.body.breaks : []))).toEqual([]);
  });

  test("is left as it is where one of its lines has a mistake, and lines after it keep their numbers", () => {
    const text = "material a { family shellac; recoat 2 h }\nmaterial b { family shellac; recoat ) }\n";
    const { changes, leftLines } = formatFile(parseFile(text));
    expect(applyChanges(text, changes)).toBe(
      "material a {\n  family shellac\n  recoat 2 h\n}\nmaterial b { family shellac; recoat ) }\n",
    );
    expect(leftLines).toEqual([1]);
  });

  test.each([
    'material a { use "b.finish"; family shellac }\n',
    "material a { recipe b { layer c }; family shellac }\n",
    "piece p { surface s { wood beech } material a { family shellac } }\n",
  ])("is left where a line of its own would begin a declaration: %s", (text) => {
    const once = formatted(text);
    expect(meaningOf(once)).toBe(meaningOf(text));
    expect(formatted(once)).toBe(once);
    expect(fileProblems(parseFile(text)).length).toBeGreaterThan(0);
  });

  test("closes at its last line where more follows it", () => {
    const closed = "recipe r {\n  for wood\n  safety dust_mask  }\n  wait until cured\n  step dust\n";
    expect(meaningOf(formatted(closed))).toBe(meaningOf(closed));
  });

  test("is left where braces have no partner", () => {
    const text =
      "recipe r {\n  safety dust_mask  }\n  wait overnight\n  step dust {\n  safety gloves  }\n}\n";
    expect(formatted(formatted(text))).toBe(formatted(text));
  });

  test("keeps the line ends of its file", () => {
    expect(formatted("material a { family shellac; recoat 2 h }\r\n")).toBe(
      "material a {\r\n  family shellac\r\n  recoat 2 h\r\n}\r\n",
    );
  });
});

const BLOCKS: readonly FormBlock[] = ["material", "piece", "shop"];

test("any lines of a block mean the same with semicolons between them on one line", () => {
  fc.assert(
    fc.property(
      fc
        .constantFrom(...BLOCKS)
        .chain((block) =>
          fc.tuple(
            fc.constant(block),
            fc.array(
              fc.constantFrom(
                ...FORMS.filter(([own, line]) => own === block && !/[\n{}#;,]/u.test(line)).map(
                  ([, line]) => line,
                ),
              ),
              { minLength: 1, maxLength: 5 },
            ),
          ),
        ),
      ([block, lines]) => {
        const onOne = `${block} a { ${lines.join("; ")} }\n`;
        const apart = `${block} a {\n${lines.map((line) => `  ${line}\n`).join("")}}\n`;
        expect(meaningOf(onOne)).toBe(meaningOf(apart));
        if (parseFile(onOne).pieces.every((piece) => !("body" in piece) || piece.body.problems.length === 0))
          expect(formatted(onOne)).toBe(formatted(apart));
      },
    ),
    { seed: SEED, numRuns: 300 },
  );
});

/** Changes to a text, in order and apart. */
const changesOf = (length: number) =>
  fc
    .uniqueArray(fc.nat({ max: length }), { maxLength: 8 })
    .chain((ends) =>
      fc.tuple(fc.constant(ends.toSorted((a, b) => a - b)), fc.array(fc.string({ maxLength: 3 }))),
    )
    .map(([ends, texts]) =>
      Array.from(
        { length: Math.floor(ends.length / 2) },
        (_, idx): TextChange => ({
          span: { start: ends[2 * idx]!, end: ends[2 * idx + 1]! },
          text: texts[idx] ?? "",
        }),
      ),
    );

test("changes after changes are the same as both at once", () => {
  fc.assert(
    fc.property(
      fc
        .string({ maxLength: 30 })
        .chain((text) =>
          fc
            .tuple(fc.constant(text), changesOf(text.length))
            .chain(([all, first]) =>
              fc.tuple(fc.constant(all), fc.constant(first), changesOf(applyChanges(all, first).length)),
            ),
        ),
      ([text, first, second]) => {
        const both = composeChanges(text, first, second);
        expect(applyChanges(text, both)).toBe(applyChanges(applyChanges(text, first), second));
        for (const [idx, { span }] of both.entries()) {
          expect(span.start).toBeGreaterThanOrEqual(both[idx - 1]?.span.end ?? 0);
        }
      },
    ),
    { seed: SEED, numRuns: 1000 },
  );
});
