/**
 * Answers what the server asks about files: which recipes the open folders hold, and the bytes of a file that it cannot
 * read by itself. Whatever stands in the way is an answer, not an exception.
 */
import ignore from "ignore";
import { type Disposable, FileSystemError, FileType, Uri, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  FIND_FILES,
  type FindFilesParams,
  READ_FILE,
  type ReadFileParams,
  type ReadFileResult,
} from "../../server/src/lsp/custom-requests.ts";
import { listedText } from "./timings.ts";

/** What the client says of itself because of this module. */
export const ANSWERED = { findFiles: true, readFile: true } as const;

export const answerAboutFiles = (client: BaseLanguageClient): Disposable[] => [
  client.onRequest(FIND_FILES, async ({ limit, exclude }: FindFilesParams): Promise<readonly string[]> => {
    const began = performance.now();
    const found = withoutExcluded(await findRecipes(limit), exclude);
    client.info(listedText(found.length, performance.now() - began));
    return found.map((uri) => client.code2ProtocolConverter.asUri(uri));
  }),
  client.onRequest(READ_FILE, ({ uri, maxBytes }: ReadFileParams) =>
    readFile(client.protocol2CodeConverter.asUri(uri), maxBytes),
  ),
];

/** The recipes of the open folders, leaving out what the user hides from the explorer and from search. */
const findRecipes = (limit: number): Thenable<readonly Uri[]> =>
  workspace.findFiles("**/*.finish", undefined, limit);

/** By patterns that count from the folder that a recipe lies in. */
const withoutExcluded = (found: readonly Uri[], exclude: readonly string[] = []): readonly Uri[] => {
  if (exclude.length === 0) return found;
  const excluding = ignore().add([...exclude]);
  return found.filter((uri) => {
    const path = workspace.asRelativePath(uri, false);
    return !ignore.isPathValid(path) || !excluding.ignores(path);
  });
};

/**
 * The server has decided by name and place that the file may be read before it asks; what really is there is seen here.
 * The size is asked for first, since a large file of a far-away folder would have to be fetched whole.
 */
const readFile = async (uri: Uri, maxBytes: number): Promise<ReadFileResult> => {
  try {
    const { type, size } = await workspace.fs.stat(uri);
    if (type & FileType.SymbolicLink || (await isBehindLink(uri))) return { failure: "linked" };
    if (type & FileType.Directory) return { failure: "folder" };
    if (type !== FileType.File) return { failure: "special" };
    if (size > maxBytes) return { failure: "too-large" };
    const bytes = await workspace.fs.readFile(uri);
    return bytes.length > maxBytes ? { failure: "too-large" } : { base64: toBase64(bytes) };
  } catch (error) {
    return failureOf(error);
  }
};

/** Whether a folder above a file is a link, up to the folder that the person has opened: it may lead out of that. */
const isBehindLink = async (uri: Uri): Promise<boolean> => {
  const opened = workspace.getWorkspaceFolder(uri)?.uri.path;
  if (opened === undefined) return false;
  for (let at = Uri.joinPath(uri, ".."); at.path.length > opened.length; at = Uri.joinPath(at, "..")) {
    if ((await workspace.fs.stat(at)).type & FileType.SymbolicLink) return true;
  }
  return false;
};

const failureOf = (error: unknown): ReadFileResult => {
  const detail = error instanceof Error ? error.message : String(error);
  switch (error instanceof FileSystemError ? error.code : "") {
    case "FileNotFound":
    case "FileNotADirectory":
      return { failure: "missing" };
    case "FileIsADirectory":
      return { failure: "folder" };
    case "NoPermissions":
      return { failure: "forbidden" };
    case "Unavailable":
      return { failure: "unavailable" };
    default:
      return { failure: "other", detail };
  }
};

/** A call takes only so many arguments. */
const CHUNK = 0x8000;

const toBase64 = (bytes: Uint8Array): string => {
  let letters = "";
  for (let start = 0; start < bytes.length; start += CHUNK) {
    letters += String.fromCharCode(...bytes.subarray(start, start + CHUNK));
  }
  return btoa(letters);
};
