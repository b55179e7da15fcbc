/**
 * Makes the leaves of the tree from single tokens: names, titles, numbers, units, dates and times.
 * What a unit or a date means, and whether a date exists, is left to the analysis core.
 */
import { endOf, isUnclosed, type LexToken } from "./lexer.ts";
import type { DateLiteral, Name, NumberLiteral, Ratio, Span, TimeLiteral, Title, Words } from "./tree.ts";
import { plainUnit } from "./units.ts";

/** Where a token stands. */
export function tokenSpan(token: LexToken): Span {
  return { start: token.start, end: endOf(token) };
}

/** One name however its accents are encoded; the span covers what was written. */
export function makeName(token: LexToken): Name {
  return { kind: "name", text: composed(token.text), span: tokenSpan(token) };
}

/** Nothing is to be composed in plain letters. */
function composed(text: string): string {
  for (let idx = 0; idx < text.length; idx += 1) {
    if (text.charCodeAt(idx) > 127) {
      return text.normalize("NFC");
    }
  }
  return text;
}

/** A unit in its plain form; the span covers what was written. */
export function makeUnit(token: LexToken): Name {
  return { kind: "name", text: plainUnit(token.text) ?? token.text, span: tokenSpan(token) };
}

export function makeWords(tokens: readonly LexToken[]): Words {
  const words = tokens.map(makeName);
  return {
    kind: "words",
    words,
    text: words.map((word) => word.text).join(" "),
    span: { start: words[0]!.span.start, end: words.at(-1)!.span.end },
  };
}

/** The text between the quotes; `\"` and `\\` are the only escapes. */
export function makeTitle(token: LexToken): Title {
  const inner = token.text.slice(1, isUnclosed(token) ? undefined : -1);
  const value = inner.includes("\\") ? inner.replace(/\\(["\\])/gu, "$1") : inner;
  return { kind: "title", value, span: tokenSpan(token) };
}

/** `12`, `2.5`, `3/4`, `1 1/2`, all perhaps with a minus. */
export function makeNumber(token: LexToken): NumberLiteral {
  return { kind: "number", text: token.text, value: numberValue(token.text), span: tokenSpan(token) };
}

export function makeDate(token: LexToken): DateLiteral {
  return { kind: "date", text: token.text, span: tokenSpan(token) };
}

export function makeTime(token: LexToken): TimeLiteral {
  return { kind: "time", text: token.text, span: tokenSpan(token) };
}

/** A ratio such as `1:10`, which looks like a time to the lexer. */
export function makeRatioOfTime(token: LexToken): Ratio {
  const colon = token.text.indexOf(":");
  const part = (from: number, to: number): NumberLiteral => ({
    kind: "number",
    text: token.text.slice(from, to),
    value: Number(token.text.slice(from, to)),
    span: { start: token.start + from, end: token.start + to },
  });
  const b = part(colon + 1, token.text.length);
  return { kind: "ratio", a: part(0, colon), b, span: tokenSpan(token) };
}

function numberValue(text: string): number {
  if (!text.includes("/")) {
    return Number(text);
  }
  const sign = text.startsWith("-") ? -1 : 1;
  const parts = text.replace("-", "").split(/[ \t]+/u);
  return sign * parts.reduce((sum, part) => sum + fractionValue(part), 0);
}

function fractionValue(text: string): number {
  const [numerator, denominator] = text.split("/");
  return denominator === undefined ? Number(numerator) : Number(numerator) / Number(denominator);
}
