/**
 * What was different in a revision of a repository, as far as recipes go, asked of the editor's own Git. Only what that
 * extension answers is used: this runs no program.
 */
import type { Uri } from "vscode";
import type { ChangedParams } from "../../server/src/lsp/custom-requests.ts";

/** As much of the Git extension of VS Code as is used here: its API is a stable one, and has no package of types. */
export interface GitRepository {
  readonly rootUri: Uri;
  readonly state: GitState;
  /** Files of the working tree that differ from a revision, those that Git follows. */
  diffWith(revision: string): Promise<readonly GitChange[]>;
  /** A file's text in a revision; rejects where it has none. */
  show(revision: string, path: string): Promise<string>;
}

export interface GitState {
  readonly workingTreeChanges: readonly GitChange[];
  readonly indexChanges: readonly GitChange[];
  /** Of files that Git does not follow; they stand among the first where the editor is set so. */
  readonly untrackedChanges?: readonly GitChange[];
}

export interface GitChange {
  readonly uri: Uri;
  readonly originalUri: Uri;
  readonly renameUri?: Uri | undefined;
}

/** `unsaved` are addresses of files that the editor holds in another state than the disk. */
export const earlierTexts = async (
  repository: GitRepository,
  revision: string,
  unsaved: readonly Uri[],
): Promise<Omit<ChangedParams, "folder">> => {
  const { state } = repository;
  const changes = await repository.diffWith(revision);
  const moved = changes.flatMap(({ uri, originalUri, renameUri }) => {
    const to = renameUri ?? uri;
    return to.path === originalUri.path ? [] : [{ from: originalUri, to }];
  });
  const others = [...state.workingTreeChanges, ...state.indexChanges, ...(state.untrackedChanges ?? [])];
  const named = [...changes, ...others].flatMap((change) => [
    change.originalUri,
    change.renameUri ?? change.uri,
  ]);
  const files = new Map([...named, ...unsaved].filter(isRecipe).map((uri) => [uri.toString(), uri]));
  const before: { readonly uri: string; readonly text: string | null }[] = [];
  for (const [name, uri] of files)
    before.push({ uri: name, text: await repository.show(revision, uri.fsPath).catch(() => null) });
  return {
    before,
    renamed: moved
      .filter(({ from, to }) => isRecipe(from) && isRecipe(to))
      .map(({ from, to }) => ({ from: from.toString(), to: to.toString() })),
  };
};

const isRecipe = ({ path }: Uri): boolean => /\.finish$/iu.test(path);
