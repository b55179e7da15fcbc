/** `textDocument/prepareCallHierarchy`: the recipe or job at the caret, to be asked for its calls. */
import type { CallHierarchyItem, CallHierarchyPrepareParams } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toCallHierarchyItem } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const prepareCallHierarchy = async (
  session: Session,
  params: CallHierarchyPrepareParams,
): Promise<CallHierarchyItem[] | null> => {
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const items = snapshot.analysis.callItems(file, offsetOf(document, params.position));
  return items.length > 0 ? items.flatMap((item) => toCallHierarchyItem(item, snapshot) ?? []) : null;
};
