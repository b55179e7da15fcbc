/**
 * Decides for every file that a text or a setting can name whether it is read at all.
 *
 * There is one decision for the command line, the server and the editor's extension, and it is made twice: of the name
 * as it is written, before anything is touched, and of what is found there once all links are followed. Only plain
 * files are read, under the name that their kind has, inside the folders that the person has opened or named. A name
 * that leads to another computer is never followed: the mere attempt tells that computer who is here.
 */
import { t } from "../../../grammar/src/translate.ts";

/**
 * `recipe`: named by a `use` line. `project`: the project file. `picture`: named in a `##` text. `manifest`: what a package says of itself. `found`: in a folder or by a pattern that the person has
 * named, whatever its name. `asked`: the person has named this very file, wherever it lies.
 */
export type Purpose = "recipe" | "project" | "picture" | "manifest" | "found" | "asked";

/** What stands at a place, all links followed. */
export type FoundKind = "file" | "folder" | "link" | "other";

/** Where a file lies. */
export interface Location {
  /** What two files must share to be near each other at all: `file://`, `file://host`, `vscode-vfs://github`. */
  readonly root: string;
  /** Without `.` and `..`; a drive is the first. */
  readonly segments: readonly string[];
}

export interface Permit {
  readonly purpose: Purpose;
  /** Whether files below a folder may be read. It is asked for every folder above a file, as `folderKey` writes it. */
  readonly allows: (folder: string) => boolean;
  /** What a person can do to read a file that lies elsewhere, as the end of a sentence. */
  readonly widen: string;
}

/** The project file's own name. */
export const PROJECT_FILE_NAME = "finishwright.config.json";

/** In which a package says what it is, as npm has it. */
export const MANIFEST_NAME = "package.json";

/** Linux takes no longer path, and no recipe needs one. */
export const MAX_PATH_LENGTH = 4096;

/** Folders above a file that are looked at. No workshop sorts its recipes deeper than this. */
export const MAX_DEPTH = 100;

/** Whether a folder is looked into for recipes: neither hidden nor with what is installed. */
export const isLookedInto = (name: string): boolean => name !== "node_modules" && !name.startsWith(".");

/** Whether a file that is found in a folder is a recipe by its name. */
export const isNamedAsRecipe = (name: string): boolean => name.endsWith(".finish") && !name.startsWith(".");

/**
 * Why a file is not read, as the end of a sentence that begins with the file; undefined where it may be. `kind` is what
 * was found at `name`; leave it out before anything is touched. A `name` is an address (`file:///shop/a.finish`) or an
 * absolute path.
 */
export function refusalOf(name: string, permit: Permit, kind?: FoundKind): string | undefined {
  if (name.length > MAX_PATH_LENGTH) {
    return t`has a path of more than ${MAX_PATH_LENGTH} characters, which no disk takes. Use a shorter one`;
  }
  const location = locationOf(name);
  if (location === undefined) return t`lies in no folder. Save it first`;
  if (location.root === NETWORK && permit.purpose !== "asked") {
    return t`is named by way of another computer, and such names are never followed. Copy the file into this project, and name it by its path from here`;
  }
  if (!location.segments.every(isName)) {
    return t`has a character in its path that no file name can have. Take it out`;
  }
  return (
    (permit.purpose === "asked" ? undefined : refusalOfPlace(location, permit)) ??
    (kind === undefined ? undefined : refusalOfKind(kind))
  );
}

/** Why what stands at a place is not read, as the end of a sentence. */
export function refusalOfKind(kind: FoundKind): string | undefined {
  switch (kind) {
    case "file":
      return undefined;
    case "folder":
      return t`is a folder, not a file. Name a file in it`;
    case "link":
      return t`is a link, and where it leads cannot be seen from here. Name the file that is meant`;
    case "other":
      return t`is not a plain file but a device, a pipe or a socket, and those are never read. Name a plain file`;
  }
}

