/**
 * The command line's files on a real disk. Every failure becomes an answer in words; nothing here throws.
 *
 * Only plain files of a sensible size are read: a pipe or a device named by a `use` line would never come to an end.
 */
import type { Dirent } from "node:fs";
import { lstat, readdir, readFile, realpath, stat } from "node:fs/promises";
import { glob } from "tinyglobby";
import { decodeText, type ReadText } from "../reading/decode-text.ts";
import { MAX_FILE_BYTES, type ReadFailure, reasonOf } from "../reading/reasons.ts";
import type { CliFiles, PathKind, Recipes } from "./io.ts";
import { replaceText } from "./replace-text.ts";
import { writeOwn } from "./write-own.ts";

export const nodeFiles: CliFiles = {
  kind: kindOf,
  async read(path) {
    try {
      const found = await stat(path);
      if (found.isDirectory()) return { reason: reasonOf("folder") };
      if (!found.isFile()) return { reason: reasonOf("special") };
      if (found.size > MAX_FILE_BYTES) return { reason: reasonOf("too-large") };
      return decodeText(await readFile(path));
    } catch (error) {
      return (await isLink(path)) && leadsNowhere(error) ? { reason: reasonOf("link") } : unread(error);
    }
  },
  write: writeOwn,
  replace: replaceText,
  async realPath(path) {
    try {
      return await realpath(path);
    } catch {
      return path;
    }
  },
  recipes: recipesBelow,
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

/** The text of a stream, such as standard input, to its end. */
export async function readStream(stream: AsyncIterable<Uint8Array>): Promise<ReadText> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  try {
    for await (const chunk of stream) {
      size += chunk.length;
      if (size > MAX_FILE_BYTES) return { reason: reasonOf("too-large") };
      chunks.push(chunk);
    }
    return decodeText(Buffer.concat(chunks));
  } catch (error) {
    return unread(error);
  }
}

async function kindOf(path: string): Promise<PathKind> {
  try {
    const found = await stat(path);
    if (found.isFile()) return "file";
    if (!found.isDirectory()) return "other";
    await readdir(path);
    return "folder";
  } catch (error) {
    if ((await isLink(path)) && leadsNowhere(error)) return "link";
    const code = codeOf(error);
    return code === "EACCES" || code === "EPERM" ? "forbidden" : "missing";
  }
}

async function recipesBelow(folder: string): Promise<Recipes> {
  const files: string[] = [];
  const closed: string[] = [];
  const look = async (below: string): Promise<void> => {
    for (const entry of await entriesOf(folder, below, closed)) {
      const name = below + entry.name;
      if (entry.isDirectory()) {
        if (entry.name !== "node_modules" && !entry.name.startsWith(".")) await look(`${name}/`);
      } else if (
        isRecipe(entry) &&
        !(entry.isSymbolicLink() && (await kindOf(`${folder}/${name}`)) === "folder")
      ) {
        files.push(name);
      }
    }
  };
  await look("");
  return { files: files.toSorted(), closed: closed.toSorted() };
}

async function entriesOf(folder: string, below: string, closed: string[]): Promise<readonly Dirent[]> {
  try {
    return await readdir(`${folder}/${below}`, { withFileTypes: true });
  } catch (error) {
    // A folder that went away in the meantime has no recipes.
    if (failureOf(error) === "forbidden") closed.push(below.replace(/\/$/u, ""));
    return [];
  }
}

const isRecipe = (entry: Dirent): boolean =>
  entry.name.endsWith(".finish") && !entry.name.startsWith(".") && (entry.isFile() || entry.isSymbolicLink());

async function isLink(path: string): Promise<boolean> {
  try {
    return (await lstat(path)).isSymbolicLink();
  } catch {
    return false;
  }
}

const leadsNowhere = (error: unknown): boolean =>
  ["ENOENT", "ENOTDIR", "ELOOP"].includes(String(codeOf(error)));

function unread(error: unknown): ReadText {
  return { reason: reasonOf(failureOf(error), error instanceof Error ? error.message : String(error)) };
}

function failureOf(error: unknown): ReadFailure {
  switch (codeOf(error)) {
    case "ENOENT":
    case "ENOTDIR":
      return "missing";
    case "EACCES":
    case "EPERM":
      return "forbidden";
    default:
      return "other";
  }
}

function codeOf(error: unknown): unknown {
  return error instanceof Error ? Reflect.get(error, "code") : undefined;
}
