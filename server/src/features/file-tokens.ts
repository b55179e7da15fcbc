/** The tokens of a file at their offsets in it, for features that go by the text rather than by what it says. */
import { ownTokens } from "../../../grammar/src/tokens-of.ts";
import type { FilePiece, FileTree, Span, Token } from "../../../grammar/src/tree.ts";
import { absoluteToken } from "../../../grammar/src/walk.ts";

/** The tokens of a piece at offsets of the file. */
export function tokensOfPiece(piece: FilePiece): readonly Token[] {
  return ownTokens(piece).map((token) => absoluteToken(piece, token));
}

/** All tokens of a file, in order. */
export function tokensOfFile(tree: FileTree): readonly Token[] {
  return tree.pieces.flatMap(tokensOfPiece);
}

/** The lines of a file as their tokens, without line ends and blanks. */
export function lineTokens(tree: FileTree): readonly (readonly Token[])[] {
  const lines: Token[][] = [[]];
  for (const token of tokensOfFile(tree)) {
    if (token.kind === "newline") lines.push([]);
    else if (token.kind !== "space") lines.at(-1)!.push(token);
  }
  return lines;
}

export const tokenSpan = ({ start, text }: Token): Span => ({ start, end: start + text.length });

export const isComment = ({ kind }: Token): boolean => kind === "comment" || kind === "doc-comment";
