/** `textDocument/documentLink`: the paths of `use` lines. A file that was never saved has no folder to start from. */
import type { DocumentLink, DocumentLinkParams } from "vscode-languageserver";
import { shownText } from "../../escape/shown-text.ts";
import type { Session } from "../session.ts";
import { toRange } from "../to-lsp.ts";
import { fileIdOf, foldersOf } from "../uri.ts";

export const documentLink = async (session: Session, params: DocumentLinkParams): Promise<DocumentLink[]> => {
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot(file);
  const document = snapshot.document(file);
  if (document === undefined) return [];
  return snapshot.analysis
    .useLinks(file)
    .filter(({ target }) => foldersOf(target).length > 0)
    .map(({ span, target, tooltip }) => ({
      range: toRange(document, span),
      target: snapshot.uriOf(target),
      ...(session.facts.linkTooltips && { tooltip: shownText(tooltip) }),
    }));
};
