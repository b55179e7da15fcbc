/**
 * The command line's files on a real disk. Every failure becomes an answer in words; nothing here throws.
 *
 * What is read, and how much of it, is the business of `read-plain.ts`.
 */
import type { Dirent } from "node:fs";
import { readdir, realpath, stat } from "node:fs/promises";
import { decodeText, type ReadText } from "../reading/decode-text.ts";
import { isLookedInto, isNamedAsRecipe, MAX_DEPTH } from "../reading/may-read.ts";
import { MAX_FILE_BYTES, reasonOf } from "../reading/reasons.ts";
import { findPackage } from "./find-package.ts";
import type { CliFiles, PathKind, Recipes } from "./io.ts";
import { codeOf, failureOf, isLink, leadsNowhere, readPlain, readPlainBytes, unread } from "./read-plain.ts";
import { replaceText } from "./replace-text.ts";
import { makeFolder, readOwn, removeOwn, writeOwn } from "./write-own.ts";

export const nodeFiles: CliFiles = {
  kind: kindOf,
  read: readPlain,
  readCache: readOwn,
  readBytes: readPlainBytes,
  write: writeOwn,
  replace: replaceText,
  makeFolder,
  remove: removeOwn,
  async changedAt(path) {
    try {
      return (await stat(path)).mtime.toISOString();
    } catch {
      return undefined;
    }
  },
  async realPath(path) {
    try {
      return await realpath(path);
    } catch {
      return path;
    }
  },
  findPackage,
  recipes: recipesBelow,
  async search(folder, pattern) {
    try {
      const { glob } = await import("tinyglobby");
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

/** Linked folders are not followed, so that a loop of links has no end to be looked for. */
async function recipesBelow(folder: string): Promise<Recipes> {
  const files: string[] = [];
  const closed: string[] = [];
  const deep: string[] = [];
  const waiting: { readonly below: string; readonly depth: number }[] = [{ below: "", depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { below, depth } = next;
    for (const entry of await entriesOf(folder, below, closed)) {
      const name = below + entry.name;
      if (entry.isDirectory()) {
        if (!isLookedInto(entry.name)) continue;
        if (depth < MAX_DEPTH) waiting.push({ below: `${name}/`, depth: depth + 1 });
        else deep.push(name);
      } else if (
        isRecipe(entry) &&
        !(entry.isSymbolicLink() && (await kindOf(`${folder}/${name}`)) === "folder")
      ) {
        files.push(name);
      }
    }
  }
  return { files: files.toSorted(), closed: closed.toSorted(), deep: deep.toSorted() };
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
  isNamedAsRecipe(entry.name) && (entry.isFile() || entry.isSymbolicLink());
