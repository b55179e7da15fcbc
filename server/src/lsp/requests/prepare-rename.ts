/** `textDocument/prepareRename`: the name that would be renamed, or in words why none can be. */
import type { PrepareRenameParams, Range } from "vscode-languageserver";
import { shownText } from "../../escape/shown-text.ts";
import { offsetOf } from "../from-lsp.ts";
import { LSPErrorCodes, ResponseError } from "../protocol.ts";
import type { Session } from "../session.ts";
import { toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const prepareRename = async (
  session: Session,
  params: PrepareRenameParams,
): Promise<{ range: Range; placeholder: string } | null> => {
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const target = snapshot.analysis.renameTarget(file, offsetOf(document, params.position));
  if ("refusal" in target) throw new ResponseError(LSPErrorCodes.RequestFailed, shownText(target.refusal));
  return { range: toRange(document, target.span), placeholder: target.name };
};
