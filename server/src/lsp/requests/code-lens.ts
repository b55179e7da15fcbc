/** `textDocument/codeLens`: what every job comes to, above it. The lens is to be read; nothing happens on a click. */
import type { CodeLens, CodeLensParams } from "vscode-languageserver";
import type { Session } from "../session.ts";
import { isShown, SEVERITIES } from "../settings.ts";
import { toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const codeLens = async (session: Session, params: CodeLensParams): Promise<CodeLens[]> => {
  const { settings } = session;
  if (!settings.jobLenses) return [];
  await session.files.settled();
  const file = fileIdOf(params.textDocument.uri);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return [];
  const levels = SEVERITIES.filter((severity) => isShown(severity, settings));
  return snapshot.analysis.jobLenses(file, levels).map(({ span, title }) => ({
    range: toRange(document, span),
    command: { title, command: "" },
  }));
};
