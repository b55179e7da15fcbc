/** `textDocument/inlayHint`: figures behind the lines of recipes, of those kinds that the user wants. */
import type {
  CancellationToken,
  InlayHint,
  InlayHintLabelPart,
  InlayHintParams,
} from "vscode-languageserver";
import { onceFor } from "../../core/once.ts";
import { shownText } from "../../escape/shown-text.ts";
import { HINT_SEPARATOR } from "../../features/inlay-hints/hint-text.ts";
import type { InlayHintPart } from "../../features/types.ts";
import { spanOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toMarkup } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";
import { wholePlans } from "../whole-answers.ts";

export const inlayHint = async (
  session: Session,
  params: InlayHintParams,
  token: CancellationToken,
): Promise<InlayHint[]> => {
  const kinds = session.settings.inlayHints;
  if (kinds.length === 0) return [];
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  await wholePlans(session, file, session.facts.refreshesInlayHints, token);
  const snapshot = session.files.snapshot(file);
  const document = snapshot.document(file);
  if (document === undefined) return [];
  return snapshot.analysis
    .inlayHints(file, spanOf(document, params.range), kinds)
    .map(({ offset, parts }) => ({
      position: document.positionAt(offset),
      label: (session.facts.hoverMarkdown ? labelWithMarks : plainLabel)(parts),
      paddingLeft: true,
    }));
};

/** Each with its own reason. The client names no format for these; one that shows hovers with marks shows them here, too. */
const labelBy = (hoverMarkdown: boolean) =>
  onceFor((parts: readonly InlayHintPart[]): InlayHintLabelPart[] =>
    parts.flatMap(({ text, markdown }, i) => [
      ...(i === 0 ? [] : [{ value: HINT_SEPARATOR }]),
      { value: shownText(text), tooltip: toMarkup(markdown, hoverMarkdown) },
    ]),
  );

/** Hints are kept while nothing of them changes, and so are their labels. */
const [labelWithMarks, plainLabel] = [labelBy(true), labelBy(false)];
