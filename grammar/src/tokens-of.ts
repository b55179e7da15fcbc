/**
 * The lossless view of a declaration, made when somebody asks for it.
 *
 * What a declaration says is read once and kept; its tokens would take as much memory again, and nearly nobody asks for
 * them. They are lexed from its text and kept as long as nothing else needs the memory, in any case until what runs has
 * run to its end, so that going through a declaration statement by statement lexes it once.
 */
import { lex } from "./lexer.ts";
import type { DeclarationBody, FilePiece, Token } from "./tree.ts";

/** The tokens of a declaration, blanks and comments included, at offsets in it. */
export function tokensOfBody(body: DeclarationBody): readonly Token[] {
  const known = LEXED.get(body)?.deref();
  if (known !== undefined) {
    return known;
  }
  const tokens = lex(body.text);
  LEXED.set(body, new WeakRef(tokens));
  return tokens;
}

const LEXED = new WeakMap<DeclarationBody, WeakRef<readonly Token[]>>();

/** The tokens of a piece of a file, at offsets in the piece. */
export function ownTokens(piece: FilePiece): readonly Token[] {
  return piece.kind === "declaration" ? tokensOfBody(piece.body) : piece.tokens;
}
