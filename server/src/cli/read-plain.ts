/**
 * Reads a plain file on disk: as far as it may be read, as many bytes as a recipe can have, and no longer than a while.
 *
 * What a file claims of itself is not believed. Files of `/proc` say that they are empty and go on for ever, so bytes are
 * counted as they come; a pipe would wait for somebody to write, so what is no plain file is not opened; and what a link
 * leads to is judged like the name it was reached by. Nothing here throws.
 */
import type { Stats } from "node:fs";
import { constants, type FileHandle, lstat, open, realpath, stat } from "node:fs/promises";
import path from "node:path";
import { decodeText, type ReadText } from "../reading/decode-text.ts";
import { type FoundKind, folderKey, type Permit, refusalOf, stepsUp } from "../reading/may-read.ts";
import { within } from "../reading/patience.ts";
import { maxBytesOf, type ReadFailure, reasonOf, tooLarge } from "../reading/reasons.ts";

/** A disk that takes longer for four megabytes has gone away. */
export const DISK_PATIENCE_MS = 10_000;

const CHUNK_BYTES = 64 * 1024;
const LEAST_BYTES = 1024;

/** For a file that the person has named. */
export const ASKED: Permit = { purpose: "asked", allows: () => true, widen: "" };

/** The bytes of a file, or why there are none, as the end of a sentence that begins with the file. */
export type ReadBytes = { readonly bytes: Uint8Array } | { readonly reason: string };

/** The text of a file, or why there is none, as the end of a sentence that begins with the file. */
export async function readPlain(
  file: string,
  permit: Permit = ASKED,
  patienceMs = DISK_PATIENCE_MS,
): Promise<ReadText> {
  const read = await readPlainBytes(file, permit, patienceMs);
  return "bytes" in read ? decodeText(read.bytes) : read;
}

/** The bytes of a file that may be read, counted as they come. */
export async function readPlainBytes(
  file: string,
  permit: Permit,
  patienceMs = DISK_PATIENCE_MS,
): Promise<ReadBytes> {
  const refused = refusalOf(file, permit);
  if (refused !== undefined) return { reason: refused };
  const attempt = { isGivenUp: false };
  const outcome = await within(patienceMs, readFound(file, permit, attempt));
  if ("value" in outcome) return outcome.value;
  attempt.isGivenUp = true;
  return { reason: "failed" in outcome ? reasonOf("other", outcome.failed) : reasonOf("late") };
}

/** Whether somebody still waits for a read. */
interface Attempt {
  isGivenUp: boolean;
}

async function readFound(file: string, permit: Permit, attempt: Attempt): Promise<ReadBytes> {
  try {
    const real = await realpath(file);
    const found = await stat(real);
    const refused = refusalOf(real, await withRealFolder(file, permit), kindOf(found));
    if (refused !== undefined) return { reason: real === file ? refused : `is a link to what ${refused}` };
    const handle = await open(real, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    try {
      // Something else may have been put there since.
      const opened = await handle.stat();
      if (!opened.isFile() || opened.ino !== found.ino || opened.dev !== found.dev) {
        return { reason: reasonOf("special") };
      }
      return await readBytes(handle, opened.size, permit, attempt);
    } finally {
      await handle.close();
    }
  } catch (error) {
    return (await isLink(file)) && leadsNowhere(error) ? { reason: reasonOf("link") } : unread(error);
  }
}

/** `said` is the size that the file claims, by which only the first buffer is made: a small file needs no large one. */
async function readBytes(
  handle: FileHandle,
  said: number,
  { purpose }: Permit,
  attempt: Attempt,
): Promise<ReadBytes> {
  const limit = maxBytesOf(purpose);
  const chunks: Uint8Array[] = [];
  let free = new Uint8Array(Math.min(CHUNK_BYTES, Math.max(LEAST_BYTES, said + 1)));
  for (let size = 0; !attempt.isGivenUp; ) {
    const { bytesRead } = await handle.read(free, 0, free.length);
    if (bytesRead === 0) return { bytes: Buffer.concat(chunks, size) };
    size += bytesRead;
    if (size > limit) return { reason: tooLarge(purpose) };
    chunks.push(free.subarray(0, bytesRead));
    free = bytesRead < free.length ? free.subarray(bytesRead) : new Uint8Array(CHUNK_BYTES);
  }
  return { reason: reasonOf("late") };
}

/** A folder that may be read may itself be reached by links; what lies in it really is in it. */
async function withRealFolder(file: string, permit: Permit): Promise<Permit> {
  const steps = permit.purpose === "asked" ? undefined : stepsUp(file, permit);
  if (steps === undefined) return permit;
  const folder = path.resolve(path.dirname(file), ...Array.from({ length: steps }, () => ".."));
  const real = folderKey(await realpath(folder));
  return { ...permit, allows: (key) => key === real || permit.allows(key) };
}

function kindOf(found: Stats): FoundKind {
  return found.isFile() ? "file" : found.isDirectory() ? "folder" : "other";
}

export async function isLink(file: string): Promise<boolean> {
  try {
    return (await lstat(file)).isSymbolicLink();
  } catch {
    return false;
  }
}

export const leadsNowhere = (error: unknown): boolean =>
  ["ENOENT", "ENOTDIR", "ELOOP"].includes(String(codeOf(error)));

export function unread(error: unknown): { readonly reason: string } {
  return { reason: reasonOf(failureOf(error), error instanceof Error ? error.message : String(error)) };
}

export function failureOf(error: unknown): ReadFailure {
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

export function codeOf(error: unknown): unknown {
  return error instanceof Error ? Reflect.get(error, "code") : undefined;
}
