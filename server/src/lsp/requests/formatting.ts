/**
 * `textDocument/formatting`, of the whole text or of ranges of it.
 *
 * There is one layout, so the client's options (size of a tab, blanks or tabs) play no part. Only what changes is
 * answered, so that cursors and marks elsewhere stay.
 */
import type { Range, TextDocumentIdentifier, TextEdit } from "vscode-languageserver";
import { spanOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const formatting = (
  session: Session,
  { uri }: TextDocumentIdentifier,
  ranges?: readonly Range[],
): TextEdit[] | null => {
  const file = fileIdOf(uri);
  const { analysis, document: documentOf } = session.files.snapshot(file);
  const document = documentOf(file);
  if (document === undefined) return null;
  return analysis
    .formatting(
      file,
      ranges?.map((range) => spanOf(document, range)),
    )
    .map(({ span, text }) => ({ range: toRange(document, span), newText: text }));
};
