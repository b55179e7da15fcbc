/**
 * No regular expression may take longer than in proportion to its text, whatever the text: one that tries again from
 * many places, or in many ways, stops the editor for a title of sixty characters.
 *
 * Two independent checks. `scslre` (https://github.com/RunDevelopment/scslre, the analysis behind the rules on
 * super-linear expressions of eslint-plugin-regexp) finds what one character, repeated, drives beyond that. Then the
 * expression runs on texts that its own words and signs, one or two of them, are repeated in, at sizes that double.
 */
import { analyse } from "scslre";
import { describe, expect, it, test } from "vitest";
import { SOLVENTS, solventPattern } from "../../server/src/core/knowledge/solvents.ts";
import { type Expression, expressionsOfSource, productExpressions } from "../harness/expressions.ts";
import { cpuMs, growth, MOST_GROWTH } from "../harness/growth.ts";
import { IS_LONG_RUN } from "../harness/share.ts";

/** Expressions that are made of a table, by the file that makes them. */
const MADE: ReadonlyMap<string, readonly RegExp[]> = new Map([
  ["server/src/core/knowledge/solvents.ts", SOLVENTS.map(solventPattern)],
]);

const product = productExpressions();
const unreadable = product.unreadable.filter(({ where }) => !MADE.has(where.split(":")[0]!));
const found: readonly Expression[] = [
  ...product.found,
  ...[...MADE].flatMap(([where, made]) => made.map(({ source, flags }) => ({ source, flags, where }))),
];

/** Why an expression may not stay as it is; empty when no character drives it to more than one pass. */
const dangers = ({ source, flags }: Expression): readonly string[] =>
  analyse({ source, flags }).reports.map(
    ({ type, exponential, character }) =>
      `${exponential ? "exponential" : "polynomial"} (${type}), repeated: ${character.literal}`,
  );

/** One after the other, for what is worse than quadratic takes minutes at the last. */
const SIZES = [250, 2500];
/** Far more than one pass over so short a text takes, far less than one pass from each of its characters. */
const SUSPICIOUS_MS = 1.5;
const SIGNS = [" ", "\t", "\n", "a", "1", "-", ".", "é"];

/** Pairs of so many are tried; the short run leaves out the rarer ones, not the kinds. */
const MOST_UNITS = IS_LONG_RUN ? 16 : 11;

/** What an expression speaks of: its words and its signs, and a few of each kind that a class may stand for. */
function unitsOf({ source }: Expression): readonly string[] {
  const plain = source.replace(/\\[pP]\{[^}]*\}|\\u\{?[0-9a-f]+\}?|\\[a-zA-Z]|\(\?<?[=!:]?|\[\^/giu, " ");
  return [...new Set([...SIGNS, ...(plain.match(/[\p{L}]{2,}|[^\p{L}\s]/gu) ?? [])])].slice(0, MOST_UNITS);
}

/** Texts of a size that may drive an expression to try again and again. */
function* attacks(expression: Expression): Generator<(size: number) => string> {
  const units = unitsOf(expression);
  for (const first of units) {
    for (const second of units) {
      const pair = first + second;
      for (const end of ["", "\n", "\u0001"]) {
        yield (size) => pair.repeat(Math.ceil(size / pair.length)) + end;
        yield (size) => first + second.repeat(Math.ceil(size / second.length)) + end;
      }
    }
  }
}

/** All that an expression finds in a text, as `replace` and `matchAll` go through it. */
function runOver({ source, flags }: Expression): (text: string) => number {
  const expression = new RegExp(source, flags.includes("g") ? flags : `${flags}g`);
  return (text) => text.replace(expression, "").length;
}

/** So many attacks on an expression are measured closely, those that took longest. */
const CLOSELY = 2;

/** The greatest exponent of all attacks on an expression. One without repetition has nothing to try again. */
function worstGrowth(expression: Expression, attempts?: number): number {
  if (!/[*+]|\{\d/u.test(expression.source)) return 0;
  const run = runOver(expression);
  const suspicious: { readonly attack: (size: number) => string; readonly ms: number }[] = [];
  for (const attack of attacks(expression)) {
    for (const size of SIZES) {
      const ms = cpuMs(attack(size), run);
      if (ms < SUSPICIOUS_MS) continue;
      suspicious.push({ attack, ms: (ms / size) * 1000 });
      break;
    }
    // Nothing that is in proportion takes so long for so little.
    if ((suspicious.at(-1)?.ms ?? 0) > 1000) break;
  }
  const worst = suspicious.toSorted((a, b) => b.ms - a.ms).slice(0, CLOSELY);
  return Math.max(0, ...worst.map(({ attack }) => growth(attack, run, { from: 250, to: 32_000, attempts })));
}

describe("regular expressions of the product", () => {
  it("are all found, those that are put together included", () => {
    expect(unreadable).toEqual([]);
    expect(found.length).toBeGreaterThan(150);
    const files = new Set(found.map(({ where }) => where.split(/[: ]/u)[0]));
    for (const file of ["grammar/src/sections.ts", "client/syntaxes/finish.tmLanguage.json", "package.json"])
      expect(files).toContain(file);
  });

  test.each(found)("$where /$source/$flags is judged to be in proportion", (expression) => {
    expect(dangers(expression)).toEqual([]);
  });

  test.each(found)("$where /$source/$flags grows in proportion", (expression) => {
    expect(worstGrowth(expression)).toBeLessThan(MOST_GROWTH);
  });
});

describe("the checks find what they are for", () => {
  const literal = (text: string): Expression => expressionsOfSource("test.ts", `f(${text})`).found[0]!;

  // Each of these has stood in a product's sources, and has held it up.
  test.each([
    ["a title without its closing quote", String.raw`/"(?:(?![ \t]*\{?[ \t]*(?:\r|\n|$))[^\r\n])*/uy`],
    ["the end of a line", String.raw`/\s+$/u`],
    ["a heading that may be closed", String.raw`/^\s*#{1,6}\s+(.*?)\s*#*$/u`],
    ["a comment in the middle of a text", String.raw`/^\s*#\s*allow\b/mu`],
    ["nested repetition", String.raw`/^(?:\w+\s?)*$/u`],
  ])("%s", (_, text) => {
    expect(dangers(literal(text)).join()).toMatch(/polynomial|exponential/u);
  });

  test.each([
    ["a title without its closing quote", String.raw`/"(?:(?![ \t]*\{?[ \t]*(?:\r|\n|$))[^\r\n])*/uy`],
    ["the end of a line", String.raw`/\s+$/u`],
    ["a comment in the middle of a text", String.raw`/^\s*#\s*allow\b/mu`],
  ])("%s, by running it", (_, text) => {
    // On a busy machine a single measurement may see too little work to judge by.
    const isFound = [1, 2, 3, 4, 5, 6].some(() => worstGrowth(literal(text), 1) > MOST_GROWTH);
    expect(isFound).toBe(true);
  });

  test("expressions that are put together of constants", () => {
    const text = "const WORD = String.raw`\\w+`; new RegExp('^(?:' + WORD + ')$' + `x`, 'u');";
    expect(expressionsOfSource("test.ts", text).found).toEqual([
      { source: String.raw`^(?:\w+)$x`, flags: "u", where: "test.ts:1" },
    ]);
    expect(expressionsOfSource("test.ts", "new RegExp(name)").unreadable).toHaveLength(1);
    expect(expressionsOfSource("test.ts", 'text.match("a+")').found).toHaveLength(1);
  });
});
