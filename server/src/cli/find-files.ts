/**
 * From the paths of the command line to files: files as they are, folders searched for `*.finish`, patterns expanded.
 *
 * A file is taken once, however often and under whatever names it is given. Nothing is passed over in silence: a path
 * that leads to no recipe is a problem with what was expected and what to do, and the run ends with status 2.
 */
import path from "node:path";
import { MAX_DEPTH } from "../reading/may-read.ts";
import { reasonOf, shortened } from "../reading/reasons.ts";
import type { CliFiles } from "./io.ts";

/** A file that was asked for. */
export interface AskedFile {
  /** Absolute. */
  readonly path: string;
  /** As reports name it: as given, or relative to the folder in which the command runs. */
  readonly label: string;
  /** The folder, absolute, in which it was found; undefined where the person has named the file itself. */
  readonly foundIn?: string;
}

export interface FoundFiles {
  readonly files: readonly AskedFile[];
  readonly problems: readonly string[];
}

const PATTERN = /[*?{}[\]!()]/;

/** Finds the files of all `args`; none given means the folder itself. */
export async function findFiles(files: CliFiles, cwd: string, args: readonly string[]): Promise<FoundFiles> {
  const found: AskedFile[] = [];
  const problems: string[] = [];
  for (const arg of args.length > 0 ? args : ["."]) {
    const result = await filesOf(files, cwd, arg);
    if (typeof result === "string") problems.push(result);
    else {
      found.push(...result.files);
      problems.push(...result.problems);
    }
  }
  return { files: await eachOnce(files, found), problems };
}

async function filesOf(files: CliFiles, cwd: string, arg: string): Promise<FoundFiles | string> {
  const absolute = path.resolve(cwd, arg);
  switch (arg === "" ? "missing" : await files.kind(absolute)) {
    case "file":
      return { files: [{ path: absolute, label: arg }], problems: [] };
    case "folder":
      return recipesBelow(files, cwd, arg);
    case "link":
      return `${quoted(arg, cwd)} ${reasonOf("link")}.`;
    case "other":
      return `${quoted(arg, cwd)} is neither a file nor a folder. Name a recipe (\`*.finish\`) or a folder of recipes.`;
    case "forbidden":
      return forbidden(quoted(arg, cwd));
    default:
      return PATTERN.test(arg) ? matches(files, cwd, arg) : missing(arg, cwd);
  }
}

const forbidden = (name: string): string =>
  `${name} may not be read: you have no permission for it. Ask for the permission, or leave it out.`;

const tooDeep = (label: string): string =>
  `The folder \`${shortened(label)}\` lies more than ${MAX_DEPTH} folders deep and is not looked into. Move it further up, or name it.`;

/** Nobody reads more of one kind. */
const MAX_ALIKE = 5;

function firstFew(problems: readonly string[]): readonly string[] {
  if (problems.length <= MAX_ALIKE) return problems;
  return [...problems.slice(0, MAX_ALIKE), `${problems.length - MAX_ALIKE} other folders lie as deep.`];
}

async function recipesBelow(files: CliFiles, cwd: string, arg: string): Promise<FoundFiles | string> {
  const folder = path.resolve(cwd, arg);
  const found = await files.recipes(folder);
  const below = (name: string) => inFolder(cwd, arg, path.join(folder, name), folder);
  const problems = [
    ...found.closed.map((name) => forbidden(`The folder \`${below(name).label}\``)),
    ...firstFew(found.deep.map((name) => tooDeep(below(name).label))),
  ];
  if (found.files.length > 0 || problems.length > 0) return { files: found.files.map(below), problems };
  return `No recipes in the folder ${quoted(arg, cwd)}: no file in it ends in \`.finish\`. Name another folder, or make a first one with \`finishwright new table.finish\`.`;
}

async function matches(files: CliFiles, cwd: string, pattern: string): Promise<FoundFiles | string> {
  const found = await files.search(cwd, pattern.replaceAll("\\", "/"));
  if (found.length > 0) {
    return { files: found.map((name) => inFolder(cwd, pattern, path.resolve(cwd, name), cwd)), problems: [] };
  }
  return `No file matches ${quoted(pattern, cwd)}. Look for a slip in the pattern, or name the files or their folder.`;
}

function missing(arg: string, cwd: string): string {
  if (arg === "") return "An empty path was given. Name a recipe (`*.finish`) or a folder of recipes.";
  return `There is no ${quoted(arg, cwd)}. Expected a recipe (\`*.finish\`), a folder of recipes or a pattern; check the spelling.`;
}

/** Below an absolute path names stay absolute; else they are relative to where the command runs. */
function inFolder(cwd: string, arg: string, absolute: string, foundIn: string): AskedFile {
  const label = path.isAbsolute(arg) ? slashed(absolute) : labelFor(cwd, absolute);
  return { path: absolute, label, foundIn };
}

/** How a file that was not given by name is called in reports. */
export function labelFor(cwd: string, absolute: string): string {
  const relative = path.relative(cwd, absolute);
  return slashed(relative === "" || path.isAbsolute(relative) ? absolute : relative);
}

const slashed = (text: string): string => (path.sep === "\\" ? text.replaceAll("\\", "/") : text);

const quoted = (arg: string, cwd: string): string =>
  path.isAbsolute(arg) ? `\`${arg}\`` : `\`${arg}\` (in ${cwd})`;

async function eachOnce(files: CliFiles, found: readonly AskedFile[]): Promise<readonly AskedFile[]> {
  const seen = new Set<string>();
  const once: AskedFile[] = [];
  for (const file of found) {
    const real = await files.realPath(file.path);
    if (seen.has(real)) continue;
    seen.add(real);
    once.push(file);
  }
  return once;
}
