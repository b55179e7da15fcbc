/** Every syntax error of a line: what it says, what it stands on, and its fix. */
import { describe, expect, it } from "vitest";
import { fileProblems, parseFile } from "../../grammar/src/parse.ts";
import { inBlock, mended, outline, problemsOf } from "./show.ts";

/** The problems of one line, without their places in the file. */
function problemsOfLine(block: string, line: string): string {
  return problemsOf(inBlock(block, line))
    .map((problem) => problem.replace(/^\d+:\d+ /u, ""))
    .join("; ");
}

describe("a line says what it needs", () => {
  it.each([
    ["material", "family", '"" expected a word, such as `family waterborne polyurethane`'],
    ["material", "family a, , b", '"," expected a word, such as `family waterborne polyurethane`'],
    ["material", "covers", '"" expected a quantity, such as `covers 10 m2/L`'],
    ["material", "covers 10 m2/L 9", '"9" expected the end of the line'],
    ["material", "recoat 2 h to", '"" expected a quantity after `to`, such as `recoat 2 h to 24 h`'],
    ["material", "recoat 2 h to 24 h, 3 h", '", 3 h" expected the end of the line'],
    ["material", "rated 21 C, 20 C", '"20 C" expected the humidity, such as `60 % RH`'],
    ["material", "rated 21 C 50 % RH", '"50" expected a comma before `50` [Add the comma]'],
    ["material", "limits 10 C to 32 C 85 % RH", '"85" expected a comma before `85` [Add the comma]'],
    ["material", "thin water, ten %", '"ten" expected `up to` and a share, such as `thin water, up to 10 %`'],
    [
      "material",
      "packs 946 mL for, 3785 mL for 84.00",
      '"," expected the price / Write, for example, `packs 946 mL for 28.00, 3785 mL for 84.00`.',
    ],
    ["material", "mix 10 with h", '"with" expected a ratio, such as `mix 10:1 with hardener`'],
    ["material", 'colour "abc', '"\\"abc" expected `"` at the end of this text [Close the quotes]'],
    [
      "material",
      "covers: 10 m2/L",
      '":" nothing stands between `covers` and its value: remove `:` [Remove the `:`]',
    ],
    [
      "material",
      "12 m2/L",
      '"12" expected a word at the start of the line / Write, for example, `family waterborne polyurethane`.',
    ],
    [
      "material",
      ",",
      '"," expected a word at the start of the line / Write, for example, `family waterborne polyurethane`.',
    ],
    ["piece", "bought 60.00 60", '"60" expected the end of the line'],
    [
      "piece",
      "bought 1.480 EUR",
      '"1.480 EUR" the point may stand for thousands or for decimals: write `1480` or `1.48` [Write `1480`]',
    ],
    ["surface", "shape", '"" expected a shape, such as `shape panel 1800 mm x 900 mm x 30 mm`'],
    [
      "surface",
      "shape panel 1 m",
      '"" expected `x` and the width / Write, for example, `shape panel 1800 mm x 900 mm x 30 mm`.',
    ],
    [
      "surface",
      "shape panel 1 m x900 mm",
      '"x900" expected `x` and the width / Write, for example, `shape panel 1800 mm x 900 mm x 30 mm`. [Add a space after `x`]',
    ],
    [
      "surface",
      "shape disc 3 m to 4 m",
      '"3 m to 4 m" expected one size: the diameter of `disc` does not taper',
    ],
    ["surface", "shape area 1 m2 x 3 m", '"3 m" expected the end: `area` has one size'],
    ["surface", "shape disc 1 m plus 10 %", '"plus" expected a comma before `plus` [Add the comma]'],
    [
      "surface",
      "existing 2 coats",
      '"2 coats" expected a layer before the number of its coats / Write, for example, `alkyd paint, 2 coats`.',
    ],
    ["surface", "existing as left by", '"" expected a job, such as `existing as left by hall_tables`'],
    [
      "shop",
      "hours Mon 09:00",
      '"" expected `to` and the closing time / Write, for example, `hours Mon to Fri 09:00 to 17:00, Sat 09:00 to 13:00`.',
    ],
    [
      "shop",
      "hours Mon 8-5",
      '"8-5" the closing time would be before the opening time: write `08:00 to 17:00` [Write `08:00 to 17:00`]',
    ],
    [
      "job",
      "start 3/4/2027",
      '"3/4/2027" this may be two days: write `2027-04-03` or `2027-03-04` [Write `2027-04-03` (day first)]',
    ],
    [
      "job",
      "start Friday 2026-12-10",
      '"Friday 2026-12-10" 2026-12-10 is a Thursday, not a Friday: write the date that is meant / Write, for example, `2026-12-10`. [Write `2026-12-10`]',
    ],
    [
      "job",
      "piece x x 2",
      '"x" expected a name; `x` cannot be a name / Write, for example, `piece reading_table x 2`.',
    ],
    ["job", "in mill-room", '"mill-room" a name has no hyphen: expected `mill_room` [Write `mill_room`]'],
    [
      "job",
      "apply r(a: b) top",
      '"top" expected `to` and a surface / Write, for example, `apply hard_clear(clear: hall_clear) to top`.',
    ],
    [
      "job",
      "apply r to",
      '"" expected a surface / Write, for example, `apply hard_clear(clear: hall_clear) to top`.',
    ],
    [
      "job",
      "apply r to t.",
      '"" expected a surface after the piece / Write, for example, `apply hard_clear(clear: hall_clear) to top`.',
    ],
    [
      "job",
      "apply r(a: b to top",
      '"to" expected `)`, such as `apply hard_clear(clear: hall_clear) to top` [Add the `)`]',
    ],
    ["job", "apply r(a: b c, d: e) to top", '"c" expected `,` or `)` after one word, such as `b`'],
    ["job", "apply r(a = b) to top", '"=" expected `:` between name and value [Write `:`]'],
    [
      "job",
      "apply r(a: ) to top",
      '")" expected a value, such as `apply hard_clear(clear: hall_clear) to top`',
    ],
  ])("%s: %s", (block, line, problem) => {
    expect(problemsOfLine(block, line)).toBe(problem);
  });
});

