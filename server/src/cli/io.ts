/**
 * What the command line needs from the machine it runs on, as an argument.
 *
 * `run` in `main.ts` touches nothing but this, so that tests call it like any function: they collect what is written
 * and point it at a temporary folder. `node-files.ts` is the one implementation of `CliFiles` on a real disk.
 */
import type { FaultListener } from "../core/internal-error.ts";
import { shownLines } from "../escape/shown-text.ts";
import type { AnalystOptions } from "../features/analyst.ts";
import type { Analyst } from "../features/types.ts";
import type { FileText, ReadText } from "../reading/decode-text.ts";
import type { Permit } from "../reading/may-read.ts";
import type { CheckAnswer, CheckTask } from "./check-model.ts";
import type { RunGit } from "./node-git.ts";
import type { Watch } from "./node-watch.ts";
import type { ReadBytes } from "./read-plain.ts";

export interface CliOutput {
  write(text: string): void;
  readonly isTTY: boolean;
  /** Width of the terminal, where there is one. */
  readonly columns?: number;
}

/** Why a file was not written, as the end of a sentence that begins with the file; undefined when it was. */
export type WriteOutcome = { readonly reason: string } | undefined;

export type PathKind = "file" | "folder" | "link" | "other" | "missing" | "forbidden";

/** What a search of a folder comes to: paths relative to it, with `/`. */
export interface Recipes {
  readonly files: readonly string[];
  /** Folders that may not be looked into. */
  readonly closed: readonly string[];
  /** Folders that lie too deep to be looked into. */
  readonly deep: readonly string[];
}

/** Whether a file with this text may be replaced without asking, or in words why not. */
export type IsOwn = (text: string) => true | string;

export interface CliFiles {
  kind(path: string): Promise<PathKind>;
  /** Without a permit the person has named this very file. */
  read(path: string, permit?: Permit): Promise<ReadText>;
  /** A cache that was written before; undefined where there is none, or it is no plain file of a size that it can have. */
  readCache(path: string): Promise<string | undefined>;
  /** The bytes of a picture. */
  readBytes(path: string, permit: Permit): Promise<ReadBytes>;
  /** Makes a file, or replaces one that `isOwn` says may be; else why not, as the end of a sentence that begins with it. */
  write(path: string, text: string, isOwn: IsOwn): Promise<WriteOutcome>;
  /** Puts a text in the place of the one that was read, at once and whole, or leaves the file as it is. */
  replace(path: string, read: FileText, text: string): Promise<WriteOutcome>;
  /** Makes a folder, and those above it, where there are none. */
  makeFolder(path: string): Promise<WriteOutcome>;
  /** Takes away a plain file that `isOwn` says may be; else why not, as the end of a sentence that begins with it. */
  remove(path: string, isOwn: IsOwn): Promise<WriteOutcome>;
  /** When a file was last written, an ISO date-time in UTC; undefined where that cannot be told. */
  changedAt(path: string): Promise<string | undefined>;
  /** The path without symbolic links, by which one file is known under all its names. */
  realPath(path: string): Promise<string>;
  /** The folder of a package that is installed for files of a folder; both absolute paths. Undefined where there is none. */
  findPackage(folder: string, name: string): string | undefined;
  /** Everything below a folder that ends in `.finish`, links to files included, linked folders and those that `search` leaves out not. */
  recipes(folder: string): Promise<Recipes>;
  /** Files below a folder that match a pattern, relative to it, with `/`; without `node_modules` and dot folders. */
  search(folder: string, pattern: string): Promise<readonly string[]>;
}

export interface CliIo {
  createAnalyst(options: AnalystOptions): Analyst;
  /** Looks into files by themselves in threads, and answers in the order of the tasks. */
  readonly checkInThreads?: (tasks: readonly CheckTask[], threads: number) => Promise<readonly CheckAnswer[]>;
  /** How many processors there are for this program. */
  readonly processors: number;
  /** Much has been let go of: to be called every now and then. */
  readonly tidy?: () => void;
  /** Told of every fault in this program; the command that `run` was asked for then ends with 2. */
  readonly onFault?: FaultListener;
  /** All of standard input. */
  readonly readInput: () => Promise<ReadText>;
  /** Asks the person at the terminal; undefined where the input has ended. Left out where nobody can answer. */
  readonly ask?: (question: string) => Promise<string | undefined>;
  readonly stdout: CliOutput;
  readonly stderr: CliOutput;
  /** Absolute. */
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly files: CliFiles;
  readonly git: RunGit;
  /** Waits for changes, until it is closed. */
  readonly watch: () => Watch;
  readonly version: string;
  /** What tells this very build of the program from any other. */
  readonly build: () => string;
  /** The absolute path of the person's folder for what may be thrown away at any time. */
  readonly cacheFolder: () => string;
  /** The folder that the program was installed in, with its samples. */
  readonly home: string;
  /** An ISO date-time in UTC. */
  readonly now: () => string;
  /** Serves an editor over this process's own channels until the editor leaves. */
  readonly startLanguageServer: () => Promise<void>;
}

/** As `reports/exit-statuses.ts` tells them. */
export type ExitStatus = 0 | 1 | 2;

/** Wrong use: the message goes to stderr after the program's name, and the exit status is 2. */
export class UsageError extends Error {}

/** One line for stderr, with the name of the program before it. */
export function warn(io: CliIo, message: string): void {
  io.stderr.write(`finishwright: ${shownLines(message)}\n`);
}
