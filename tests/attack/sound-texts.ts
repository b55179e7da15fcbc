/** Texts that are as they should be: the samples, the corpus, the examples of the rules, and the notation's own words. */
import { readdirSync, readFileSync } from "node:fs";
import {
  DUTIES,
  FIELDS,
  METHODS,
  RESERVED,
  SHAPES,
  STATEMENTS,
  TAILS,
  VERBS,
  WEEKDAYS,
} from "../../grammar/src/vocabulary.ts";
import { FAMILY_NAMES } from "../../server/src/core/knowledge/family-names.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { NOTATION } from "../grammar/any-text.ts";
import { sampleNames, sampleText } from "../harness/samples.ts";

const CORPUS = new URL("../corpus/", import.meta.url);

export const SOUND_TEXTS: readonly string[] = [
  NOTATION,
  ...sampleNames.map(sampleText),
  ...readdirSync(CORPUS, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".finish"))
    .sort()
    .map((name) => readFileSync(new URL(name, CORPUS), "utf8")),
  ...RULES.flatMap(({ failing, passing }) => [...failing, ...passing].map(({ text }) => text)),
];

/** Pieces of a text by which it is cut: words, numbers, blanks, and every other character by itself. */
export const piecesOf = (text: string): readonly string[] =>
  text.match(/[\p{L}_]+|\p{N}+|[ \t]+|\r?\n|[\s\S]/gu) ?? [];

export const WORDS: readonly string[] = [
  ...new Set([
    ...SOUND_TEXTS.slice(0, 12).flatMap(piecesOf),
    ...Object.keys(VERBS),
    ...Object.keys(SHAPES),
    ...Object.keys(TAILS),
    ...METHODS,
    ...DUTIES,
    ...RESERVED,
    ...WEEKDAYS,
    ...FAMILY_NAMES,
  ]),
];

/** Example lines by the block that they belong in. */
export const LINES: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  [...new Set([...Object.keys(FIELDS), ...Object.keys(STATEMENTS)])].map((block) => [
    block,
    [FIELDS, STATEMENTS].flatMap((table) =>
      Object.values(
        (table as Readonly<Record<string, Readonly<Record<string, { readonly example: string }>>>>)[block] ??
          {},
      ).map(({ example }) => example),
    ),
  ]),
);
