/**
 * Ways through the tree: from an offset to the token, statement and nodes there, and over the nodes of a declaration.
 *
 * Features work with offsets in the file while trees have offsets in their declaration; the translation is made here and
 * nowhere else.  All names of a declaration with what they stand for are found in `names.ts`.
 */
import { indexAt } from "./binary-search.ts";
import { ownTokens } from "./tokens-of.ts";
import type { DeclarationTree, FilePiece, FileTree, Span, Statement, Token } from "./tree.ts";

/** Anything in the typed view that has a place. */
export interface SpannedNode {
  readonly kind?: string;
  readonly span: Span;
}

/** What stands at an offset. */
export interface Location {
  readonly piece: FilePiece;
  /** Relative to the piece. */
  readonly offset: number;
  /** The token that the offset is in, or the last one before it at the end of the piece. */
  readonly token: Token | undefined;
  readonly declaration?: DeclarationTree;
  /** From the declaration inwards: every node that the offset touches, or that holds such a node. */
  readonly path: readonly SpannedNode[];
  /** The innermost statement of the path. */
  readonly statement?: Statement;
}

const STATEMENT_KINDS: ReadonlySet<string> = new Set<Statement["kind"]>([
  "field",
  "surface",
  "step",
  "layer",
  "wait",
  "safety",
  "follow",
  "note",
  "apply",
  "done",
  "broken",
]);

/** An offset in a piece as one in its file. Here alone the two are added. */
export function absoluteOffset(piece: { readonly offset: number }, inside: number): number {
  return piece.offset + inside;
}

/** A span of a piece as a span of its file. */
export function absoluteSpan(piece: { readonly offset: number }, span: Span): Span {
  return { start: absoluteOffset(piece, span.start), end: absoluteOffset(piece, span.end) };
}

/** A token of a piece at its offset in the file. */
export function absoluteToken(piece: { readonly offset: number }, token: Token): Token {
  return { ...token, start: absoluteOffset(piece, token.start) };
}

/** Whether an offset is in a span or at one of its ends. */
export function touches(span: Span, offset: number): boolean {
  return span.start <= offset && offset <= span.end;
}

/** The line end of a text, for what is written into it. */
export const newlineOf = (text: string): string => (text.includes("\r\n") ? "\r\n" : "\n");

/** The piece that holds an offset of the file; at the end of the file, the last one. */
export function pieceAt(tree: FileTree, offset: number): FilePiece | undefined {
  const { pieces } = tree;
  return pieces[indexAt(pieces, offset, (piece) => piece.offset)];
}

/** What stands at an offset of the file. */
export function locate(tree: FileTree, offset: number): Location | undefined {
  const piece = pieceAt(tree, offset);
  if (piece === undefined) {
    return undefined;
  }
  const inside = offset - piece.offset;
  const token = tokenAt(ownTokens(piece), inside);
  if (piece.kind !== "declaration") {
    return { piece, offset: inside, token, path: [] };
  }
  const path = pathAt(piece.body.syntax, inside);
  const statement = path.findLast(isStatement);
  return { piece, offset: inside, token, declaration: piece, path, ...(statement && { statement }) };
}

/** The token that an offset is in; at the end of the last token, that one. */
export function tokenAt(tokens: readonly Token[], offset: number): Token | undefined {
  return tokens[indexAt(tokens, offset, ({ start }) => start)];
}

/** The nodes from `root` inwards that an offset touches; a statement is entered by its block, too. */
export function pathAt(root: SpannedNode, offset: number): SpannedNode[] {
  const inner = childNodes(root)
    .map((child) => pathAt(child, offset))
    .filter((path) => path.length > 0);
  const best = inner.find((path) => path.at(-1)!.span.end > offset) ?? inner[0];
  if (best !== undefined) {
    return [root, ...best];
  }
  return touches(root.span, offset) ? [root] : [];
}

/** The nodes directly below a node, in the order of the text. */
export function childNodes(node: object): SpannedNode[] {
  const children = Object.values(node).flatMap(nodesIn);
  return children.toSorted((a, b) => a.span.start - b.span.start || b.span.end - a.span.end);
}

/** A node and all nodes below it, outer ones first. */
export function* allNodes(node: SpannedNode): Generator<SpannedNode> {
  yield node;
  for (const child of childNodes(node)) {
    yield* allNodes(child);
  }
}

function nodesIn(value: unknown): readonly SpannedNode[] {
  if (typeof value !== "object" || value === null) {
    return [];
  }
  if (Array.isArray(value)) {
    return value.flatMap(nodesIn);
  }
  if ("span" in value) {
    return [value as SpannedNode];
  }
  return "start" in value ? [] : Object.values(value).flatMap(nodesIn);
}

function isStatement(node: SpannedNode): node is Statement {
  return node.kind !== undefined && "keyword" in node && STATEMENT_KINDS.has(node.kind);
}
