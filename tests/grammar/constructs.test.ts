/** Every construct of the notation parses without a problem, and to what it says. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseFile } from "../../grammar/src/parse.ts";
import { FIELDS, SHAPES, STATEMENTS, TAILS, VERBS } from "../../grammar/src/vocabulary.ts";
import { inBlock, onlyDeclaration, outline, problemsOf, textOfTokens } from "./show.ts";

const NOTATION = readFileSync(new URL("notation.finish", import.meta.url), "utf8");

/** The typed view of one line. */
function lineOf(block: string, line: string): string {
  const declaration = onlyDeclaration(inBlock(block, line));
  const isPlain = declaration.kind !== "use" && declaration.kind !== "recipe";
  const [first] = isPlain ? declaration.fields : declaration.kind === "recipe" ? declaration.statements : [];
  const inner = first?.kind === "surface" ? first.fields[0] : first?.kind === "layer" && first.block?.[0];
  return JSON.stringify(inner || first, (key, value) => (SILENT.has(key) ? undefined : value));
}

const SILENT = new Set(["span", "docs", "keyword", "kind", "text"]);

describe("the notation", () => {
  it("parses without a problem", () => {
    expect(problemsOf(NOTATION)).toEqual([]);
    expect(problemsOf(NOTATION.replaceAll("\n", "\r\n"))).toEqual([]);
    expect(problemsOf(`\ufeff${NOTATION}`)).toEqual([]);
  });

  it("has every character in one token", () => {
    expect(textOfTokens(parseFile(NOTATION))).toBe(NOTATION);
    expect(textOfTokens(parseFile(`\ufeff${NOTATION.replaceAll("\n", "\r\n")}`))).toBe(
      `\ufeff${NOTATION.replaceAll("\n", "\r\n")}`,
    );
  });

  it("has the tree that it had", () => {
    expect(outline(NOTATION)).toMatchSnapshot();
  });

  it("parses every example of the vocabulary", () => {
    for (const [block, words] of Object.entries(FIELDS)) {
      for (const { example } of Object.values(words)) {
        expect(problemsOf(inBlock(block, example)), example).toEqual([]);
      }
    }
    for (const [block, words] of Object.entries(STATEMENTS)) {
      for (const { example } of Object.values(words).filter((word) => !word.example.endsWith("{"))) {
        expect(problemsOf(inBlock(block, example)), example).toEqual([]);
      }
    }
    for (const { example } of Object.values(VERBS)) {
      expect(problemsOf(inBlock("recipe", example)), example).toEqual([]);
    }
    for (const { example } of Object.values(SHAPES)) {
      expect(problemsOf(inBlock("surface", example)), example).toEqual([]);
    }
    for (const { example, on } of Object.values(TAILS)) {
      const line = on === "step" ? `step fill with m, ${example}` : `layer m, ${example}`;
      expect(problemsOf(inBlock("recipe", line)), line).toEqual([]);
    }
  });
});

describe("what lines say", () => {
  it.each([
    ["material", "covers 10 m²/L", '"quantity":{"parts":[{"number":{"value":10},"unit":{}}]}'],
    ["material", "rated -5 °C, 50 % RH", '"value":-5'],
    [
      "material",
      "cure 5 ft 6 in",
      '"parts":[{"number":{"value":5},"unit":{}},{"number":{"value":6},"unit":{}}]',
    ],
    ["material", "cure 1 1/2 h", '"value":1.5'],
    ["material", "cure 3/4 h", '"value":0.75'],
    ["material", "recoat 24 h", '"range":{"from":{"parts":[{"number":{"value":24},"unit":{}}]}}'],
    ["material", "mix 1:10 with h", '"ratio":{"a":{"value":1},"b":{"value":10}}'],
    ["surface", "existing alkyd paint, 2 coats, paste wax", '"coats":{"value":2}},{"material"'],
    ["recipe", "wait dry_time", '{"time":{}}'],
    ["recipe", "wait until recoat", '{"until":{}}'],
    ["recipe", "step sand wet 400, fine", '"grits":[{"parts":[{"number":{"value":400}}]},{}]'],
  ])("%s: %s", (block, line, part) => {
    expect(lineOf(block, line)).toContain(part);
  });

  it("knows two escapes in a text", () => {
    const value = String.raw`a "b" \ \c`;
    expect(outline(inBlock("recipe", String.raw`note "a \"b\" \\ \c"`))).toContain(JSON.stringify(value));
  });

  it("keeps a word that is no unit in the place of the unit", () => {
    expect(problemsOf(inBlock("material", "cure 72 moons"))).toEqual([]);
    expect(outline(inBlock("material", "cure 72 moons"))).toContain('unit: name "moons"');
    expect(outline(inBlock("material", "covers 10 m2/firkin"))).toContain('unit: name "m2/firkin"');
  });

  it("gives units in their plain form with the span of what was written", () => {
    const text = inBlock("material", "covers 10 m²/L");
    expect(outline(text)).toContain('unit: name "m2/L"');
  });

  it("takes an unknown word of a block for an unknown field, which is no syntax error", () => {
    expect(problemsOf(inBlock("material", "colr clear"))).toEqual([]);
    expect(outline(inBlock("material", "colr clear"))).toContain("value: unknown");
    expect(outline(inBlock("material", "toString"))).toContain("value: unknown");
  });

  it("takes unknown words of a vocabulary", () => {
    const lines = [
      "step wibble",
      "step wibble with a, takes 3 min",
      "step wibble 80, 120",
      'step wibble "what"',
      "layer a, by hand",
      "wait until dry",
      "safety hat, boots",
    ];
    for (const line of lines) {
      expect(problemsOf(inBlock("recipe", line)), line).toEqual([]);
    }
  });

  it("reserves no words but five", () => {
    const text = [
      "material step {",
      "  family soap",
      "}",
      "recipe layer(coats: number = 3, takes: material, for: duration, material: material) {",
      "  layer takes x coats, by brush",
      "  layer wet x coats, wet 100 um",
      "  wait for",
      "  follow until(step: overnight)",
      "}",
      "",
    ].join("\n");
    expect(problemsOf(text)).toEqual([]);
  });
});
