/**
 * Makes the leaves of the tree from single tokens: names, titles, numbers, units, dates and times.
 * What a unit or a date means, and whether a date exists, is left to the analysis core.
 */
import type { IToken } from "chevrotain";
import { endOf, isUnclosed } from "./lexer.ts";
import { plainUnit } from "./tokens.ts";
import type { DateLiteral, Name, NumberLiteral, Ratio, Span, TimeLiteral, Title, Words } from "./tree.ts";

/** Where a token stands. */
export function tokenSpan(token: IToken): Span {
  return { start: token.startOffset, end: endOf(token) };
}

/** One name however its accents are encoded; the span covers what was written. */
export function makeName(token: IToken): Name {
  return { kind: "name", text: token.image.normalize("NFC"), span: tokenSpan(token) };
}

/** A unit in its plain form; the span covers what was written. */
export function makeUnit(token: IToken): Name {
  return { kind: "name", text: plainUnit(token.image) ?? token.image, span: tokenSpan(token) };
}

export function makeWords(tokens: readonly IToken[]): Words {
  const words = tokens.map(makeName);
  return {
    kind: "words",
    words,
    text: words.map((word) => word.text).join(" "),
    span: { start: words[0]!.span.start, end: words.at(-1)!.span.end },
  };
}

/** The text between the quotes; `\"` and `\\` are the only escapes. */
export function makeTitle(token: IToken): Title {
  const inner = token.image.slice(1, isUnclosed(token) ? undefined : -1);
  return { kind: "title", value: inner.replace(/\\(["\\])/gu, "$1"), span: tokenSpan(token) };
}

/** `12`, `2.5`, `3/4`, `1 1/2`, all perhaps with a minus. */
export function makeNumber(token: IToken): NumberLiteral {
  return { kind: "number", text: token.image, value: numberValue(token.image), span: tokenSpan(token) };
}

export function makeDate(token: IToken): DateLiteral {
  return { kind: "date", text: token.image, span: tokenSpan(token) };
}

export function makeTime(token: IToken): TimeLiteral {
  return { kind: "time", text: token.image, span: tokenSpan(token) };
}

/** A ratio such as `1:10`, which looks like a time to the lexer. */
export function makeRatioOfTime(token: IToken): Ratio {
  const colon = token.image.indexOf(":");
  const part = (from: number, to: number): NumberLiteral => ({
    kind: "number",
    text: token.image.slice(from, to),
    value: Number(token.image.slice(from, to)),
    span: { start: token.startOffset + from, end: token.startOffset + to },
  });
  const b = part(colon + 1, token.image.length);
  return { kind: "ratio", a: part(0, colon), b, span: tokenSpan(token) };
}

function numberValue(text: string): number {
  const sign = text.startsWith("-") ? -1 : 1;
  const parts = text.replace("-", "").split(/[ \t]+/u);
  return sign * parts.reduce((sum, part) => sum + fractionValue(part), 0);
}

function fractionValue(text: string): number {
  const [numerator, denominator] = text.split("/");
  return denominator === undefined ? Number(numerator) : Number(numerator) / Number(denominator);
}
