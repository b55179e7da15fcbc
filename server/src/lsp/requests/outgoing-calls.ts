/** `callHierarchy/outgoingCalls`: the recipes whose steps a recipe or job does. */
import type { CallHierarchyOutgoingCall, CallHierarchyOutgoingCallsParams } from "vscode-languageserver";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toCallHierarchyItem, toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const outgoingCalls = async (
  session: Session,
  { item }: CallHierarchyOutgoingCallsParams,
): Promise<CallHierarchyOutgoingCall[] | null> => {
  await session.files.complete();
  const file = fileIdOf(item.uri);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const calls = snapshot.analysis.outgoingCalls(file, offsetOf(document, item.selectionRange.start));
  return calls.flatMap((call) => {
    const to = toCallHierarchyItem(call.item, snapshot);
    return to === undefined ? [] : { to, fromRanges: call.spans.map((span) => toRange(document, span)) };
  });
};
