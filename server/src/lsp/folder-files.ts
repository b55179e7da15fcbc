/**
 * The recipes of the open folders, also those that nobody has opened.
 *
 * The protocol has no way to list files. A client that says so (`initializationOptions.findFiles`) is asked by a request of our
 * own, since it knows what the person hides from it; for any other the server looks into the folders by itself, where it has
 * a disk. Without either it knows the open files and what they use.
 */
import type { DidChangeWorkspaceFoldersParams, WorkspaceFolder } from "vscode-languageserver";
import { t } from "../../../grammar/src/translate.ts";
import { FIND_FILES, type FindFilesParams } from "./custom-requests.ts";
import { MAX_FILES } from "./files.ts";
import { showProgress } from "./progress.ts";
import type { Session } from "./session.ts";

/** `ready` is waited for before anything is listed. */
export const loadFolderFiles = async (session: Session, ready?: Promise<unknown>): Promise<void> => {
  const isListed = session.facts.findsFiles || session.host.listRecipes !== undefined;
  if (!isListed) return;
  const loaded = session.files.setFolderFiles(listFiles(session, ready));
  if (session.facts.showsProgress)
    showProgress(session.connection, t`Reading the recipes of the folder`, loaded);
  await loaded;
};

/** Other folders are open now. */
export const changeFolders = async (
  session: Session,
  { event }: DidChangeWorkspaceFoldersParams,
): Promise<void> => {
  const uris = (folders: readonly WorkspaceFolder[]): readonly string[] => folders.map(({ uri }) => uri);
  const [added, removed] = [uris(event.added), new Set(uris(event.removed))];
  session.openFolders = [...session.openFolders.filter((uri) => !removed.has(uri)), ...added];
  session.allowed.changeWorkspace(added, [...removed]);
  await loadFolderFiles(session);
};

const listFiles = async (session: Session, ready?: Promise<unknown>): Promise<readonly string[]> => {
  await ready?.catch(() => {});
  const listing = { limit: MAX_FILES + 1, exclude: session.settings.exclude };
  const uris = session.facts.findsFiles
    ? await askClient(session, listing)
    : await lookBelow(session, listing);
  if (uris.length > MAX_FILES) {
    session.log(
      `There are more than ${MAX_FILES} recipes in this folder; the rest is checked when it is opened.`,
    );
  }
  return uris;
};

const askClient = async (session: Session, listing: FindFilesParams): Promise<readonly string[]> => {
  const answer: unknown = await session.connection.sendRequest(FIND_FILES, listing);
  return Array.isArray(answer) ? answer.filter((uri) => typeof uri === "string") : [];
};

const lookBelow = async (
  { host, openFolders }: Session,
  listing: FindFilesParams,
): Promise<readonly string[]> => {
  const found = await Promise.all(
    openFolders.map(async (folder) => (await host.listRecipes?.(folder, listing)) ?? []),
  );
  return [...new Set(found.flat())];
};
