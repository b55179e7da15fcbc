/**
 * The one token table.
 *
 * Every lexical class of the notation stands here once: its Chevrotain token type, its kind in the lossless view, and
 * the class in which it is highlighted.  The lexer, the TextMate grammar, semantic colouring and the language
 * reference are made from it.  Words are one class: nothing but `x to with by of` is reserved, so the words that mean
 * something inside a line are told apart only after lexing (`retype`), where the parser asks for them.
 */
import { createToken, Lexer, type TokenType } from "chevrotain";
import type { TokenKind } from "./tree.ts";
import { UNIT_ALIASES, UNIT_GROUPS } from "./units.ts";
import { DECLARATION_WORDS, DUTIES, FIELDS, RESERVED, STATEMENTS, TAILS, VERBS } from "./vocabulary.ts";

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

/** One row of the table. */
export interface TokenRow {
  readonly type: TokenType;
  readonly kind: TokenKind;
  readonly highlight?: HighlightClass;
}

const UNITS = new Set(Object.values(UNIT_GROUPS).flat());
const GROUPS = new Map(
  Object.entries(UNIT_GROUPS).flatMap(([group, units]) => units.map((unit) => [unit, group] as const)),
);

/** The plain form of a unit as it was written, or undefined when the notation has no such unit. */
export function plainUnit(written: string): string | undefined {
  const spaced = written.replace(/\s+/gu, " ");
  if (UNITS.has(spaced)) {
    return spaced;
  }
  return Object.hasOwn(UNIT_ALIASES, spaced) ? UNIT_ALIASES[spaced] : undefined;
}

/** The group of units that a unit belongs to, or undefined when the notation has no such unit. */
export function unitGroup(written: string): string | undefined {
  const plain = plainUnit(written);
  return plain === undefined ? undefined : GROUPS.get(plain);
}

// ---------------------------------------------------------------------------------------------------------------
// Patterns that need Unicode or the token before

/** One first character for every bucket of the lexer's start table: these patterns may start anywhere. */
const ANY_START = Array.from({ length: 256 }, (_, code) => code).concat(
  Array.from({ length: 520 }, (_, step) => 256 + step * 127).filter((code) => code < 65536),
  65535,
);

