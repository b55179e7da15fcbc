/**
 * The recipes of the open folders, also those that nobody has opened.
 *
 * The protocol has no way to list files, and a server that walks folders by itself would read what the user has hidden
 * from the editor. So the client is asked, by a request of our own, if it said that it answers it
 * (`initializationOptions.findFiles`). Without that the server knows the open files and what they use.
 */
import type { DidChangeWorkspaceFoldersParams, WorkspaceFolder } from "vscode-languageserver";
import { FIND_FILES, type FindFilesParams } from "./custom-requests.ts";
import { MAX_FILES } from "./files.ts";
import type { Session } from "./session.ts";

export const loadFolderFiles = async (session: Session): Promise<void> => {
  if (session.facts.findsFiles) await session.files.setFolderFiles(listFiles(session));
};

/** Other folders are open now. */
export const changeFolders = async (
  session: Session,
  { event }: DidChangeWorkspaceFoldersParams,
): Promise<void> => {
  const uris = (folders: readonly WorkspaceFolder[]): readonly string[] => folders.map(({ uri }) => uri);
  session.allowed.changeWorkspace(uris(event.added), uris(event.removed));
  await loadFolderFiles(session);
};

const listFiles = async (session: Session): Promise<readonly string[]> => {
  const params: FindFilesParams = { limit: MAX_FILES + 1 };
  const answer: unknown = await session.connection.sendRequest(FIND_FILES, params);
  const uris = Array.isArray(answer) ? answer.filter((uri) => typeof uri === "string") : [];
  if (uris.length > MAX_FILES) {
    session.log(
      `There are more than ${MAX_FILES} recipes in this folder; the rest is checked when it is opened.`,
    );
  }
  return uris;
};
