/**
 * File names as the server compares them.
 *
 * Clients write the same file in different ways (`file:///c%3A/x`, `file:///C:/x`, `a(b)` or `a%28b%29`), and a
 * `use` line writes a path. All of them become one spelling here, the `FileId`; what is sent back to a client is the
 * client's own spelling where it is known (see `files.ts`).
 */
import type { FileId } from "../core/place.ts";
import { isNetworkPath, MAX_DEPTH } from "../reading/may-read.ts";

interface Parts {
  readonly scheme: string;
  /** Absent where the path follows the scheme at once (`memfs:/shop/a.finish`). */
  readonly authority: string | undefined;
  readonly segments: readonly string[];
  readonly tail: string;
}

/** The one spelling of a file's URI. A URI without a path of folders (`untitled:Untitled-1`) stays as it is. */
export const fileIdOf = (uri: string): FileId => {
  const parts = parse(uri);
  return parts === undefined ? uri : write(parts);
};

/**
 * The file that `use "path"` means in the file `from`. Backslashes are taken for slashes. What leads to another computer
 * (`//host/…`) keeps that form, and is not read.
 */
export const resolveUse = (from: FileId, path: string): FileId => {
  const base = parse(from);
  const steps = path.replaceAll("\\", "/").split("/");
  // It stays a name of another kind than those of all files that are read, also of those on that very computer.
  if (isNetworkPath(path)) return `file:///${steps.slice(1).map(encode).join("/")}`;
  if (base === undefined) return `${from}/${steps.map(encode).join("/")}`;
  const absolute = path.startsWith("/") || /^[A-Za-z]:[\\/]/.test(path);
  return write({ ...base, segments: walk(absolute ? [] : base.segments.slice(0, -1), steps), tail: "" });
};

/** The folders that a file lies in, from the nearest, the first hundred. A file without a path of folders lies in none. */
export const foldersOf = (file: FileId): readonly FileId[] => {
  const parts = parse(file);
  if (parts === undefined) return [];
  return parts.segments.slice(0, MAX_DEPTH).map((_, index) => {
    const segments = parts.segments.slice(0, parts.segments.length - 1 - index);
    return write({ ...parts, segments, tail: "" });
  });
};

/** A file in a folder. */
export const fileIn = (folder: FileId, name: string): FileId =>
  resolveUse(`${folder.replace(/\/$/, "")}/-`, name);

/** The name of a file without its folders, as people say it. */
export const fileNameOf = (file: FileId): string => decode(file.slice(file.lastIndexOf("/") + 1));

export const isDiskFile = (uri: string): boolean => uri.startsWith("file:");

/** Whether a text lies in no folder yet, neither on a disk nor anywhere else. */
export const isUnsaved = (uri: string): boolean => uri.startsWith("untitled:") || parse(uri) === undefined;

const PATTERN = /^([A-Za-z][A-Za-z0-9+.-]*):(?:\/\/([^/?#]*))?(\/[^?#]*)([?#].*)?$/s;

const parse = (uri: string): Parts | undefined => {
  const match = PATTERN.exec(uri);
  if (match === null) return undefined;
  const [, anyScheme = "", authority, path = "", tail = ""] = match;
  const segments = path.slice(1).split("/").map(decode);
  const scheme = anyScheme.toLowerCase();
  // A disk's server has one name however it is written; what others make of theirs is their own affair.
  return {
    scheme,
    authority: scheme === "file" ? (authority ?? "").toLowerCase() : authority,
    segments,
    tail,
  };
};

const write = ({ scheme, authority, segments, tail }: Parts): string => {
  const [first = "", ...rest] = segments;
  const drive = /^[A-Za-z]:$/.test(first) ? first.toLowerCase() : first;
  const top = authority === undefined ? `${scheme}:/` : `${scheme}://${authority}/`;
  return `${top}${[drive, ...rest].map(encode).join("/")}${tail}`;
};

/** Follows `steps` from a folder; going above the top stays at the top. */
const walk = (folder: readonly string[], steps: readonly string[]): readonly string[] => {
  const result = [...folder];
  for (const step of steps) {
    if (step === "" || step === ".") continue;
    if (step === "..") result.pop();
    else result.push(step);
  }
  return result;
};

/** A segment with a stray `%` is taken as it is written. */
const decode = (segment: string): string => {
  try {
    return decodeURIComponent(segment);
  } catch {
    return segment;
  }
};

/** Half of a letter, which a text may hold, has no spelling in an address; it stays as it is. */
const encode = (segment: string): string => segment.split(LONE_SURROGATE).map(encodePart).join("");

const LONE_SURROGATE = /(\p{Surrogate})/u;

const encodePart = (part: string): string => (LONE_SURROGATE.test(part) ? part : encodeURIComponent(part));
