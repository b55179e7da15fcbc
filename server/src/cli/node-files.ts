/**
 * The command line's files on a real disk. Every failure becomes an answer in words; nothing here throws.
 *
 * Only plain files of a sensible size are read: a pipe or a device named by a `use` line would never come to an end.
 */
import { readdir, readFile, realpath, stat } from "node:fs/promises";
import { glob } from "tinyglobby";
import type { CliFiles, PathKind } from "./io.ts";
import { decodeText } from "./read-text.ts";

/** A recipe of a whole workshop has some hundred kilobytes. */
const MAX_MEGABYTES = 4;

export const nodeFiles: CliFiles = {
  kind: kindOf,
  async read(path) {
    try {
      const found = await stat(path);
      if (found.isDirectory()) return { reason: "is a folder, not a file" };
      if (!found.isFile()) return { reason: "is not a plain file" };
      if (found.size > MAX_MEGABYTES * 1024 * 1024) {
        return { reason: `is larger than ${MAX_MEGABYTES} MB, which no recipe is` };
      }
      return decodeText(await readFile(path));
    } catch (error) {
      return { reason: reasonOf(error) };
    }
  },
  async realPath(path) {
    try {
      return await realpath(path);
    } catch {
      return path;
    }
  },
  async search(folder, pattern) {
    try {
      const found = await glob(pattern, {
        cwd: folder,
        ignore: ["**/node_modules/**"],
        dot: false,
        expandDirectories: false,
        followSymbolicLinks: false,
      });
      return found.toSorted();
    } catch {
      return [];
    }
  },
};

async function kindOf(path: string): Promise<PathKind> {
  try {
    const found = await stat(path);
    if (found.isFile()) return "file";
    if (!found.isDirectory()) return "other";
    await readdir(path);
    return "folder";
  } catch (error) {
    const code = codeOf(error);
    return code === "EACCES" || code === "EPERM" ? "forbidden" : "missing";
  }
}

function reasonOf(error: unknown): string {
  switch (codeOf(error)) {
    case "ENOENT":
    case "ENOTDIR":
      return "does not exist";
    case "EACCES":
    case "EPERM":
      return "may not be read: you have no permission for it. Ask for it, or leave the file out";
    default:
      return `cannot be read: ${error instanceof Error ? error.message : String(error)}`;
  }
}

function codeOf(error: unknown): unknown {
  return error instanceof Error ? Reflect.get(error, "code") : undefined;
}