describe("a line of a recipe says what it needs", () => {
  it.each([
    ["step", '"" expected a verb or a text in double quotes / Write, for example, `step sand 80, 120, 150`.'],
    ["step clean with", '"" expected a material, such as `step clean with soap`'],
    ["step sand", '"" expected a grit, such as `step sand 80, 120, 150`'],
    ["step mask, takes 4 min", '"," expected a text in double quotes, such as `step mask "brass plates"`'],
    [
      "step dust with soap",
      '"with soap" expected the end of the line or a comma / Words of your own stand in quotes, such as `"with soap"`, or on a line `note "…"`.',
    ],
    ["step clean with soap takes 4 min", '"takes" expected a comma before `takes` [Add the comma]'],
    [
      "step clean with soap, togehter",
      '"togehter" expected `only`, `together`, `apart`, `takes`, `costs`, `uses` or `leave`',
    ],
    ["step sand 80, takes", '"" expected a time, such as `takes 40 min`'],
    ["layer", '"" expected a material, such as `layer clear x 3, by brush`'],
    [
      "layer with x 3",
      '"with" expected a material; `with` cannot be a name / Write, for example, `layer clear x 3, by brush`.',
    ],
    ["layer clear x 2, x 3", '"x 3" expected the number of coats once, such as `layer clear x 3`'],
    ["layer clear by pad", '"by" expected a comma before `by` [Add the comma]'],
    ["layer clear x3", '"x3" expected the end of the line or a comma [Add a space after `x`]'],
    [
      "layer clear, xyzzy",
      '"xyzzy" expected `by`, `wiped`, `buffed`, `thinned`, `tinted`, `as`, `wet`, `between`, `thin`, `mist`, `full`, `flooded`, `if`, `only`, `passes`, `flash`, `together`, `apart`, `takes`, `sheen`, `transfer` or `wet_on_wet`',
    ],
    [
      "layer clear, wait 4 h",
      '"wait 4 h" a wait has a line of its own, below the layer / Write, for example, `wait until recoat`.',
    ],
    [
      "layer clear x 2, wait 30 min",
      '"wait 30 min" a wait between coats goes in braces below the layer / Write, for example, `layer clear x 2, between wait until recoat`; a wait after the last coat has a line of its own. [Wait between the coats]',
    ],
    [
      "layer clear, thinned 1:1 water, by pad",
      '"water" expected `with` and a thinner, such as `thinned 4:1 with water`',
    ],
    ["layer clear, tinted 5 %", '"" expected `with` and a tint, such as `tinted 5 % with walnut_dye`'],
    [
      "layer clear, by",
      '"" expected a method: brush, roller, pad, spray or another / Write, for example, `by pad`.',
    ],
    ["wait", '"" expected a time, `overnight`, or `until` and a stage / Write, for example, `wait 72 h`.'],
    [
      "wait until",
      '"" expected `touch`, `recoat`, `stackable` or `cured` / Write, for example, `wait until recoat`.',
    ],
    ["wait 72 h 5", '"5" expected the end of the line'],
    ["safety", '"" expected a duty, such as `safety dust_mask, eye_protection`'],
    [
      "safety gloves or mask",
      '"or mask" expected the end of the line or a comma / Words of your own stand in quotes, such as `"or mask"`, or on a line `note "…"`.',
    ],
    ["follow", '"" expected a recipe, such as `follow prepare(clear: hall_clear)`'],
    ["step dust {", '"{" expected the end of the line: this line opens no block [Remove the `{`]'],
  ])("%s", (line, problem) => {
    const text = line.endsWith("{") ? `recipe r {\n  ${line}\n  }\n}\n` : inBlock("recipe", line);
    const said = problemsOf(text).map((drawn) => drawn.replace(/^\d+:\d+ /u, ""));
    expect(said.join("; ")).toBe(problem);
  });
});

