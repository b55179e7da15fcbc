/**
 * Nothing teaches a word or a form that has a better one in its place: pages, snippets, samples, walkthrough, the tables
 * that hover and completion show, the rules' pages and their examples. What is still read stands in one table of the
 * language page alone.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { globSync } from "tinyglobby";
import { describe, expect, test } from "vitest";
import { formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { FIELDS, SHAPES, STATEMENTS, TAILS, VERBS } from "../../grammar/src/vocabulary.ts";
import { ELSEWHERE } from "../../server/src/core/knowledge/choices.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";

const ROOT = path.resolve(import.meta.dirname, "../..");
const read = (name: string): string => readFileSync(path.join(ROOT, name), "utf8");

/** How a can is sold, whom a piece is for, what a new one costs, what is wiped off again. */
const OLD =
  /(?:^|`|\\t)\s*(?:sold\s+\d|new\s+\d[\d.]*(?:`|$|")|use_by\s)|\blayer\b[^`\n]*, wiped(?! off)|`wiped`(?! \|)|`wiped (?!off|varnish)/mu;

/** The table of what is read and formatted, row by row `written | plain form`. */
const SPOKEN = /^\| written \| plain form \|\n(?:\|.*\n)+/mu;

const PAGES = globSync(
  [
    "README.md",
    "server/docs/**/*.md",
    "client/snippets/*",
    "client/walkthrough/*.{md,svg}",
    "client/package.nls.json",
    "samples/*",
  ],
  { cwd: ROOT },
);

test.each(PAGES)("%s teaches none", (name) => {
  const [found] = OLD.exec(read(name).replace(SPOKEN, "")) ?? [];
  expect(found).toBeUndefined();
});

test("what is looked for would be found", () => {
  for (const text of [
    "  sold 1 L for 9.00",
    "`use_by food`",
    "\tnew 60.00",
    "`layer oil_stain, wiped`",
    "layer oil, by cloth, wiped after 5 min",
  ])
    expect(OLD.test(text.replace("\t", "")), text).toBe(true);
  expect(OLD.test("layer oil, wiped off after 5 min; wiped dry; `new_price 60.00`; new 100 L drum")).toBe(
    false,
  );
});

test("nor does what hover and completion show of a word", () => {
  expect(Object.keys(FIELDS.material)).not.toContain("sold");
  expect(Object.keys(FIELDS.piece)).not.toContain("use_by");
  expect(Object.keys(FIELDS.piece)).not.toContain("new");
  const tables = JSON.stringify([FIELDS, STATEMENTS, SHAPES, TAILS, VERBS, ELSEWHERE]);
  expect(OLD.exec(tables.replaceAll('\\"', "`"))?.[0]).toBeUndefined();
});

test("nor do the examples of rules, which the pages show", () => {
  const texts = RULES.flatMap((rule) => [...rule.failing, ...rule.passing].map(({ text }) => text));
  expect(texts.filter((text) => OLD.test(text))).toEqual([]);
});

describe("recipes on pages are in the plain form", () => {
  const pages = PAGES.filter((name) => /^(?:README|server\/docs\/[^/]*)\.md$/u.test(name));
  const blocks = pages.flatMap((name) =>
    [...read(name).matchAll(/```finish\n([\s\S]*?)```/gu)].map(
      ([, text], i) => [`${name}, block ${i + 1}`, text!] as const,
    ),
  );
  test.each(blocks)("%s", (_, text) => {
    expect(formatFile(parseFile(text)).changes).toEqual([]);
  });
});
