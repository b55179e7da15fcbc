/** `textDocument/selectionRange`: what a selection grows to, for each caret. */
import type { SelectionRange, SelectionRangeParams } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const selectionRange = (
  session: Session,
  { textDocument, positions }: SelectionRangeParams,
): SelectionRange[] | null => {
  const file = fileIdOf(textDocument.uri);
  const { analysis, document: documentOf } = session.files.snapshot(file);
  const document = documentOf(file);
  if (document === undefined) return null;
  return positions.map((position) => {
    const spans = analysis.selections(file, offsetOf(document, position));
    const [innermost, ...around] = spans.map((span) => toRange(document, span));
    const parent = around.reduceRight<SelectionRange | undefined>(
      (outer, range) => ({ range, ...(outer && { parent: outer }) }),
      undefined,
    );
    return { range: innermost ?? { start: position, end: position }, ...(parent && { parent }) };
  });
};
