/**
 * Words the syntax errors of a line: what was expected, with an example of the line, and the fix where one is known.
 *
 * The parser says only what it wanted and where; class names of tokens never reach a message.  Two errors recur in every
 * grammar of a line and have one wording each: something is missing (`expected`), or something is too much (`extra`).
 */
import { endOf, type LexToken } from "./lexer.ts";
import { tokenSpan } from "./literals.ts";
import { Colon, Comma, Equals, LeftParen, NumberToken, RightParen } from "./tokens.ts";
import type { SyntaxProblem } from "./tree.ts";
import { RESERVED } from "./vocabulary.ts";

/** The line that is read: all its tokens, and an example of one that is right. */
export interface LineContext {
  readonly tokens: readonly LexToken[];
  readonly example: string | undefined;
}

/** What takes a name of someone's choice. */
const NAMED = /^(?:a|the) (?:name|parameter|material|surface|recipe|job|thinner|tint)\b/u;

/** Something else, or nothing, stands where `what` was expected. */
export function expected(ctx: LineContext, what: string, actual: LexToken | undefined): SyntaxProblem {
  const suffix = ctx.example === undefined ? "" : `, such as \`${ctx.example}\``;
  if (actual === undefined) {
    const end = endOf(ctx.tokens.at(-1)!);
    return { message: `expected ${what}${suffix}`, span: { start: end, end } };
  }
  const isReserved = NAMED.test(what) && RESERVED.some((word) => word === actual.text);
  const reason = isReserved ? `; \`${actual.text}\` cannot be a name` : "";
  return { message: `expected ${what}${suffix}${reason}`, span: tokenSpan(actual), ...sign(actual) };
}

/** The line should have ended at `first`, or a comma should stand before it. */
export function extra(ctx: LineContext, first: LexToken, where: string): SyntaxProblem {
  const message = `expected ${where}`;
  const span = { start: first.start, end: endOf(lastOfPart(ctx, first)) };
  return { message, span, ...sign(first) };
}

/** A part of the line starts without the comma before it. */
export function missingComma(ctx: LineContext, first: LexToken): SyntaxProblem {
  const idx = ctx.tokens.indexOf(first);
  const at = endOf(ctx.tokens[idx - 1] ?? first);
  return {
    message: `expected a comma before \`${first.text}\``,
    span: tokenSpan(first),
    fix: { title: "Add the comma", span: { start: at, end: at }, text: "," },
  };
}

/** A name has a hyphen, which only words of a vocabulary may have. */
export function hyphenInName(token: LexToken): SyntaxProblem {
  const span = tokenSpan(token);
  const text = token.text.replaceAll("-", "_");
  return {
    message: `a name has no hyphen: expected \`${text}\``,
    span,
    fix: { title: `Write \`${text}\``, span, text },
  };
}

export function unclosedString(token: LexToken): SyntaxProblem {
  const span = tokenSpan(token);
  return {
    message: 'expected `"` at the end of this text',
    span,
    fix: { title: "Close the quotes", span: { start: span.end, end: span.end }, text: '"' },
  };
}

/** `covers: 10 m2/L`, `covers = 10 m2/L` */
export function signAfterKeyword(keyword: LexToken, sign: LexToken): SyntaxProblem {
  return {
    message: `nothing stands between \`${keyword.text}\` and its value: remove \`${sign.text}\``,
    span: tokenSpan(sign),
    fix: {
      title: `Remove the \`${sign.text}\``,
      span: { start: endOf(keyword), end: endOf(sign) },
      text: "",
    },
  };
}

/** Whether a token could be meant as a sign between keyword and value. */
export function isSign(token: LexToken | undefined): boolean {
  return token?.type === Colon || token?.type === Equals;
}

/** The last token before the comma, the closing parenthesis or the end after `first`. */
function lastOfPart(ctx: LineContext, first: LexToken): LexToken {
  const rest = ctx.tokens.slice(ctx.tokens.indexOf(first));
  let depth = 0;
  const end = rest.findIndex((token, idx) => {
    const isEnd = idx > 0 && depth === 0 && (token.type === Comma || token.type === RightParen);
    depth += token.type === LeftParen ? 1 : token.type === RightParen ? -1 : 0;
    return isEnd;
  });
  return rest[end < 0 ? rest.length - 1 : end - 1] ?? first;
}

/** Signs that are typed by habit, and what the notation has for them. */
const HABITS: Readonly<Record<string, string>> = {
  "×": " x ",
  "–": " to ",
  "—": " to ",
  ";": ",",
  "*": " x ",
};

function sign(token: LexToken): { readonly fix?: SyntaxProblem["fix"] } {
  const span = tokenSpan(token);
  if (/^x\d/u.test(token.text)) {
    const at = span.start + 1;
    return { fix: { title: "Add a space after `x`", span: { start: at, end: at }, text: " " } };
  }
  if (token.type === NumberToken && token.text.startsWith("-")) {
    return { fix: { title: "Write `to`", span: { start: span.start, end: span.start + 1 }, text: " to " } };
  }
  const text = Object.hasOwn(HABITS, token.text) ? HABITS[token.text]! : undefined;
  return text === undefined ? {} : { fix: { title: `Write \`${text.trim()}\``, span, text } };
}
