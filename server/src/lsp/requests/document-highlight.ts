/**
 * `textDocument/documentHighlight`: the other places in this file where the thing at the caret is named.
 *
 * Where no name stands the answer is none at all, and the client may mark words that are spelt alike.
 */
import type { DocumentHighlight, DocumentHighlightParams } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import { DocumentHighlightKind } from "../protocol.ts";
import type { Session } from "../session.ts";
import { toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

const KIND = { read: DocumentHighlightKind.Read, write: DocumentHighlightKind.Write } as const;

export const documentHighlight = async (
  session: Session,
  params: DocumentHighlightParams,
): Promise<DocumentHighlight[] | null> => {
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const highlights = snapshot.analysis.highlights(file, offsetOf(document, params.position));
  if (highlights.length === 0) return null;
  return highlights.map(({ span, kind }) => ({ range: toRange(document, span), kind: KIND[kind] }));
};
