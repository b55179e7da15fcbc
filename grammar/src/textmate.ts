/**
 * The TextMate grammar, made from the token table and the vocabulary.
 *
 * It colours a file before the language server has answered, and wherever there is no server.  A word is coloured by where
 * it stands, as in the language itself: fields and keywords at the start of a line, units after a number.
 */
import {
  DateToken,
  type HighlightClass,
  NumberToken,
  patternOf,
  TimeToken,
  type TokenType,
  WORD_CLASSES,
} from "./tokens.ts";
import { UNIT_ALIASES, UNIT_GROUPS, UNIT_SPELLINGS } from "./units.ts";

export interface TextMateRule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly include?: string;
  readonly captures?: Readonly<Record<string, { readonly name: string }>>;
  readonly beginCaptures?: Readonly<Record<string, { readonly name: string }>>;
  readonly patterns?: readonly TextMateRule[];
}

export interface TextMateGrammar {
  readonly name: string;
  readonly scopeName: string;
  readonly fileTypes: readonly string[];
  readonly patterns: readonly TextMateRule[];
  readonly repository: Readonly<Record<string, { readonly patterns: readonly TextMateRule[] }>>;
}

/** The scope of each highlight class. */
export const SCOPES: Readonly<Record<HighlightClass, string>> = {
  keyword: "keyword.control.finish",
  field: "entity.name.tag.finish",
  verb: "support.function.verb.finish",
  duty: "support.constant.duty.finish",
  unit: "keyword.other.unit.finish",
  number: "constant.numeric.finish",
  string: "string.quoted.double.finish",
  date: "constant.numeric.date.finish",
  time: "constant.numeric.time.finish",
  comment: "comment.line.number-sign.finish",
  "doc-comment": "comment.line.documentation.finish",
  operator: "keyword.operator.word.finish",
  name: "variable.other.finish",
};

/** The scope of a name by what it stands for; here only where it is declared, by the language server everywhere. */
export const NAME_SCOPES = {
  material: "variable.other.constant.finish",
  piece: "entity.name.type.class.finish",
  surface: "entity.name.type.struct.finish",
  shop: "entity.name.namespace.finish",
  recipe: "entity.name.function.finish",
  job: "entity.name.type.event.finish",
} as const;

/** `\G` is where a line begins for a block of Markdown in a list, whose own indentation is taken off. */
const LINE_START = "(?:^|\\G)[ \\t]*";
const WORD_END = "(?![\\p{L}\\p{M}\\p{N}_-])";
const WORD_START = "(?<![\\p{L}\\p{M}\\p{N}_-])";
const NAME = "\\p{L}[\\p{L}\\p{M}\\p{N}_]*";

/** The whole grammar. */
export function textMateGrammar(): TextMateGrammar {
  return {
    name: "Finish recipe",
    scopeName: "source.finish",
    fileTypes: ["finish"],
    patterns: [
      "comments",
      "strings",
      "heads",
      "steps",
      "duties",
      "lines",
      "tails",
      "quantities",
      "words",
    ].map((part) => ({ include: `#${part}` })),
    repository: {
      comments: { patterns: comments() },
      strings: { patterns: strings() },
      heads: { patterns: heads() },
      steps: { patterns: steps() },
      duties: { patterns: duties() },
      lines: { patterns: lines() },
      tails: { patterns: tails() },
      quantities: { patterns: quantities() },
      words: { patterns: words() },
    },
  };
}

function comments(): TextMateRule[] {
  return [
    { name: SCOPES["doc-comment"], match: `${LINE_START}##.*$` },
    { name: SCOPES.comment, match: "#.*$" },
  ];
}

function strings(): TextMateRule[] {
  return [
    {
      name: SCOPES.string,
      // Inches stand directly behind their number.
      begin: '(?<![0-9])"',
      end: '"|$',
      patterns: [{ name: "constant.character.escape.finish", match: '\\\\["\\\\]' }],
    },
  ];
}

/** `material hall_clear`: the name that is declared stands out. */
function heads(): TextMateRule[] {
  return Object.entries(NAME_SCOPES).map(([kind, scope]) => ({
    match: `${LINE_START}(${kind})[ \\t]+(${NAME})`,
    captures: { 1: { name: SCOPES.keyword }, 2: { name: scope } },
  }));
}

function steps(): TextMateRule[] {
  return [
    {
      match: `${LINE_START}(step)(?:[ \\t]+(${oneOf(wordsAt("after-step"))})${WORD_END})?`,
      captures: { 1: { name: SCOPES.keyword }, 2: { name: SCOPES.verb } },
    },
  ];
}

function duties(): TextMateRule[] {
  return [
    {
      begin: `${LINE_START}(safety)${WORD_END}`,
      end: "(?=#)|(?<!,)$",
      beginCaptures: { 1: { name: SCOPES.keyword } },
      patterns: [
        { name: SCOPES.duty, match: `${WORD_START}(?:${oneOf(wordsAt("after-safety"))})${WORD_END}` },
        { include: "#quantities" },
      ],
    },
  ];
}

function lines(): TextMateRule[] {
  return WORD_CLASSES.filter((group) => group.where === "line-start").map((group) => ({
    match: `${LINE_START}(${oneOf(group.words)})${WORD_END}`,
    captures: { 1: { name: SCOPES[group.highlight] } },
  }));
}

function tails(): TextMateRule[] {
  return [
    {
      match: `(?:,[ \\t]*|${LINE_START})(${oneOf(wordsAt("after-comma"))})${WORD_END}`,
      captures: { 1: { name: SCOPES.keyword } },
    },
  ];
}

function quantities(): TextMateRule[] {
  const units = oneOf([
    ...Object.values(UNIT_GROUPS).flat(),
    ...Object.keys(UNIT_ALIASES),
    ...Object.values(UNIT_SPELLINGS)
      .flat()
      .filter((spelling) => /^[\p{L} ]+$/u.test(spelling)),
  ]);
  const rate = `(?i:${units}|sq\\. ?ft\\.)(?:[ \\t]*(?:/|per[ \\t])[ \\t]*(?i:${units}))?`;
  return [
    { name: SCOPES.date, match: source(DateToken) },
    { name: SCOPES.time, match: source(TimeToken) },
    {
      match: `(${WORD_START}${source(NumberToken)})(?:[ \\t]*(${rate})(?![\\p{L}\\p{M}\\p{N}_/])|(["'′’″”]))?`,
      captures: { 1: { name: SCOPES.number }, 2: { name: SCOPES.unit }, 3: { name: SCOPES.unit } },
    },
  ];
}

function words(): TextMateRule[] {
  return [
    { name: SCOPES.operator, match: `${WORD_START}(?:${oneOf(wordsAt("anywhere"))})${WORD_END}` },
    { name: "punctuation.separator.finish", match: "[,:.=]" },
    { name: "punctuation.section.finish", match: "[{}()]" },
    { name: SCOPES.name, match: `${NAME}(?:-[\\p{L}\\p{M}\\p{N}_]+)*` },
  ];
}

function wordsAt(where: string): readonly string[] {
  return WORD_CLASSES.filter((group) => group.where === where).flatMap((group) => group.words);
}

/** Longest first, so that `mm2` is not read as `mm`. */
function oneOf(choices: readonly string[]): string {
  const sorted = choices.toSorted((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return sorted.map((word) => word.replace(/[.*+?^${}()|[\]\\/]/gu, "\\$&").replaceAll("\\/", "/")).join("|");
}

function source(type: TokenType): string {
  return patternOf(type).source;
}
