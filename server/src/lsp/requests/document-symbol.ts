/** `textDocument/documentSymbol`: the outline, as a tree where the client shows one. */
import type { DocumentSymbol, DocumentSymbolParams, SymbolInformation } from "vscode-languageserver";
import type { Session } from "../session.ts";
import { toDocumentSymbol, toSymbolInformation } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const documentSymbol = (
  session: Session,
  params: DocumentSymbolParams,
): DocumentSymbol[] | SymbolInformation[] => {
  const { uri } = params.textDocument;
  const file = fileIdOf(uri);
  const snapshot = session.files.snapshot(file);
  const document = snapshot.document(file);
  if (document === undefined) return [];
  const symbols = snapshot.analysis.symbols(file);
  return session.facts.hierarchicalSymbols
    ? symbols.map((symbol) => toDocumentSymbol(symbol, document))
    : symbols.flatMap((symbol) => toSymbolInformation(symbol, document, uri));
};
