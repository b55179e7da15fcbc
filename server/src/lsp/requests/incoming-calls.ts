/** `callHierarchy/incomingCalls`: the recipes and jobs that do a recipe's steps. */
import type { CallHierarchyIncomingCall, CallHierarchyIncomingCallsParams } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toCallHierarchyItem, toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const incomingCalls = async (
  session: Session,
  { item }: CallHierarchyIncomingCallsParams,
): Promise<CallHierarchyIncomingCall[] | null> => {
  await session.files.complete();
  const file = fileIdOf(item.uri);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const calls = snapshot.analysis.incomingCalls(file, offsetOf(document, item.selectionRange.start));
  return calls.flatMap((call) => {
    const from = toCallHierarchyItem(call.item, snapshot);
    const caller = snapshot.document(call.item.file);
    if (from === undefined || caller === undefined) return [];
    return { from, fromRanges: call.spans.map((span) => toRange(caller, span)) };
  });
};
