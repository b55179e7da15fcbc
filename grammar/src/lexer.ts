/**
 * Turns text into tokens, every character in exactly one of them.
 *
 * The lexer knows no keywords and keeps spaces, line ends and comments as tokens, so that the lossless view is just its
 * output.  It cannot fail: a character that belongs to nothing is a token of kind `unknown`.  No token crosses a line
 * end, hence the tokens of a line do not depend on other lines.
 */
import { type IToken, Lexer, type TokenType } from "chevrotain";
import {
  CONTEXTUAL_WORDS,
  Comment,
  DocComment,
  Newline,
  Space,
  TOKEN_TABLE,
  UnclosedString,
  Word,
} from "./tokens.ts";
import type { Token, TokenKind } from "./tree.ts";

const KINDS: ReadonlyMap<TokenType, TokenKind> = new Map(TOKEN_TABLE.map((row) => [row.type, row.kind]));

let lexer: Lexer | undefined;

/** All tokens of the text, trivia included. `validate` checks the token table itself (for the tests). */
export function lex(text: string): IToken[] {
  lexer ??= createLexer({ validate: false });
  return lexer.tokenize(text).tokens;
}

/** Builds the lexer; a mistake in the token table throws here when `validate` is set. */
export function createLexer(options: { readonly validate: boolean }): Lexer {
  return new Lexer(lexingOrder(), {
    ensureOptimizations: true,
    positionTracking: "onlyOffset",
    skipValidations: !options.validate,
  });
}

/** The lossless view of lexed tokens. */
export function losslessTokens(tokens: readonly IToken[]): Token[] {
  return tokens.map((token) => ({
    kind: kindOf(token),
    text: token.image,
    start: token.startOffset,
  }));
}

/** The lexical class of a token as it left the lexer. */
export function kindOf(token: IToken): TokenKind {
  return KINDS.get(token.tokenType) ?? "word";
}

/** Whether a token is a space, a line end or a comment. */
export function isTrivia(token: IToken): boolean {
  return isSpace(token) || isComment(token) || token.tokenType === Newline;
}

/** Whether a token is blank within its line. */
export function isSpace(token: IToken): boolean {
  return token.tokenType === Space;
}

/** Whether a token is a comment of either sort. */
export function isComment(token: IToken): boolean {
  return token.tokenType === Comment || token.tokenType === DocComment;
}

/** Where a token ends. */
export function endOf(token: IToken): number {
  return token.startOffset + token.image.length;
}

/** The token with the type of the word that it is, where the parser asks for that word by itself. */
export function retype(token: IToken): IToken {
  const type = token.tokenType === Word ? CONTEXTUAL_WORDS.get(token.image) : undefined;
  return type === undefined ? token : { ...token, tokenType: type, tokenTypeIdx: type.tokenTypeIdx! };
}

/** A closed string is tried before an unclosed one, and a comment with two marks before one with one. */
function lexingOrder(): TokenType[] {
  return TOKEN_TABLE.map((row) => row.type);
}

/** Whether the token is a string that its line ended. */
export function isUnclosed(token: IToken): boolean {
  return token.tokenType === UnclosedString;
}
