/**
 * Finds the folder of an installed package, as Node would: in `node_modules` of a folder, or of one above it.
 *
 * No further up than the root of the repository, or without one than the folder of the nearest `package.json` that is no
 * package's own, and never by a link that leads out of it. Asked while names are resolved, hence at once and not later.
 */
import { existsSync, realpathSync, statSync } from "node:fs";
import path from "node:path";

/** The absolute path; undefined where there is none. Both are absolute paths; `name` is one of `packagePath`. */
export function findPackage(folder: string, name: string): string | undefined {
  const root = rootOf(folder);
  for (let at = folder; ; at = path.dirname(at)) {
    const found = path.join(at, "node_modules", ...name.split("/"));
    if (isFolder(found)) return isBelow(realOf(root), realOf(found)) ? found : undefined;
    if (at === root || at === path.dirname(at)) return undefined;
  }
}

function rootOf(folder: string): string {
  let manifest: string | undefined;
  for (let at = folder; ; at = path.dirname(at)) {
    if (existsSync(path.join(at, ".git"))) return at;
    const isInPackages = at.split(path.sep).includes("node_modules");
    if (!isInPackages && existsSync(path.join(at, "package.json"))) manifest ??= at;
    if (at === path.dirname(at)) return manifest ?? folder;
  }
}

const isBelow = (root: string, folder: string): boolean => {
  const way = path.relative(root, folder);
  return way !== ".." && !way.startsWith(`..${path.sep}`) && !path.isAbsolute(way);
};

function realOf(folder: string): string {
  try {
    return realpathSync(folder);
  } catch {
    return folder;
  }
}

function isFolder(place: string): boolean {
  try {
    return statSync(place).isDirectory();
  } catch {
    return false;
  }
}
