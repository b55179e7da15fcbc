/** `textDocument/semanticTokens`: colours by meaning, of the whole text, of what changed since, and of a part. */
import type {
  Position,
  Range,
  SemanticTokens,
  SemanticTokensDelta,
  SemanticTokensDeltaParams,
  SemanticTokensParams,
  SemanticTokensRangeParams,
} from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { type SemanticToken, TOKEN_MODIFIERS, TOKEN_TYPES } from "../../features/types.ts";
import { spanOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { fileIdOf } from "../uri.ts";

export const semanticTokens = (
  session: Session,
  { textDocument: { uri } }: SemanticTokensParams,
): SemanticTokens | SemanticTokensDelta | null => {
  const data = encoded(session, uri);
  return data && session.sentTokens.send(fileIdOf(uri), data);
};

export const semanticTokensDelta = (
  session: Session,
  { textDocument: { uri }, previousResultId }: SemanticTokensDeltaParams,
): SemanticTokens | SemanticTokensDelta | null => {
  const data = encoded(session, uri);
  return data && session.sentTokens.send(fileIdOf(uri), data, previousResultId);
};

export const semanticTokensRange = (
  session: Session,
  { textDocument: { uri }, range }: SemanticTokensRangeParams,
): SemanticTokens | null => {
  const data = encoded(session, uri, range);
  return data && { data };
};

const encoded = (session: Session, uri: string, range?: Range): number[] | null => {
  const file = fileIdOf(uri);
  const { analysis, document: documentOf } = session.files.snapshot(file);
  const document = documentOf(file);
  if (document === undefined) return null;
  const which = session.facts.coloursItself ? "words" : "all";
  const data: number[] = [];
  let before: Position = { line: 0, character: 0 };
  const part = range && spanOf(document, range);
  const pieces = part
    ? [{ offset: 0, tokens: analysis.semanticTokens(file, which, part) }]
    : analysis.tokenPieces(file, which);
  for (const { offset, tokens } of pieces) {
    if (tokens.length === 0) continue;
    const start = document.positionAt(offset);
    const { numbers, first, last } = part
      ? placed(document, offset, tokens)
      : placedOnce(document, offset, tokens);
    const from = moved(first, start);
    const line = from.line - before.line;
    data.push(line, line === 0 ? from.character - before.character : from.character);
    for (let index = 2; index < numbers.length; index += 1) data.push(numbers[index]!);
    before = moved(last, start);
  }
  return data;
};

/** The numbers of the tokens of a piece, of which the first two are to be made for where it stands. */
interface Placed {
  readonly numbers: readonly number[];
  /** The first and the last token, from the start of the piece. */
  readonly first: Position;
  readonly last: Position;
}

/** A place in a piece that starts there. */
const moved = ({ line, character }: Position, start: Position): Position => ({
  line: start.line + line,
  character: line === 0 ? start.character + character : character,
});

/** Five numbers a token: lines and characters from the token before, length, type, and a bit for each modifier. */
const placed = (document: TextDocument, offset: number, tokens: readonly SemanticToken[]): Placed => {
  const start = document.positionAt(offset);
  const placeOf = ({ span }: SemanticToken): Position => {
    const at = document.positionAt(offset + span.start);
    const line = at.line - start.line;
    return { line, character: line === 0 ? at.character - start.character : at.character };
  };
  const numbers: number[] = [];
  const first = placeOf(tokens[0]!);
  let last = first;
  for (const token of tokens) {
    const at = placeOf(token);
    const line = at.line - last.line;
    const character = line === 0 ? at.character - last.character : at.character;
    const bits = token.modifiers.reduce((sum, modifier) => sum | (1 << TOKEN_MODIFIERS.indexOf(modifier)), 0);
    numbers.push(line, character, token.span.end - token.span.start, TOKEN_TYPES.indexOf(token.type), bits);
    last = at;
  }
  return { numbers, first, last };
};

/** Of tokens that are the same as before, in the same text. */
const placedOnce = (document: TextDocument, offset: number, tokens: readonly SemanticToken[]): Placed => {
  const known = PLACED.get(tokens) ?? placed(document, offset, tokens);
  PLACED.set(tokens, known);
  return known;
};

const PLACED = new WeakMap<readonly SemanticToken[], Placed>();
