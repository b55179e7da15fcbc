/**
 * Turns text into tokens.
 *
 * The lexer keeps everything, blanks and comments included, so that the tokens are the lossless view of the text.  It
 * cannot fail: a character that belongs to nothing is a token of kind `unknown`.  No token crosses a line end, hence the
 * tokens of a line do not depend on other lines.
 *
 * A token is what the first pattern of the table finds (`tokens.ts`); what is common in ASCII is found without it.
 */
import {
  CONTEXTUAL_WORDS,
  Colon,
  Comma,
  Comment,
  DateToken,
  DocComment,
  Dot,
  End,
  Equals,
  FEET_AND_INCHES,
  isUnit,
  LeftBrace,
  LeftParen,
  LONG_UNIT,
  Newline,
  NumberToken,
  patternOf,
  RightBrace,
  RightParen,
  SHORT_UNIT,
  Space,
  StringToken,
  TimeToken,
  type TokenType,
  UnclosedString,
  Unit,
  Unknown,
  unclosedLength,
  Word,
  X,
} from "./tokens.ts";
import type { Token } from "./tree.ts";
import { plainUnit } from "./units.ts";

/** A token with what it is to the parser. */
export interface LexToken extends Token {
  readonly type: TokenType;
}

/** What stands after the last token of a line. */
export const END_TOKEN: LexToken = { kind: End.kind, text: "", start: Number.NaN, type: End };

/** All tokens of the text, trivia included. */
export function lex(text: string): LexToken[] {
  const tokens: LexToken[] = [];
  let start = 0;
  while (start < text.length) {
    const code = text.charCodeAt(start);
    const lexClass = code < 128 ? ASCII[code]! : OTHER;
    let type: TokenType;
    let end = start + 1;
    switch (lexClass) {
      case LETTER: {
        end = asciiWordEnd(text, end);
        const follower = end < text.length ? text.charCodeAt(end) : SPACE_CODE;
        if (isAfterNumber(tokens)) {
          const unitEnd = unitEndAt(text, start);
          if (unitEnd > start) {
            type = Unit;
            end = unitEnd;
            break;
          }
          // `600x720`
          if (code === SMALL_X_CODE && isDigit(text.charCodeAt(start + 1))) {
            type = X;
            end = start + 1;
            break;
          }
        }
        if (follower === HYPHEN_CODE || follower > 127) {
          end = matchEnd(WORD, text, start);
        }
        type = Word;
        break;
      }
      case DIGIT:
      case HYPHEN:
        type = NumberToken;
        end = plainNumberEnd(text, start);
        if (end < 0) {
          [type, end] = figure(text, start);
        }
        break;
      case BLANK:
        while (end < text.length && isBlank(text.charCodeAt(end))) {
          end += 1;
        }
        type = Space;
        break;
      case LINE_FEED:
        type = Newline;
        break;
      case CARRIAGE_RETURN:
        end += text.charCodeAt(end) === LINE_FEED_CODE ? 1 : 0;
        type = Newline;
        break;
      case NUMBER_SIGN:
        type = text.charCodeAt(end) === NUMBER_SIGN_CODE ? DocComment : Comment;
        end = lineEnd(text, end);
        break;
      case QUOTE:
        // Inches stand directly behind their number, titles behind a blank.
        if (tokens.at(-1)?.type === NumberToken) {
          type = Unit;
          break;
        }
        type = StringToken;
        end = matchEnd(STRING, text, start);
        if (end < 0) {
          type = UnclosedString;
          end = start + unclosedLength(text.slice(start, lineEnd(text, start)));
        }
        break;
      case SIGN:
        type = SIGNS[code]!;
        break;
      default:
        [type, end] = anything(text, start, tokens);
    }
    const image = text.slice(start, end);
    if (type === Word && image.length <= LONGEST_CONTEXTUAL) {
      type = CONTEXTUAL_WORDS.get(image) ?? Word;
    }
    tokens.push({ kind: type.kind, text: image, start, type });
    start = end;
  }
  return tokens;
}

/** Whether a token is a space, a line end or a comment. */
export function isTrivia(token: Token): boolean {
  return TRIVIA.has(token.kind);
}

/** Whether a token is blank within its line. */
export function isSpace(token: Token): boolean {
  return token.kind === "space";
}

/** Whether a token is a comment of either sort. */
export function isComment(token: Token): boolean {
  return token.kind === "comment" || token.kind === "doc-comment";
}

/** Whether a token is a word, whatever it means in its line. */
export function isWord(token: Token | undefined): boolean {
  return token?.kind === "word";
}

/** Where a token ends. */
export function endOf(token: Token): number {
  return token.start + token.text.length;
}

/** Whether the token is a string that its line ended. */
export function isUnclosed(token: LexToken): boolean {
  return token.type === UnclosedString;
}

const TRIVIA: ReadonlySet<string> = new Set(["space", "newline", "comment", "doc-comment"]);

// ---------------------------------------------------------------------------------------------------------------
// Classes of characters by which a token can begin

const LETTER = 1;
const DIGIT = 2;
const HYPHEN = 3;
const BLANK = 4;
const LINE_FEED = 5;
const CARRIAGE_RETURN = 6;
const NUMBER_SIGN = 7;
const QUOTE = 8;
const SIGN = 9;
const OTHER = 0;

const LINE_FEED_CODE = 10;
const CARRIAGE_RETURN_CODE = 13;
const SPACE_CODE = 32;
const NUMBER_SIGN_CODE = 35;
const HYPHEN_CODE = 45;
const SMALL_X_CODE = 120;
const UNDERSCORE_CODE = 95;

