/** `textDocument/completion`: what may stand at the caret. The list is whole; the client narrows it while one types. */
import type { CompletionList, CompletionParams } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toCompletionItem } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const completion = async (
  session: Session,
  params: CompletionParams,
): Promise<CompletionList | null> => {
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const entries = snapshot.analysis.completions(file, offsetOf(document, params.position));
  return {
    isIncomplete: false,
    items: entries.map((entry) => toCompletionItem(entry, document, session.facts)),
  };
};
