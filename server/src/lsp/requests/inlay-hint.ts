/** `textDocument/inlayHint`: figures behind the lines of recipes, of those kinds that the user wants. */
import type { InlayHint, InlayHintParams } from "vscode-languageserver";
import { spanOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toMarkup } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const inlayHint = async (session: Session, params: InlayHintParams): Promise<InlayHint[]> => {
  const kinds = session.settings.inlayHints;
  if (kinds.length === 0) return [];
  await session.files.settled();
  const file = fileIdOf(params.textDocument.uri);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return [];
  return snapshot.analysis
    .inlayHints(file, spanOf(document, params.range), kinds)
    .map(({ offset, text, markdown }) => ({
      position: document.positionAt(offset),
      label: text,
      paddingLeft: true,
      // The client names no format for these tooltips; one that shows hovers with marks shows them here, too.
      tooltip: toMarkup(markdown, session.facts.hoverMarkdown),
    }));
};