const SIGNS: Readonly<Record<number, TokenType>> = Object.fromEntries(
  Object.entries({
    "{": LeftBrace,
    "}": RightBrace,
    "(": LeftParen,
    ")": RightParen,
    ",": Comma,
    ":": Colon,
    "=": Equals,
    ".": Dot,
  }).map(([sign, type]) => [sign.charCodeAt(0), type]),
);

const ASCII: Uint8Array = Uint8Array.from({ length: 128 }, (_, code) => {
  const sign = String.fromCharCode(code);
  if (/[A-Za-z]/u.test(sign)) return LETTER;
  if (/[0-9]/u.test(sign)) return DIGIT;
  if (/[ \t\f\v]/u.test(sign)) return BLANK;
  if (code in SIGNS) return SIGN;
  return { "-": HYPHEN, "\n": LINE_FEED, "\r": CARRIAGE_RETURN, "#": NUMBER_SIGN, '"': QUOTE }[sign] ?? OTHER;
});

const LONGEST_CONTEXTUAL = Math.max(...[...CONTEXTUAL_WORDS.keys()].map((word) => word.length));

const SPACE = patternOf(Space);
const STRING = patternOf(StringToken);
const DATE = patternOf(DateToken);
const TIME = patternOf(TimeToken);
const NUMBER = patternOf(NumberToken);
const WORD = patternOf(Word);
const UNKNOWN = patternOf(Unknown);

function matchEnd(pattern: RegExp, text: string, start: number): number {
  pattern.lastIndex = start;
  return pattern.test(text) ? pattern.lastIndex : -1;
}

function isBlank(code: number): boolean {
  return code < 128
    ? ASCII[code] === BLANK
    : code === 0xa0 || code === 0x2007 || code === 0x2009 || code === 0x202f;
}

function asciiWordEnd(text: string, from: number): number {
  let end = from;
  for (;;) {
    const code = end < text.length ? text.charCodeAt(end) : SPACE_CODE;
    const goesOn =
      code < 128 && (ASCII[code] === LETTER || ASCII[code] === DIGIT || code === UNDERSCORE_CODE);
    if (!goesOn) {
      return end;
    }
    end += 1;
  }
}

function lineEnd(text: string, from: number): number {
  let end = from;
  while (end < text.length) {
    const code = text.charCodeAt(end);
    if (code === LINE_FEED_CODE || code === CARRIAGE_RETURN_CODE) {
      break;
    }
    end += 1;
  }
  return end;
}

/** Where a number ends that is nothing but digits, perhaps with a decimal point; -1 where it may be something else. */
function plainNumberEnd(text: string, start: number): number {
  let end = digitsEnd(text, start);
  if (end === start) {
    return -1;
  }
  if (text[end] === "." && isDigit(text.charCodeAt(end + 1))) {
    end = digitsEnd(text, end + 1);
    return end;
  }
  const follower = text[end];
  if (follower === "-" || follower === ":" || follower === "/") {
    return -1;
  }
  let next = end;
  while (text[next] === " " || text[next] === "\t") {
    next += 1;
  }
  return next > end && isDigit(text.charCodeAt(next)) ? -1 : end;
}

function digitsEnd(text: string, start: number): number {
  let end = start;
  while (isDigit(text.charCodeAt(end))) {
    end += 1;
  }
  return end;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** A date, a time or a number; a hyphen that begins none belongs to nothing. */
function figure(text: string, start: number): [TokenType, number] {
  for (const [type, pattern] of FIGURES) {
    const end = matchEnd(pattern, text, start);
    if (end >= 0) {
      return [type, end];
    }
  }
  return [Unknown, matchEnd(UNKNOWN, text, start)];
}

const FIGURES = [
  [DateToken, DATE],
  [TimeToken, TIME],
  [NumberToken, NUMBER],
] as const;

/** What begins with a character that is no ASCII, or that has no other use. */
function anything(text: string, start: number, before: readonly LexToken[]): [TokenType, number] {
  const blankEnd = matchEnd(SPACE, text, start);
  if (blankEnd >= 0) {
    return [Space, blankEnd];
  }
  const unitEnd = isAfterNumber(before) ? unitEndAt(text, start) : -1;
  if (unitEnd >= 0) {
    return [Unit, unitEnd];
  }
  if (before.at(-1)?.type === NumberToken && matchEnd(FEET_AND_INCHES, text, start) > start) {
    return [Unit, start + 1];
  }
  if (text[start] === "×" && text[start + 1] !== "×") {
    return [X, start + 1];
  }
  const wordEnd = matchEnd(WORD, text, start);
  return wordEnd >= 0 ? [Word, wordEnd] : [Unknown, matchEnd(UNKNOWN, text, start)];
}

/** Where a unit ends that begins here, of one word or of several; -1 where there is none. */
function unitEndAt(text: string, start: number): number {
  const longEnd = matchEnd(LONG_UNIT, text, start);
  if (longEnd > start && plainUnit(text.slice(start, longEnd)) !== undefined) {
    return longEnd;
  }
  const end = matchEnd(SHORT_UNIT, text, start);
  return end > start && isUnit(text.slice(start, end)) ? end : -1;
}

/** Whether a number stands before, perhaps with one blank after it. */
function isAfterNumber(before: readonly LexToken[]): boolean {
  const last = before.at(-1);
  return (last?.type === Space ? before.at(-2) : last)?.type === NumberToken;
}
