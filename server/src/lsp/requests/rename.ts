/**
 * `textDocument/rename`: the edits that give a thing another name, in all files of the folders, or in words why not.
 *
 * The answer waits for files that are still being read. If the text changes meanwhile, the caret may stand on another
 * name, so the client is told to ask again.
 */
import type { CancellationToken, RenameParams, WorkspaceEdit } from "vscode-languageserver";
import { shownText } from "../../escape/shown-text.ts";
import { MAX_FILES } from "../files.ts";
import { offsetOf } from "../from-lsp.ts";
import { throwIfCancelled } from "../guard.ts";
import { LSPErrorCodes, METHODS, MessageType, ResponseError } from "../protocol.ts";
import type { Session } from "../session.ts";
import { toWorkspaceEdit } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

const INCOMPLETE = `There are more than ${MAX_FILES} recipes in this folder. The new name was put into those that are read; look through the others for the old one.`;

export const rename = async (
  session: Session,
  params: RenameParams,
  token: CancellationToken,
): Promise<WorkspaceEdit | null> => {
  const file = fileIdOf(params.textDocument.uri);
  const version = session.files.versionOf(file);
  await session.files.complete();
  throwIfCancelled(token);
  if (session.files.versionOf(file) !== version) {
    throw new ResponseError(LSPErrorCodes.ContentModified, "The text has changed meanwhile.");
  }
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const renaming = snapshot.analysis.rename(file, offsetOf(document, params.position), params.newName);
  if ("refusal" in renaming)
    throw new ResponseError(LSPErrorCodes.RequestFailed, shownText(renaming.refusal));
  if (session.files.isPartial) {
    await session.connection.sendNotification(METHODS.show, {
      type: MessageType.Warning,
      message: INCOMPLETE,
    });
  }
  return toWorkspaceEdit(renaming.edits, snapshot, session.facts);
};
