/**
 * Why a file cannot be read, in the words that a user sees: the same for a file on disk and for one that an editor
 * hands out, in a finding and on the command line.
 */
import { t } from "../../../grammar/src/translate.ts";
import { type Purpose, refusalOfKind } from "./may-read.ts";

/** What stands in the way. `link` leads nowhere or back to itself; `linked` is a link of a folder
 * that does not show where it leads; `special` is a pipe or a device; `silent` an editor, `late` a disk that does not answer. */
export type ReadFailure =
  | "missing"
  | "link"
  | "linked"
  | "folder"
  | "special"
  | "too-large"
  | "forbidden"
  | "unavailable"
  | "silent"
  | "late"
  | "other";

const MAX_MEGABYTES = 4;

/** A recipe of a whole workshop has some hundred kilobytes. */
export const MAX_FILE_BYTES = MAX_MEGABYTES * 1024 * 1024;

const MAX_PROJECT_KILOBYTES = 64;

/** A project file that names every rule has five kilobytes. */
export const MAX_PROJECT_BYTES = MAX_PROJECT_KILOBYTES * 1024;

/** How many bytes of a file are read; one that has more is not. */
export const maxBytesOf = (purpose: Purpose): number =>
  purpose === "project" || purpose === "manifest" ? MAX_PROJECT_BYTES : MAX_FILE_BYTES;

/** Why nothing of a file is read that has more bytes than `maxBytesOf` its purpose. */
export function tooLarge(purpose: Purpose): string {
  switch (purpose) {
    case "project":
      return t`is larger than ${MAX_PROJECT_KILOBYTES} kB, which no project file is. Take out what is none of its entries`;
    case "picture":
      return t`is larger than ${MAX_MEGABYTES} MB. Make it smaller`;
    default:
      return t`is larger than ${MAX_MEGABYTES} MB, which no recipe is. Split it, or name another file`;
  }
}

/** Whether a text has more UTF-8 bytes than a file may have. */
export function isTooLarge(text: string): boolean {
  if (text.length > MAX_FILE_BYTES) return true;
  // No letter of UTF-16 takes more than three bytes.
  return text.length * 3 > MAX_FILE_BYTES && new TextEncoder().encode(text).length > MAX_FILE_BYTES;
}

/** Brackets, commas, line ends and the like: a recipe has one in ten letters, and each takes hundreds of bytes when read. */
const MOST_SIGNS = 1_000_000;

/** Why a text is not read that has more signs than any recipe; undefined where it has not. */
export function tooManySigns(text: string): string | undefined {
  if (text.length <= MOST_SIGNS) return undefined;
  let signs = 0;
  let last = "";
  for (const character of text) {
    // The same sign that means nothing, over and over, is one token.
    if (!isPlain(character) && (character !== last || SIGNS.has(character))) signs += 1;
    last = character;
  }
  return signs > MOST_SIGNS
    ? t`has more than a million signs that are neither letters, digits nor blanks, which no recipe has. Split it`
    : undefined;
}

const PLAIN = /[\p{L}\p{M}\p{N}_ \t]/u;
/** Of ASCII, which most of a text is, it is looked up. */
const PLAIN_ASCII = Array.from({ length: 128 }, (_, code) => PLAIN.test(String.fromCharCode(code)));

const isPlain = (character: string): boolean => PLAIN_ASCII[character.charCodeAt(0)] ?? PLAIN.test(character);
const SIGNS: ReadonlySet<string> = new Set('{}(),:=."#\n\r');

/** The end of a sentence that begins with the file. `detail` is what the system said, for what has no words here. */
export function reasonOf(failure: ReadFailure, detail = t`unknown error`): string {
  switch (failure) {
    case "missing":
      return t`does not exist`;
    case "link":
      return t`is a broken link. Fix it, or give the target file`;
    case "linked":
      return refusalOfKind("link") ?? "";
    case "folder":
      return refusalOfKind("folder") ?? "";
    case "special":
      return refusalOfKind("other") ?? "";
    case "too-large":
      return tooLarge("recipe");
    case "forbidden":
      return t`may not be read: you have no permission for it. Ask for it, or leave the file out`;
    case "unavailable":
      return t`cannot be reached at the moment; saving this file retries`;
    case "silent":
      return t`could not be loaded from the editor in time; saving this file retries`;
    case "late":
      return t`does not respond, so reading it was abandoned. Check its disk or network folder; saving this file retries`;
    case "other":
      return t`cannot be read: ${detail}`;
  }
}

const SHOWN = 120;

/** A path as a sentence names it: both ends of one that is too long to be read. */
export const shortened = (path: string): string =>
  path.length <= SHOWN ? path : `${path.slice(0, SHOWN / 2)} … ${path.slice(-SHOWN / 2)}`;