describe("a head says what it needs", () => {
  it.each([
    [
      'material "T" {\n}',
      '1:10 "\\"T\\"" expected a name / Write, for example, `material hall_clear "Waterborne satin clear" {`.',
    ],
    ["material a-b {\n}", '1:10 "a-b" a name has no hyphen: expected `a_b` [Write `a_b`]'],
    ["use stock", '1:5 "stock" expected a file in double quotes, such as `use "stock/clears.finish"`'],
    ["recipe", '1:7 "" expected a name, such as `recipe hard_clear(clear: material) {`'],
    [
      "recipe r(a) {\n}",
      '1:11 ")" expected `:` and the type: material, number, duration, recipe, method, grits, ratio or sheen / Write, for example, `recipe hard_clear(clear: material) {`.',
    ],
    [
      "recipe r(a: material {\n  step dust\n}",
      '1:21 "" expected `)`, such as `recipe hard_clear(clear: material) {` [Add the `)`]',
    ],
    ["mat", '1:1 "mat" expected a declaration: `use`, `material`, `piece`, `shop`, `recipe` or `job`'],
  ])("%s", (text, problem) => {
    expect(problemsOf(text)).toEqual([problem]);
  });
});

describe("what was read is kept", () => {
  it.each([
    ["recipe", "layer clear x 2, x 3", "coats: quantity\n"],
    ["recipe", "layer clear by pad", 'method: name "pad"'],
    ["recipe", "layer clear x 2, wait 30 min", "statements[0]: wait"],
    ["recipe", "layer clear, thinned 1:1 water, by pad", 'method: name "pad"'],
    ["recipe", "step sand 80, 120, takess now", "grits[1]: quantity"],
    ["recipe", "step clean with soap and care, takes 4 min", 'material: name "soap"'],
    ["job", "apply r(a: b to top, base", 'surface: name "base"'],
    ["job", "apply r(a: %, c: d) to top", 'value: name "d"'],
    ["material", "packs 946 mL for, 3785 mL for 84.00", "price: number 84"],
    ["material", "recoat 2 h to", "range: range"],
    ["surface", "shape panel 1 m", "sizes[0]: range"],
    ["surface", "wood red oak, veneer 0.6 mm thick", "thickness: quantity"],
  ])("%s: %s", (block, line, part) => {
    expect(problemsOf(inBlock(block, line))).toHaveLength(1);
    expect(outline(inBlock(block, line))).toContain(part.trimEnd());
  });
});

describe("a fix", () => {
  it.each([
    ["material", "rated 21 C 50 % RH", "rated 21 C, 50 % RH"],
    ["material", "covers: 10 m2/L", "covers 10 m2/L"],
    ["material", 'colour "abc', 'colour "abc"'],
    ["material", "recoat 2-3 h", "recoat 3 h"],
    ["surface", "shape panel 1 m x900 mm", "shape panel 1 m x 900 mm"],
    ["shop", "hours Mon 8-5", "hours Mon 08:00 to 17:00"],
    ["recipe", "step sand softly 320", 'step sand 320 "softly"'],
    ["recipe", "layer clear by pad", "layer clear, by pad"],
    ["recipe", "layer clear x 2, wait 30 min", "layer clear x 2, between wait 30 min"],
    ["job", "apply r(a: b to top", "apply r(a: b) to top"],
    ["job", "apply r(a = b) to top", "apply r(a: b) to top"],
    ["job", "in mill-room", "in mill_room"],
  ])("%s: %s", (block, line, right) => {
    const text = mended(inBlock(block, line));
    expect(text.replace(/ +/gu, " ").replaceAll(" :", ":")).toBe(inBlock(block, right).replace(/ +/gu, " "));
    expect(fileProblems(parseFile(text))).toEqual([]);
  });
});
