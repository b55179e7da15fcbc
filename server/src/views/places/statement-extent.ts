/**
 * Where a statement ends with its block, and how its line reads without comments. The tree keeps statements without
 * their blocks; an outline needs the whole.
 */

import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import { innerStatements, statementsOf } from "../../../../grammar/src/names.ts";
import { tokensOfBody } from "../../../../grammar/src/tokens-of.ts";
import type { Declaration, DeclarationBody, Span, Statement, Token } from "../../../../grammar/src/tree.ts";
import { onceFor } from "../../core/once.ts";

/** The statement with its block: to the closing brace, or, while that is missing, to the last statement inside. */
export function extentOf(body: DeclarationBody, statement: Statement): Span {
  const known = EXTENTS.get(statement) ?? findExtent(body, statement);
  EXTENTS.set(statement, known);
  return known;
}

/** A statement belongs to one declaration and stays what it is; blocks in blocks would be gone through once for each. */
const EXTENTS = new WeakMap<Statement, Span>();

function findExtent(body: DeclarationBody, statement: Statement): Span {
  const { start, end } = statement.span;
  const close = blockEnd(body, end);
  if (close !== undefined) return { start, end: close };
  const ends = innerStatements(statement).map((inner) => extentOf(body, inner).end);
  return { start, end: ends.reduce((most, it) => Math.max(most, it), end) };
}

/** Where the block ends that opens behind an offset, with nothing but spaces and comments between; undefined for none. */
export function blockEnd(body: DeclarationBody, offset: number): number | undefined {
  const tokens = tokensOfBody(body);
  let next = firstAfter(tokens, offset);
  while (tokens[next]?.kind === "space" || tokens[next]?.kind === "comment") next += 1;
  const close = tokens[next]?.text === "{" ? closingBraces(body).get(next) : undefined;
  return close === undefined ? undefined : close + 1;
}

/** Where the brace stands that closes the one at an index of the tokens; nothing for one that is not closed. */
const closingBraces = onceFor((body: DeclarationBody): ReadonlyMap<number, number> => {
  const closing = new Map<number, number>();
  const open: number[] = [];
  tokensOfBody(body).forEach(({ text, start }, index) => {
    if (text === "{") open.push(index);
    const opened = text === "}" ? open.pop() : undefined;
    if (opened !== undefined) closing.set(opened, start);
  });
  return closing;
});

/** All statements of a declaration, those in blocks after the one that has the block. */
export function allStatements(declaration: Declaration): readonly Statement[] {
  const withInner = (statement: Statement): readonly Statement[] => [
    statement,
    ...innerStatements(statement).flatMap(withInner),
  ];
  return statementsOf(declaration).flatMap(withInner);
}

/** The text of a span on one line: without comments, with single spaces. */
export function lineText(body: DeclarationBody, span: Span): string {
  const tokens = tokensOfBody(body);
  let text = "";
  for (let i = firstAfter(tokens, span.start); i < tokens.length; i += 1) {
    const token = tokens[i]!;
    if (token.start >= span.end) break;
    const isGap = token.kind === "space" || token.kind === "newline";
    text += isGap ? " " : token.kind === "comment" || token.kind === "doc-comment" ? "" : token.text;
  }
  return text.replace(/ +/gu, " ").trim();
}

/** The first token that starts at an offset or after it. */
export const firstAfter = (tokens: readonly Token[], offset: number): number =>
  firstIndex(tokens, ({ start }) => start >= offset);