function refusalOfPlace(
  { root, segments }: Location,
  { purpose, allows, widen }: Permit,
): string | undefined {
  const file = segments.at(-1) ?? "";
  if (purpose === "recipe" && !/[^/]\.finish$/iu.test(file)) {
    return t`is not a recipe: its name does not end in \`.finish\`. Name a recipe, or rename the file`;
  }
  if (purpose === "project" && file !== PROJECT_FILE_NAME) {
    return t`is not a project file: its name is not \`${PROJECT_FILE_NAME}\`. Give it that name`;
  }
  if (purpose === "picture" && !/[^/]\.(?:png|jpe?g)$/iu.test(file)) {
    return t`is not a picture: its name does not end in \`.png\` or \`.jpg\`. Name one that does`;
  }
  if (purpose === "manifest" && file !== MANIFEST_NAME) {
    return t`is not what a package says of itself: its name is not \`${MANIFEST_NAME}\``;
  }
  // A drive's letter says that a colon elsewhere means another stream of a file.
  if (isDrive(segments[0]) && segments.slice(1).some((segment) => segment.includes(":"))) {
    return t`has a colon in its name, which stands for another stream of a file. Name the file itself`;
  }
  if (segments.length - 1 > MAX_DEPTH) {
    return t`lies more than ${MAX_DEPTH} folders deep. Move it further up`;
  }
  if (stepsToAllowed({ root, segments }, allows) !== undefined) return undefined;
  return t`lies outside of the folders that may be read here. Move or copy it into one of them, or ${widen}`;
}

/** How many folders above a file's own the nearest one is that may be read; undefined where none is. */
export function stepsUp(name: string, permit: Permit): number | undefined {
  const location = locationOf(name);
  return location && stepsToAllowed(location, permit.allows);
}

function stepsToAllowed({ root, segments }: Location, allows: Permit["allows"]): number | undefined {
  for (let steps = 0; steps < segments.length; steps++) {
    if (allows(keyOf(root, segments.slice(0, segments.length - 1 - steps)))) return steps;
  }
  return undefined;
}

/** Where a file or folder lies; undefined for what has no path of folders, such as `untitled:Untitled-1`. */
export function locationOf(name: string): Location | undefined {
  const address = ADDRESS.exec(name);
  if (address === null) return isAbsolute(name) ? locationOfPath(name) : undefined;
  const [, scheme = "", authority, path = ""] = address;
  const isDisk = scheme.toLowerCase() === "file";
  const segments = path.slice(1).split("/").map(decoded);
  if (isDisk && segments[0] === "" && segments.length > 1) return { root: NETWORK, segments };
  const host = isDisk ? (authority ?? "").toLowerCase() : authority;
  const root = host === undefined ? `${scheme.toLowerCase()}:` : `${scheme.toLowerCase()}://${host}`;
  // A slash that was written in another way still parts folders on a disk.
  const steps = isDisk ? segments.flatMap((segment) => segment.split(/[\\/]/u)) : segments;
  return { root, segments: walked(steps) };
}

/** One spelling of a folder, for `Permit.allows`; undefined for what is no folder. */
export function folderKey(name: string): string | undefined {
  const location = locationOf(name);
  return location && keyOf(location.root, location.segments);
}

/** Whether a path as a person writes it (in a `use` line, in a setting) names another computer. */
export const isNetworkPath = (path: string): boolean => /^[\\/]{2}/u.test(path);

/** Neither a zero nor half of a letter. */
const isName = (segment: string): boolean => !segment.includes("\0") && !/\p{Surrogate}/u.test(segment);

/** Two letters at least, so that a drive is none. */
const ADDRESS = /^([A-Za-z][A-Za-z0-9+.-]+):(?:\/\/([^/?#]*))?(\/[^?#]*)/u;

/** Stands for every other computer that a path may name. */
const NETWORK = "network:";

const isAbsolute = (path: string): boolean => /^[\\/]|^[A-Za-z]:[\\/]/u.test(path);

function locationOfPath(path: string): Location {
  const steps = path.split(/^[A-Za-z]:[\\/]|^\\/u.test(path) ? /[\\/]/u : "/");
  // Windows writes the host of a folder that a person has opened with `\\`; `//` is how texts name one (see `use`).
  if (path.startsWith("//")) return { root: NETWORK, segments: walked(steps) };
  if (path.startsWith("\\\\")) {
    return { root: `file://${(steps[2] ?? "").toLowerCase()}`, segments: walked(steps.slice(3)) };
  }
  return { root: "file://", segments: walked(steps) };
}

function walked(steps: readonly string[]): readonly string[] {
  const result: string[] = [];
  for (const step of steps) {
    if (step === "" || step === ".") continue;
    if (step === "..") result.pop();
    else result.push(step);
  }
  return result;
}

const isDrive = (segment: string | undefined): boolean => /^[A-Za-z]:$/u.test(segment ?? "");

/** Where there are drives, capital and small letters are one. */
function keyOf(root: string, segments: readonly string[]): string {
  const path = segments.map((segment) => segment.replaceAll("/", "%2F")).join("/");
  return `${root}/${isDrive(segments[0]) ? path.toLowerCase() : path}`;
}

function decoded(segment: string): string {
  try {
    return decodeURIComponent(segment);
  } catch {
    return segment;
  }
}
