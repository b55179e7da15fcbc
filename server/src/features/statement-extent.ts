/**
 * Where a statement ends with its block, and how its line reads without comments. The tree keeps statements without
 * their blocks; an outline needs the whole.
 */
import { innerStatements, statementsOf } from "../../../grammar/src/names.ts";
import type { Declaration, DeclarationBody, Span, Statement, Token } from "../../../grammar/src/tree.ts";

/** The statement with its block: to the closing brace, or, while that is missing, to the last statement inside. */
export function extentOf(body: DeclarationBody, statement: Statement): Span {
  const { start, end } = statement.span;
  let depth = 0;
  for (let i = firstAfter(body.tokens, end); i < body.tokens.length; i += 1) {
    const token = body.tokens[i]!;
    if (token.text === "{") depth += 1;
    else if (token.text === "}") depth -= 1;
    else if (depth === 0 && token.kind !== "space" && token.kind !== "comment") break;
    if (depth === 0 && token.text === "}") return { start, end: token.start + 1 };
    if (depth < 0) break;
  }
  const ends = innerStatements(statement).map((inner) => extentOf(body, inner).end);
  return { start, end: Math.max(end, ...ends) };
}

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
  let text = "";
  for (let i = firstAfter(body.tokens, span.start); i < body.tokens.length; i += 1) {
    const token = body.tokens[i]!;
    if (token.start >= span.end) break;
    const isGap = token.kind === "space" || token.kind === "newline";
    text += isGap ? " " : token.kind === "comment" || token.kind === "doc-comment" ? "" : token.text;
  }
  return text.replace(/ +/gu, " ").trim();
}

/** The first token that starts at an offset or after it. */
function firstAfter(tokens: readonly Token[], offset: number): number {
  let [low, high] = [0, tokens.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (tokens[middle]!.start < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}