const WORD = /\p{L}[\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*/uy;
const UNIT =
  /air[ \t]+changes?\/h(?![\p{L}\p{M}\p{N}_])|%|°?\p{L}[\p{L}\p{M}\p{N}_]*(?:\/[\p{L}][\p{L}\p{M}\p{N}_]*)?|°(?![\p{L}])/uy;
const REST_OF_LINE = /[^\r\n]*/uy;
const ANYTHING = /[\s\S]/uy;

function matchAt(pattern: RegExp, text: string, offset: number): RegExpExecArray | null {
  pattern.lastIndex = offset;
  return pattern.exec(text);
}

/** From the quote to the end of its line, without blanks there and without a `{` that ends the line. */
function matchUnclosed(text: string, offset: number): [string] | null {
  if (text[offset] !== '"') {
    return null;
  }
  let end = withoutBlanks(text, offset + matchAt(REST_OF_LINE, text, offset)![0].length);
  if (end - 1 > offset && text[end - 1] === "{") {
    end = withoutBlanks(text, end - 1);
  }
  return [text.slice(offset, end)];
}

function withoutBlanks(text: string, end: number): number {
  let last = end;
  while (text[last - 1] === " " || text[last - 1] === "\t") {
    last -= 1;
  }
  return last;
}

/** A unit is one only directly after a number; a word there that is no known unit stays a word. */
function matchUnit(
  text: string,
  offset: number,
  before: readonly { readonly tokenType: TokenType }[],
): RegExpExecArray | null {
  const last = before.at(-1);
  const number = last?.tokenType === Space ? before.at(-2) : last;
  if (number?.tokenType !== NumberToken) {
    return null;
  }
  const match = matchAt(UNIT, text, offset);
  const isUnit = match !== null && (plainUnit(match[0]) !== undefined || /[/°]/u.test(match[0]));
  return isUnit ? match : null;
}

// ---------------------------------------------------------------------------------------------------------------
// Token types that the lexer makes

export const Space = createToken({
  name: "Space",
  pattern: /\ufeff|[ \t\f\v\u00a0\u2007\u2009\u202f]+/,
  line_breaks: false,
});
export const Newline = createToken({ name: "Newline", pattern: /\r\n|\n|\r/, line_breaks: true });
export const DocComment = createToken({ name: "DocComment", pattern: /##[^\r\n]*/, line_breaks: false });
export const Comment = createToken({ name: "Comment", pattern: /#[^\r\n]*/, line_breaks: false });
export const StringToken = createToken({
  name: "String",
  pattern: /"(?:[^"\\\r\n]|\\[^\r\n])*"/y,
  line_breaks: false,
  label: "a text in double quotes",
});
/** A string without its closing quote ends at the line's end, or before the `{` that ends the line. */
export const UnclosedString = createToken({
  name: "UnclosedString",
  pattern: { exec: matchUnclosed },
  line_breaks: false,
  start_chars_hint: ['"'],
  categories: [StringToken],
});
export const DateToken = createToken({ name: "Date", pattern: /\d{4}-\d{2}-\d{2}(?![\d])/, label: "a date" });
export const TimeToken = createToken({ name: "Time", pattern: /\d{1,2}:\d{2}(?!\d)/, label: "a time" });
export const NumberToken = createToken({
  name: "Number",
  pattern: /-?(?:\d+[ \t]+\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)/y,
  line_breaks: false,
  label: "a number",
});
export const Unit = createToken({
  name: "Unit",
  pattern: { exec: matchUnit },
  line_breaks: false,
  start_chars_hint: ANY_START,
  label: "a unit",
});
export const Word = createToken({
  name: "Word",
  pattern: { exec: (text: string, offset: number) => matchAt(WORD, text, offset) },
  line_breaks: false,
  start_chars_hint: ANY_START,
  label: "a word",
});
export const LeftBrace = createToken({ name: "LeftBrace", pattern: /\{/, label: "`{`" });
export const RightBrace = createToken({ name: "RightBrace", pattern: /\}/, label: "`}`" });
export const LeftParen = createToken({ name: "LeftParen", pattern: /\(/, label: "`(`" });
export const RightParen = createToken({ name: "RightParen", pattern: /\)/, label: "`)`" });
export const Comma = createToken({ name: "Comma", pattern: /,/, label: "`,`" });
export const Colon = createToken({ name: "Colon", pattern: /:/, label: "`:`" });
export const Equals = createToken({ name: "Equals", pattern: /=/, label: "`=`" });
export const Dot = createToken({ name: "Dot", pattern: /\./, label: "`.`" });
export const Unknown = createToken({
  name: "Unknown",
  pattern: { exec: (text: string, offset: number) => matchAt(ANYTHING, text, offset) },
  line_breaks: false,
  start_chars_hint: ANY_START,
});

// ---------------------------------------------------------------------------------------------------------------
// Words that mean something inside a line

function contextual(word: string): TokenType {
  return createToken({ name: `Word_${word}`, pattern: Lexer.NA, label: `\`${word}\``, categories: [Word] });
}

function reserved(word: (typeof RESERVED)[number]): TokenType {
  return createToken({ name: `Word_${word}`, pattern: Lexer.NA, label: `\`${word}\`` });
}

export const X = reserved("x");
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
  ["veneer", Veneer],
  ["plus", Plus],
  ["coats", Coats],
  ["coat", Coats],
]);

/** The token types of the words that start a tail. */
export const TAIL_TYPES: ReadonlySet<TokenType> = new Set([By, Wiped, Thinned, Tinted, As, Wet, Takes, Uses]);

/** In the order in which the lexer tries them. */
export const TOKEN_TABLE: readonly TokenRow[] = [
  { type: Space, kind: "space" },
  { type: Newline, kind: "newline" },
  { type: DocComment, kind: "doc-comment", highlight: "doc-comment" },
  { type: Comment, kind: "comment", highlight: "comment" },
  { type: StringToken, kind: "string", highlight: "string" },
  { type: UnclosedString, kind: "string", highlight: "string" },
  { type: DateToken, kind: "date", highlight: "date" },
  { type: TimeToken, kind: "time", highlight: "time" },
  { type: NumberToken, kind: "number", highlight: "number" },
  { type: Unit, kind: "unit", highlight: "unit" },
  { type: Word, kind: "word", highlight: "name" },
  { type: LeftBrace, kind: "punctuation", highlight: "operator" },
  { type: RightBrace, kind: "punctuation", highlight: "operator" },
  { type: LeftParen, kind: "punctuation", highlight: "operator" },
  { type: RightParen, kind: "punctuation", highlight: "operator" },
  { type: Comma, kind: "punctuation", highlight: "operator" },
  { type: Colon, kind: "punctuation", highlight: "operator" },
  { type: Equals, kind: "punctuation", highlight: "operator" },
  { type: Dot, kind: "punctuation", highlight: "operator" },
  { type: Unknown, kind: "unknown" },
];

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
  { highlight: "field", where: "line-start", words: words(FIELDS) },
  { highlight: "verb", where: "after-step", words: Object.keys(VERBS) },
  { highlight: "duty", where: "after-safety", words: DUTIES },
  { highlight: "keyword", where: "after-comma", words: Object.keys(TAILS) },
  { highlight: "operator", where: "anywhere", words: RESERVED },
];

function words(blocks: Readonly<Record<string, Readonly<Record<string, unknown>>>>): readonly string[] {
  return [...new Set(Object.values(blocks).flatMap((block) => Object.keys(block)))];
}
