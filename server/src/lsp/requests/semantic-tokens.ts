/** `textDocument/semanticTokens`: colours by meaning, of the whole text, of what changed since, and of a part. */
import type {
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
  const { analysis, document: documentOf } = session.files.snapshot();
  const document = documentOf(file);
  if (document === undefined) return null;
  const which = session.facts.coloursItself ? "words" : "all";
  const part = range && spanOf(document, range);
  return encode(document, analysis.semanticTokens(file, which, part));
};

/** Five numbers a token: lines and characters from the token before, length, type, and a bit for each modifier. */
const encode = (document: TextDocument, tokens: readonly SemanticToken[]): number[] => {
  let before = { line: 0, character: 0 };
  return tokens.flatMap(({ span, type, modifiers }) => {
    const at = document.positionAt(span.start);
    const line = at.line - before.line;
    const character = line === 0 ? at.character - before.character : at.character;
    const bits = modifiers.reduce((sum, modifier) => sum | (1 << TOKEN_MODIFIERS.indexOf(modifier)), 0);
    before = at;
    return [line, character, span.end - span.start, TOKEN_TYPES.indexOf(type), bits];
  });
};
