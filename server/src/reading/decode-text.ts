/**
 * Bytes to text, strictly: a recipe is UTF-8, and a byte that is none is an error with its place, not a question mark
 * in somebody's title. A byte order mark is not part of the text, but kept beside it.
 */
import { t } from "../../../grammar/src/translate.ts";

export interface FileText {
  readonly text: string;
  /** The byte order mark that stood before the text, of which it is no part. */
  readonly mark?: string;
}

/** The text of a file, or why there is none, as the end of a sentence that begins with the file. */
export type ReadText = FileText | { readonly reason: string };

/** The text of a file's bytes, or why they are none. */
export function decodeText(bytes: Uint8Array): ReadText {
  const { text } = decodeOrNothing(bytes);
  if (text === undefined) return { reason: notUtf8(bytes) };
  return startsWithMark(bytes) ? { text, mark: "\ufeff" } : { text };
}

function startsWithMark(bytes: Uint8Array): boolean {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
}

function notUtf8(bytes: Uint8Array): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    return t`is written in UTF-16; recipes are UTF-8. Save it as UTF-8`;
  }
  const broken = firstWrongByte(bytes);
  const at = broken === bytes.length ? broken : startOfLetter(bytes, broken);
  const line = bytes.subarray(0, at).filter((byte) => byte === 0x0a).length + 1;
  const hex = bytes[at]?.toString(16).toUpperCase().padStart(2, "0");
  return hex === undefined
    ? t`is not UTF-8 text: it ends in the middle of a letter. Save it as UTF-8`
    : t`is not UTF-8 text: byte ${hex} in line ${line} is none. Save it as UTF-8`;
}

/** The byte at which the text stops being UTF-8; the length, if it is only cut off. */
function firstWrongByte(bytes: Uint8Array): number {
  let [low, high] = [0, bytes.length];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (isPrefix(bytes.subarray(0, middle))) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** A letter of several bytes is wrong from its first on, although only a later one shows it. */
function startOfLetter(bytes: Uint8Array, broken: number): number {
  let start = broken;
  while (start > Math.max(0, broken - 3) && !isWhole(bytes.subarray(0, start))) start -= 1;
  return start;
}

function isWhole(bytes: Uint8Array): boolean {
  return decodeOrNothing(bytes).text !== undefined;
}

function decodeOrNothing(bytes: Uint8Array): { readonly text?: string } {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return {};
  }
}

function isPrefix(bytes: Uint8Array): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}
