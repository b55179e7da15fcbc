/**
 * Writes a file that a command makes: a new one, or over one that it made before.
 *
 * What somebody else has made, or has changed since, is left alone, and so is everything that is no plain file. A link
 * stays a link, and at no moment is there half a file (see `replace-text.ts`).
 */
import { lstat, mkdir, readFile, rm, stat } from "node:fs/promises";
import path from "node:path";
import type { IsOwn, WriteOutcome } from "./io.ts";
import { createFile, replaceBytes, writeReasonOf } from "./replace-text.ts";

/** Larger than anything that a command writes, so that a file of this size is somebody else's. */
const MOST_BYTES = 64 * 1024 * 1024;

export async function writeOwn(file: string, text: string, isOwn: IsOwn): Promise<WriteOutcome> {
  try {
    const there = await whatIsAt(file);
    if (there === "nothing") {
      await createFile(file, text);
      return undefined;
    }
    if (typeof there === "string") return { reason: there };
    const read = there.size > MOST_BYTES ? undefined : await readFile(file);
    const verdict = isOwn(read?.toString() ?? "\0");
    if (verdict !== true) return { reason: verdict };
    if (read === undefined)
      return { reason: "is too large to be replaced safely. Remove it, or give another name" };
    return (await replaceBytes(file, read, text)) ? undefined : { reason: CHANGED };
  } catch (error) {
    return { reason: codeOf(error) === "EEXIST" ? CHANGED : writeReasonOf(error) };
  }
}

/** The text of a plain file that is not too large for one of these; undefined where there is none. */
export async function readOwn(file: string): Promise<string | undefined> {
  try {
    const found = await stat(file);
    return found.isFile() && found.size <= MOST_BYTES ? (await readFile(file)).toString() : undefined;
  } catch {
    return undefined;
  }
}

export async function makeFolder(folder: string): Promise<WriteOutcome> {
  try {
    await mkdir(folder, { recursive: true });
    return undefined;
  } catch (error) {
    const code = codeOf(error);
    if (code === "EEXIST" || code === "ENOTDIR")
      return { reason: "cannot be made: a file is in its place. Choose another place" };
    return { reason: writeReasonOf(error) };
  }
}

/** Nothing where there is none any more. A link is somebody else's. */
export async function removeOwn(file: string, isOwn: IsOwn): Promise<WriteOutcome> {
  try {
    const found = await lstat(file);
    if (!found.isFile() || found.size > MOST_BYTES)
      return { reason: "is not a plain file, so it is left as it is" };
    const verdict = isOwn((await readFile(file)).toString());
    if (verdict !== true) return { reason: verdict };
    await rm(file);
    return undefined;
  } catch (error) {
    return codeOf(error) === "ENOENT" ? undefined : { reason: writeReasonOf(error) };
  }
}

const CHANGED = "has changed meanwhile and is left as it is. Try again";

/** The plain file there, `nothing` where one can be made, or why none can be. */
async function whatIsAt(file: string): Promise<{ readonly size: number } | string> {
  try {
    const found = await stat(file);
    if (found.isDirectory()) return "is a folder, not a file. Give the name of a file in it";
    if (found.isFile()) return found;
    return "is neither a file nor a folder, and nothing can be put in its place. Give another name";
  } catch (error) {
    const code = codeOf(error);
    if (code === "ENOENT" || code === "ENOTDIR" || code === "ELOOP") return whyMissing(file);
    throw error;
  }
}

async function whyMissing(file: string): Promise<string> {
  if (await isThere(file)) return "is a broken link. Remove it, or give another name";
  const folder = path.dirname(file);
  try {
    if ((await stat(folder)).isDirectory()) return "nothing";
    return `cannot be written: \`${folder}\` is not a folder. Choose another place`;
  } catch {
    return `cannot be written: there is no folder \`${folder}\`. Make it first, or give another place`;
  }
}

const isThere = async (file: string): Promise<boolean> => {
  try {
    await lstat(file);
    return true;
  } catch {
    return false;
  }
};

const codeOf = (error: unknown): unknown => (error instanceof Error ? Reflect.get(error, "code") : undefined);
