/**
 * The folders whose recipes the server may read: the open folders, and of a document that is open by itself its own.
 *
 * A person widens this by a setting of their own, which no workspace can make (its scope is the machine). It counts only
 * where the client says that the workspace is trusted: a stranger's folder gets to see nothing that lies elsewhere.
 */
import { t } from "../../../grammar/src/translate.ts";
import type { FileId } from "../core/place.ts";
import { folderKey, type Permit, type Purpose, refusalOf } from "../reading/may-read.ts";
import { foldersOf } from "./uri.ts";

export interface AllowedFolders {
  permit(purpose: Purpose): Permit;
  /** The folders that are open, and those that are no longer. */
  changeWorkspace(added: readonly string[], removed: readonly string[]): void;
  /** The folders that the person adds, by address or absolute path. */
  setAlso(folders: readonly string[]): void;
  /** A package that is installed for files of these folders. */
  addPackage(folder: FileId): void;
  trust(isTrusted: boolean): void;
  opened(file: FileId): void;
  closed(file: FileId): void;
  /** To be told when other files may be read than before. */
  listen(listener: () => void): void;
}

export const createAllowedFolders = (): AllowedFolders => {
  const workspace = new Set<string>();
  let also: ReadonlySet<string> = new Set();
  let isTrusted = false;
  /** How many documents of a folder are open. */
  const own = new Map<string, number>();
  const listeners: (() => void)[] = [];
  const tell = (): void => {
    for (const listener of listeners) listener();
  };
  const packages = new Set<string>();
  const allows = (key: string): boolean =>
    workspace.has(key) || own.has(key) || packages.has(key) || (isTrusted && also.has(key));
  const widen = (): string =>
    t`open a folder that holds both, or add its folder to the setting \`finishwright.use.readAlso\`${
      also.size > 0 && !isTrusted ? t`, which counts once you trust this workspace` : ""
    }`;
  const permit = (purpose: Purpose): Permit => ({
    purpose,
    allows,
    get widen() {
      return widen();
    },
  });
  const ownFolder = (file: FileId): string | undefined => {
    const [folder] = foldersOf(file);
    return folder === undefined ? undefined : folderKey(folder);
  };
  /** Without a look at the name, so that only the place counts. */
  const isWithin = (file: FileId): boolean => refusalOf(file, permit("found")) === undefined;

  return {
    permit,
    changeWorkspace(added, removed) {
      for (const folder of removed) workspace.delete(folderKey(folder) ?? "");
      for (const key of added.map(folderKey)) if (key !== undefined) workspace.add(key);
      tell();
    },
    setAlso(folders) {
      also = new Set(folders.flatMap((folder) => folderKey(folder) ?? []));
      tell();
    },
    addPackage(folder) {
      packages.add(folderKey(folder) ?? "");
    },
    trust(now) {
      isTrusted = now;
      tell();
    },
    opened(file) {
      const key = ownFolder(file);
      if (key === undefined) return;
      const wasWithin = isWithin(file);
      own.set(key, (own.get(key) ?? 0) + 1);
      if (!wasWithin) tell();
    },
    closed(file) {
      const key = ownFolder(file);
      if (key === undefined) return;
      const rest = (own.get(key) ?? 1) - 1;
      if (rest > 0) own.set(key, rest);
      else own.delete(key);
      if (!isWithin(file)) tell();
    },
    listen: (listener) => void listeners.push(listener),
  };
};
