/** The language reference is fresh, names every word of the notation, and its examples are sound. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import {
  DECLARATION_WORDS,
  DUTIES,
  FIELDS,
  METHODS,
  SHAPES,
  STATEMENTS,
  TAILS,
  VERBS,
} from "../../grammar/src/vocabulary.ts";
import { FAMILY_NAMES } from "../../server/src/core/knowledge/family-names.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { DOCS_FOLDER } from "../../server/tools/write-computations.ts";
import { languagePage, WALKTHROUGH_PAGE } from "../../server/tools/write-language-page.ts";
import { summary } from "../harness/check-text.ts";
import { wordsOf } from "../harness/words-of.ts";

const page = languagePage();

test("is fresh", () => {
  expect(readFileSync(new URL("language.md", DOCS_FOLDER), "utf8")).toBe(page);
  const onePage = readFileSync(WALKTHROUGH_PAGE, "utf8");
  expect(page).toContain(onePage);
  expect(onePage).toMatch(/^## On one page\n/u);
});

test("names every word", () => {
  const words = [
    ...[DECLARATION_WORDS, SHAPES, TAILS, VERBS].flatMap((table) => Object.keys(table)),
    ...Object.values(FIELDS).flatMap((block) => Object.keys(block)),
    ...Object.values(STATEMENTS).flatMap((block) => Object.keys(block)),
    ...METHODS,
    ...DUTIES,
    ...FAMILY_NAMES,
    ...(["wood", "sheen", "colour", "wear", "meant_for", "ignition", "rags", "for"] as const).flatMap(
      wordsOf,
    ),
  ];
  expect(words.filter((word) => !page.includes(`\`${word}\``))).toEqual([]);
});

test("names no rule that does not exist", () => {
  const ids = new Set(RULES.map(({ id }) => id));
  const named = [...page.matchAll(/`([a-z]+(?:-[a-z]+)+)`/g)].map((match) => match[1]!);
  const words = new Set<string>(["semi-gloss", "self-heating", "fish-eyes"]);
  expect(named.filter((id) => !ids.has(id) && !words.has(id))).toEqual([]);
});

describe("examples", () => {
  const blocks = [...page.matchAll(/```finish\n([\s\S]*?)```/g)].map((match) => match[1]!);
  test("the first teaches the language in forty lines", () => {
    expect(blocks[0]!.trimEnd().split("\n").length).toBeLessThanOrEqual(40);
    for (const word of [...Object.keys(DECLARATION_WORDS), "surface"])
      if (word !== "use") expect(blocks[0]!).toMatch(new RegExp(`^ *${word} `, "mu"));
  });
  test.each(blocks.map((text, index) => [index + 1, text] as const))("%i", (_, text) => {
    expect(parseFile(text).pieces.length).toBeGreaterThan(0);
    expect(summary(text)).toEqual([]);
    expect(formatFile(parseFile(text)).changes).toEqual([]);
  });
});
