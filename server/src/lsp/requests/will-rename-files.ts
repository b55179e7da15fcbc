/**
 * `workspace/willRenameFiles`: edits of `use` lines for recipes that are about to be renamed or moved, by themselves or
 * with a folder. The edits are for the files where they still are.
 */
import type { RenameFilesParams, WorkspaceEdit } from "vscode-languageserver";
import type { FileId } from "../../core/place.ts";
import type { Session } from "../session.ts";
import { toWorkspaceEdit } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const willRenameFiles = async (
  session: Session,
  params: RenameFilesParams,
): Promise<WorkspaceEdit | null> => {
  await session.files.complete();
  const moves = params.files.map(({ oldUri, newUri }) => ({
    from: withoutSlash(fileIdOf(oldUri)),
    to: withoutSlash(fileIdOf(newUri)),
  }));
  const movedTo = (file: FileId): FileId => {
    const move = moves.find(({ from }) => file === from || file.startsWith(`${from}/`));
    return move === undefined ? file : move.to + file.slice(move.from.length);
  };
  const snapshot = session.files.snapshot();
  const edits = snapshot.analysis.editsForMoves(movedTo);
  return edits.length > 0 ? toWorkspaceEdit(edits, snapshot, session.facts) : null;
};

const withoutSlash = (file: FileId): FileId => file.replace(/\/$/, "");
