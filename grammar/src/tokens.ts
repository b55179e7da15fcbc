/**
 * The one token table.
 *
 * Every lexical class of the notation stands here once: its kind in the lossless view, how messages name it, and its
 * pattern. The lexer goes by these patterns in their order, by short cuts for what is common (`lexer.ts`); the TextMate
 * grammar, semantic colouring and the language reference are made from them.  Words are one class: nothing but
 * `x to with by of` is reserved.  A word that means something inside a line has a type of its own, which the parser asks
 * for where it means that; everywhere else it is a word like any other (`matches`).
 */
import { FORMER_FIELDS, VERB_SPELLINGS, VERB_SPELLINGS_WITH } from "./spellings.ts";
import type { TokenKind } from "./tree.ts";
import { plainUnit, UNIT_GROUPS } from "./units.ts";
import {
  DECLARATION_WORDS,
  DONE_FACTS,
  DUTIES,
  FIELDS,
  RESERVED,
  STATEMENTS,
  TAILS,
  VERBS,
} from "./vocabulary.ts";

/** How a token is coloured. */
export type HighlightClass =
  | "keyword"
  | "field"
  | "verb"
  | "duty"
  | "unit"
  | "number"
  | "string"
  | "date"
  | "time"
  | "comment"
  | "doc-comment"
  | "operator"
  | "name";

/** What a token is to the parser. Types are told apart by identity. */
export interface TokenType {
  readonly kind: TokenKind;
  /** As messages name it. */
  readonly label: string;
  /** The wider type that takes it as well. */
  readonly within?: TokenType;
}

const GROUPS = new Map(
  Object.entries(UNIT_GROUPS).flatMap(([group, units]) => units.map((unit) => [unit, group] as const)),
);

/** The group of units that a unit belongs to, or undefined when the notation has no such unit. */
export function unitGroup(written: string): string | undefined {
  const plain = plainUnit(written);
  return plain === undefined ? undefined : GROUPS.get(plain);
}

// ---------------------------------------------------------------------------------------------------------------
// Token types that the lexer makes

export const Space: TokenType = { kind: "space", label: "a space" };
export const Newline: TokenType = { kind: "newline", label: "the end of the line" };
export const DocComment: TokenType = { kind: "doc-comment", label: "a documentation comment" };
export const Comment: TokenType = { kind: "comment", label: "a comment" };
export const StringToken: TokenType = { kind: "string", label: "a text in double quotes" };
/** A string without its closing quote ends at the line's end, or before the `{` that ends the line. */
export const UnclosedString: TokenType = {
  kind: "string",
  label: "a text in double quotes",
  within: StringToken,
};
export const DateToken: TokenType = { kind: "date", label: "a date" };
export const TimeToken: TokenType = { kind: "time", label: "a time" };
export const NumberToken: TokenType = { kind: "number", label: "a number" };
/** A unit is one only directly after a number; a word there that is no known unit stays a word. */
export const Unit: TokenType = { kind: "unit", label: "a unit" };
export const Word: TokenType = { kind: "word", label: "a word" };
export const LeftBrace: TokenType = { kind: "punctuation", label: "`{`" };
export const RightBrace: TokenType = { kind: "punctuation", label: "`}`" };
export const LeftParen: TokenType = { kind: "punctuation", label: "`(`" };
export const RightParen: TokenType = { kind: "punctuation", label: "`)`" };
export const Comma: TokenType = { kind: "punctuation", label: "`,`" };
export const Colon: TokenType = { kind: "punctuation", label: "`:`" };
export const Equals: TokenType = { kind: "punctuation", label: "`=`" };
export const Dot: TokenType = { kind: "punctuation", label: "`.`" };
export const Unknown: TokenType = { kind: "unknown", label: "a character that the notation does not have" };
/** The sign between sizes and before a number of things; also written `×`. */
export const X: TokenType = { kind: "word", label: "`x`" };
/** After the last token of a line; no token of a text has it. */
export const End: TokenType = { kind: "newline", label: "the end of the line" };

/** A row of the table: a type, and what its tokens look like from where they start. */
export interface TokenRow {
  readonly type: TokenType;
  readonly pattern: RegExp;
  /** Only behind a number, with a blank at most between them, or directly behind it. */
  readonly where?: "behind-number" | "at-number";
  /** Whether what the pattern finds is one. */
  readonly isOne?: (written: string) => boolean;
}

