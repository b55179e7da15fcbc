/** `textDocument/foldingRange`, in whole lines for a client that hides no less. */
import type { FoldingRange, FoldingRangeParams } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { FoldingInfo } from "../../features/types.ts";
import { FoldingRangeKind } from "../protocol.ts";
import type { Session } from "../session.ts";
import { fileIdOf } from "../uri.ts";

export const foldingRange = (session: Session, { textDocument }: FoldingRangeParams): FoldingRange[] => {
  const file = fileIdOf(textDocument.uri);
  const { analysis, document: documentOf } = session.files.snapshot(file);
  const document = documentOf(file);
  if (document === undefined) return [];
  const { foldsLines, foldingLimit } = session.facts;
  return analysis
    .foldings(file)
    .map((folding) => toFoldingRange(folding, document, foldsLines))
    .filter(({ startLine, endLine }) => startLine < endLine)
    .slice(0, foldingLimit);
};

const KIND: Readonly<Partial<Record<FoldingInfo["kind"], FoldingRangeKind>>> = {
  comment: FoldingRangeKind.Comment,
  uses: FoldingRangeKind.Imports,
  region: FoldingRangeKind.Region,
};

const toFoldingRange = (
  { kind, span }: FoldingInfo,
  document: TextDocument,
  foldsLines: boolean,
): FoldingRange => {
  const [start, end] = [document.positionAt(span.start), document.positionAt(span.end)];
  const named = KIND[kind] === undefined ? {} : { kind: KIND[kind] };
  if (!foldsLines) {
    return {
      startLine: start.line,
      startCharacter: start.character,
      endLine: end.line,
      endCharacter: end.character,
      ...named,
    };
  }
  // The closing brace stays in sight.
  return { startLine: start.line, endLine: kind === "block" ? end.line - 1 : end.line, ...named };
};
