/**
 * The findings of all files that were asked for, with no more in memory at a time than needs to be.
 *
 * Most files of a large folder neither use others nor are used. Nothing else has a say in what is found in them, so they
 * are looked into a few at a time, and what was read of them is let go of. All others are looked into together.
 */
import path from "node:path";
import type { Analysis } from "../features/types.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import type { CliIo } from "./io.ts";
import { warn } from "./io.ts";
import { type Asked, analystOf, type LoadOptions, labelling, type ReadFile, readAsked } from "./load.ts";

/** So many files are looked into at a time. */
const BATCH = 100;

export interface CheckedFile extends ReadFile {
  readonly findings: readonly FileFinding[];
}

export interface Checked {
  /** In the order in which they were asked for. */
  readonly files: readonly CheckedFile[];
  /** The files that use others or may be used, those that were not asked for among them. */
  readonly together: Analysis;
  /** Whether every path led to files, and every file, configuration included, could be read. */
  readonly complete: boolean;
  /** How reports name a file, asked for or used. */
  readonly label: (file: string) => string;
}

/** What went wrong has been said on stderr. */
export async function checkFiles(
  io: CliIo,
  paths: readonly string[],
  options: LoadOptions = {},
): Promise<Checked> {
  const asked = await readAsked(io, paths, { ...options, withProject: true });
  const checked = await checkRead(io, asked);
  for (const problem of [...asked.problems, ...asked.beside.notes]) warn(io, problem);
  return checked;
}

/** The same of files that have been read; what went wrong with them is left to say. */
export async function checkRead(io: CliIo, asked: Asked): Promise<Checked> {
  const findings = new Map<string, readonly FileFinding[]>();
  const others: ReadFile[] = [];
  const { alone, rest } = apart(asked.files, asked.beside.files);
  for (let start = 0; start < alone.length; start += BATCH) {
    const batch = alone.slice(start, start + BATCH);
    const analysis = (await analystOf(asked, batch, [])).analysis();
    for (const file of batch) {
      if (analysis.usedBy(file.path).length > 1 || analysis.useLinks(file.path).length > 0) others.push(file);
      else findings.set(file.path, analysis.findings(file.path));
    }
    io.tidy?.();
  }
  const together = (await analystOf(asked, [...rest, ...others])).analysis();
  return {
    files: asked.files.map((file) => ({
      ...file,
      findings: findings.get(file.path) ?? together.findings(file.path),
    })),
    together,
    complete: asked.problems.length === 0,
    label: labelling(io, asked.files),
  };
}

interface Apart {
  /** No other of the files speaks of them, and they of none. Some may still use what was not asked for. */
  readonly alone: readonly ReadFile[];
  readonly rest: readonly ReadFile[];
}

/**
 * A `use` line names a file by its whole name, with its ending, so that a text in which no ending stands uses none of the
 * files, and a file whose name stands in no text is not used. `beside`: others that may use them.
 */
function apart(files: readonly ReadFile[], beside: readonly ReadFile[]): Apart {
  const names = new Set(files.map((file) => path.basename(file.path)));
  const endings = new Set([...names].map((name) => path.extname(name)));
  // What has no ending cannot be looked for by it.
  if (endings.has("")) return { alone: [], rest: files };
  const named = new Set<string>();
  const naming = new Set<ReadFile>();
  for (const file of [...files, ...beside])
    for (const ending of endings)
      for (const end of endsOf(file.text, ending)) {
        naming.add(file);
        for (const name of namesBefore(file.text, end)) if (names.has(name)) named.add(name);
      }
  const isAlone = (file: ReadFile): boolean => !naming.has(file) && !named.has(path.basename(file.path));
  return { alone: files.filter(isAlone), rest: files.filter((file) => !isAlone(file)) };
}

/** Where an ending of file names ends in a text. */
function* endsOf(text: string, ending: string): Generator<number> {
  for (let at = text.indexOf(ending); at >= 0; at = text.indexOf(ending, at + 1)) yield at + ending.length;
}

/** All that a file may be called whose name ends there: as much of the line as a name can have. */
function* namesBefore(text: string, end: number): Generator<string> {
  for (let start = end - 1; start >= 0 && end - start <= MOST_NAME; start -= 1) {
    if (/[\r\n/\\]/u.test(text[start]!)) return;
    yield text.slice(start, end);
  }
}

/** Names of files have at most so many characters (NAME_MAX of POSIX systems counts bytes). */
const MOST_NAME = 255;