/**
 * A unit of several words after a number, as labels write them: `sq. ft. per quart`, `fl oz`, `m2 per liter`. It is one only
 * where its plain form is known.
 */
export const LONG_UNIT =
  /(?:(?:sq|square|cu|cubic|fl|fluid|deg|air|per)\.?[ \t]+)?°?\p{L}[\p{L}\p{M}\p{N}]*\.?(?:(?:[ \t]*\/[ \t]*|[ \t]+per[ \t]+)(?:(?:sq|square|fl|fluid)\.?[ \t]+)?\p{L}[\p{L}\p{M}\p{N}]*\.?)?/iuy;

export const SHORT_UNIT =
  /air[ \t]+changes?\/h(?![\p{L}\p{M}\p{N}_])|%|°?\p{L}[\p{L}\p{M}\p{N}_]*(?:\/[\p{L}][\p{L}\p{M}\p{N}_]*)?|°(?![\p{L}])/uy;

/** Marks of feet and inches, which stand directly behind their number: a title stands behind a blank. */
export const FEET_AND_INCHES = /["'′’″”]/y;

/** In the order in which they are tried. */
export const TOKEN_TABLE: readonly TokenRow[] = [
  { type: Space, pattern: /\ufeff|[ \t\f\v\u00a0\u2007\u2009\u202f]+/y },
  { type: Newline, pattern: /\r\n|\n|\r/y },
  { type: DocComment, pattern: /##[^\r\n]*/y },
  { type: Comment, pattern: /#[^\r\n]*/y },
  { type: Unit, pattern: FEET_AND_INCHES, where: "at-number" },
  { type: StringToken, pattern: /"(?:[^"\\\r\n]|\\[^\r\n])*"/y },
  { type: UnclosedString, pattern: /"[^\r\n]*/y },
  { type: DateToken, pattern: /\d{4}-\d{2}-\d{2}(?![\d])/y },
  { type: TimeToken, pattern: /\d{1,2}:\d{2}(?!\d)/y },
  { type: NumberToken, pattern: /-?(?:\d+[ \t]+\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)/y },
  {
    type: Unit,
    pattern: LONG_UNIT,
    where: "behind-number",
    isOne: (written) => plainUnit(written) !== undefined,
  },
  { type: Unit, pattern: SHORT_UNIT, where: "behind-number", isOne: isUnit },
  // `600x720`
  { type: X, pattern: /x(?=\d)/y, where: "behind-number" },
  { type: X, pattern: /×(?!×)/y },
  { type: Word, pattern: /\p{L}[\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*/uy },
  { type: LeftBrace, pattern: /\{/y },
  { type: RightBrace, pattern: /\}/y },
  { type: LeftParen, pattern: /\(/y },
  { type: RightParen, pattern: /\)/y },
  { type: Comma, pattern: /,/y },
  { type: Colon, pattern: /:/y },
  { type: Equals, pattern: /=/y },
  { type: Dot, pattern: /\./y },
  // One of them over and over is one token, so that a file of zeros does not fill the memory.
  { type: Unknown, pattern: /([\s\S])\1*/uy },
];

/** The pattern of a type that the lexer makes. */
export function patternOf(type: TokenType): RegExp {
  return TOKEN_TABLE.find((row) => row.type === type)!.pattern;
}

/** Whether what the short pattern of units finds after a number is one. */
export function isUnit(written: string): boolean {
  return plainUnit(written) !== undefined || /[/°]/u.test(written);
}

/** How much of what is left of a line belongs to a string that the line does not close: no blanks at its end, and no `{` that ends the line. */
export function unclosedLength(rest: string): number {
  let end = withoutBlanks(rest, rest.length);
  if (end > 1 && rest[end - 1] === "{") {
    end = withoutBlanks(rest, end - 1);
  }
  return end;
}

function withoutBlanks(text: string, end: number): number {
  let last = end;
  while (text[last - 1] === " " || text[last - 1] === "\t") {
    last -= 1;
  }
  return last;
}

// ---------------------------------------------------------------------------------------------------------------
// Words that mean something inside a line

function contextual(word: string): TokenType {
  return { kind: "word", label: `\`${word}\``, within: Word };
}

function reserved(word: (typeof RESERVED)[number]): TokenType {
  return { kind: "word", label: `\`${word}\`` };
}

export const To = reserved("to");
export const With = reserved("with");
export const By = reserved("by");
export const Of = reserved("of");
export const Up = contextual("up");
export const For = contextual("for");
export const Per = contextual("per");
export const Rh = contextual("RH");
export const Until = contextual("until");
export const Overnight = contextual("overnight");
export const As = contextual("as");
export const Left = contextual("left");
export const After = contextual("after");
export const Wiped = contextual("wiped");
export const Thinned = contextual("thinned");
export const Tinted = contextual("tinted");
export const Wet = contextual("wet");
export const Takes = contextual("takes");
export const Uses = contextual("uses");
export const Together = contextual("together");
export const Apart = contextual("apart");
export const And = contextual("and");
export const BetweenWord = contextual("between");
export const Thin = contextual("thin");
export const Mist = contextual("mist");
export const Full = contextual("full");
export const Flooded = contextual("flooded");
export const Veneer = contextual("veneer");
export const Plus = contextual("plus");
export const Coats = contextual("coats");

/** The token types of words that the parser asks for by themselves, by word. */
export const CONTEXTUAL_WORDS: ReadonlyMap<string, TokenType> = new Map([
  ["x", X],
  ["to", To],
  ["with", With],
  ["by", By],
  ["of", Of],
  ["up", Up],
  ["for", For],
  ["per", Per],
  ["RH", Rh],
  ["rh", Rh],
  ["until", Until],
  ["overnight", Overnight],
  ["as", As],
  ["left", Left],
  ["after", After],
  ["wiped", Wiped],
  ["thinned", Thinned],
  ["tinted", Tinted],
  ["wet", Wet],
  ["takes", Takes],
  ["uses", Uses],
  ["together", Together],
  ["apart", Apart],
  ["and", And],
  ["between", BetweenWord],
  ["thin", Thin],
  ["mist", Mist],
  ["full", Full],
  ["flooded", Flooded],
  ["veneer", Veneer],
  ["plus", Plus],
  ["coats", Coats],
  ["coat", Coats],
]);

/** The token types of the words that start a tail. */
export const TAIL_TYPES: ReadonlySet<TokenType> = new Set([
  By,
  Wiped,
  Thinned,
  Tinted,
  As,
  Wet,
  Takes,
  Uses,
  Together,
  Apart,
]);

/** Tails of one word, which start one only behind a comma: they are names as well. */
export const BARE_TAILS: ReadonlyMap<TokenType, "thin" | "mist" | "full" | "flooded"> = new Map([
  [Thin, "thin"],
  [Mist, "mist"],
  [Full, "full"],
  [Flooded, "flooded"],
]);

/** Whether a token may stand where a type is asked for. */
export function matches(token: { readonly type: TokenType }, type: TokenType): boolean {
  return token.type === type || token.type.within === type;
}

/** Words by the class in which they are highlighted, and where in a line they mean what they mean. */
export interface WordClass {
  readonly highlight: HighlightClass;
  readonly where: "line-start" | "after-step" | "after-safety" | "after-comma" | "anywhere";
  readonly words: readonly string[];
}

export const WORD_CLASSES: readonly WordClass[] = [
  {
    highlight: "keyword",
    where: "line-start",
    words: [...Object.keys(DECLARATION_WORDS), ...words(STATEMENTS)],
  },
  {
    highlight: "field",
    where: "line-start",
    words: [
      ...new Set([
        ...words(FIELDS),
        ...Object.values(FORMER_FIELDS).flatMap((former) => Object.keys(former)),
      ]),
    ],
  },
  {
    highlight: "verb",
    where: "after-step",
    words: [...new Set([VERBS, VERB_SPELLINGS, VERB_SPELLINGS_WITH].flatMap((verbs) => Object.keys(verbs)))],
  },
  { highlight: "duty", where: "after-safety", words: DUTIES },
  {
    highlight: "keyword",
    where: "after-comma",
    words: [...new Set([...Object.keys(TAILS), ...Object.keys(DONE_FACTS)])],
  },
  { highlight: "operator", where: "anywhere", words: RESERVED },
];

function words(blocks: Readonly<Record<string, Readonly<Record<string, unknown>>>>): readonly string[] {
  return [...new Set(Object.values(blocks).flatMap((block) => Object.keys(block)))];
}
