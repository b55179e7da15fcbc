/** Where `use` lines lead, those into installed packages among them, and that these may be read. */
import path from "node:path";
import { packagePath } from "../core/model/package-path.ts";
import type { Resolve } from "../features/moved-files.ts";
import { folderKey, isNetworkPath } from "../reading/may-read.ts";
import type { CliFiles } from "./io.ts";

export interface Packages {
  readonly resolve: Resolve;
  /** Whether a folder is that of a package that was found, as `Permit.allows` asks. */
  readonly allows: (key: string) => boolean;
  /** Whether a file lies in a package that was found. */
  readonly holds: (file: string) => boolean;
  /** The folder of a package for files of a folder; undefined where there is none. */
  find(from: string, name: string): string | undefined;
  /** What was looked for, and where it was found; null for what was not. */
  lookups(): readonly (readonly [from: string, name: string, folder: string | null])[];
}

/** For one run of a command, during which packages stay where they are. */
export function createPackages({ findPackage }: Pick<CliFiles, "findPackage">): Packages {
  const folders = new Set<string>();
  const keys = new Set<string | undefined>();
  const known = new Map<string, readonly [from: string, name: string, folder: string | null]>();
  const found = (from: string, name: string): string | undefined => {
    const key = `${from}\0${name}`;
    if (!known.has(key)) known.set(key, [from, name, findPackage(from, name) ?? null]);
    const folder = known.get(key)?.[2] ?? undefined;
    if (folder !== undefined && !folders.has(folder)) {
      folders.add(folder);
      keys.add(folderKey(folder));
    }
    return folder;
  };
  return {
    resolve(from, used) {
      const asked = packagePath(used);
      if (asked === undefined) return resolveUse(from, used);
      const { name, file } = asked;
      const own = path.dirname(from);
      return path.join(found(own, name) ?? path.join(own, "node_modules", name), file);
    },
    find: found,
    lookups: () => [...known.values()],
    allows: (key) => keys.has(key),
    holds: (file) => [...folders].some((folder) => file.startsWith(folder + path.sep)),
  };
}

/**
 * The file that `use "path"` means in the file `from`, by its absolute path. Backslashes are taken for slashes. A name
 * that leads to another computer stays one, and is not read.
 */
export function resolveUse(from: string, used: string): string {
  const slashed = used.replaceAll("\\", "/");
  return isNetworkPath(slashed) ? slashed : path.resolve(path.dirname(from), slashed);
}
