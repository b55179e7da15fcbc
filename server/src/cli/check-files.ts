/**
 * The findings of all files that were asked for, with no more in memory at a time than needs to be.
 *
 * Most files of a large folder neither use others nor are used. Nothing else has a say in what is found in them, so they
 * are looked into a few at a time, and what was read of them is let go of. All others are looked into together.
 */
import path from "node:path";
import type { Analysis } from "../features/types.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { type CacheOptions, type CheckCache, type KnownTogether, openCache } from "./check-cache.ts";
import type { CheckAnswer, CheckTask } from "./check-model.ts";
import { checkTask } from "./check-task.ts";
import { ownErrors } from "./command-context.ts";
import type { CliIo } from "./io.ts";
import { warn } from "./io.ts";
import { type Asked, analystOf, type LoadOptions, labelling, type ReadFile, readAsked } from "./load.ts";

/** So many files are looked into at a time. */
const BATCH = 100;
/** For fewer a thread takes longer to start than it saves. */
const MANY = 600;

export interface CheckedFile extends ReadFile {
  readonly findings: readonly FileFinding[];
}

export interface Checked {
  /** In the order in which they were asked for. */
  readonly files: readonly CheckedFile[];
  /** A file that uses others with all that it uses, directly or not; one that is by itself uses none. */
  readonly usedBy: (file: string) => readonly string[];
  /** The text of a file that was asked for or is used. */
  readonly text: (file: string) => string | undefined;
  /** Of a file that is only used: errors that change what is found where it is used. */
  readonly errorsIn: (file: string) => number;
  /** Whether every path led to files, and every file, configuration included, could be read. */
  readonly complete: boolean;
  /** How reports name a file, asked for or used. */
  readonly label: (file: string) => string;
}

/** What went wrong has been said on stderr. */
export async function checkFiles(
  io: CliIo,
  paths: readonly string[],
  options: LoadOptions & CacheOptions = {},
): Promise<Checked> {
  const asked = await readAsked(io, paths, { ...options, withProject: true });
  const cache = await openCache(io, { ...options, paths }, asked);
  const checked = await checkRead(io, asked, cache);
  for (const problem of [...asked.problems, ...asked.beside.notes]) warn(io, problem);
  await cache?.write();
  return checked;
}

/** The same of files that have been read; what went wrong with them is left to say. */
export async function checkRead(io: CliIo, asked: Asked, cache?: CheckCache): Promise<Checked> {
  const findings = new Map<string, readonly FileFinding[]>();
  const { alone, rest } = apart(asked.files, asked.beside.files);
  const open = alone.filter((file) => {
    const known = cache?.alone(file);
    if (known) findings.set(file.path, known);
    return known === undefined;
  });
  const others: ReadFile[] = [];
  for await (const { files, answer } of lookAlone(io, asked, open)) {
    for (const [index, file] of files.entries()) {
      const found = answer.found[index];
      if (!found) others.push(file);
      else {
        findings.set(file.path, found);
        cache?.keepAlone(file, found);
      }
    }
    for (const fault of answer.faults) io.onFault?.(fault);
  }
  const tied = [...rest, ...others];
  const together = (await cache?.together(tied)) ?? (await lookTogether(asked, tied, cache));
  const texts = new Map(asked.files.map((file) => [file.path, file.text]));
  return {
    files: asked.files.map((file) => ({
      ...file,
      findings: findings.get(file.path) ?? together.findings.get(file.path) ?? [],
    })),
    usedBy: (file) => together.uses.get(file) ?? [],
    text: (file) => texts.get(file) ?? together.texts.get(file),
    errorsIn: (file) => together.errors.get(file) ?? 0,
    complete: asked.problems.length === 0,
    label: labelling(io, asked.files),
  };
}

interface LookedAlone {
  readonly files: readonly ReadFile[];
  readonly answer: CheckAnswer;
}

/** A few files at a time, here or in threads. */
async function* lookAlone(
  io: CliIo,
  { configOf, today, threads }: Asked,
  open: readonly ReadFile[],
): AsyncGenerator<LookedAlone> {
  const batches: (readonly ReadFile[])[] = [];
  for (let start = 0; start < open.length; start += BATCH) batches.push(open.slice(start, start + BATCH));
  const taskOf = (files: readonly ReadFile[]): CheckTask => ({
    files: files.map(({ path: file, text }) => ({ path: file, text })),
    configs: files.map((file) => configOf(file.path)),
    ...(today === undefined ? {} : { today }),
  });
  const count = threads ?? (open.length < MANY ? 1 : io.processors);
  if (count > 1 && io.checkInThreads) {
    const answers = await io.checkInThreads(batches.map(taskOf), count);
    for (const [index, files] of batches.entries()) yield { files, answer: answers[index]! };
    return;
  }
  for (const files of batches) {
    yield { files, answer: checkTask(taskOf(files), io.createAnalyst) };
    io.tidy?.();
  }
}

/** Files that may have to do with each other, in one analysis with what they use. */
async function lookTogether(
  asked: Asked,
  files: readonly ReadFile[],
  cache: CheckCache | undefined,
): Promise<KnownTogether> {
  const analysis = (await analystOf(asked, files)).analysis();
  const known = cache?.inProgram(analysis.program);
  const findings = new Map<string, readonly FileFinding[]>();
  const uses = new Map<string, readonly string[]>();
  const find = (file: string): readonly FileFinding[] => {
    const found = findings.get(file) ?? known?.(file) ?? analysis.findings(file);
    findings.set(file, found);
    return found;
  };
  for (const { path: file } of files) {
    find(file);
    uses.set(file, analysis.usedBy(file));
  }
  const own = new Set(files.map((file) => file.path));
  const onlyUsed = new Set([...uses.values()].flat().filter((file) => !own.has(file)));
  const errors = new Map([...onlyUsed].map((file) => [file, ownErrors(find(file))]));
  cache?.keepTogether(files, analysis.program, { findings, uses, errors });
  return { findings, uses, errors, texts: textsOf(analysis) };
}

const textsOf = ({ program }: Analysis): ReadonlyMap<string, string> =>
  new Map([...program.files].map(([file, { tree }]) => [file, tree.text]));

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
