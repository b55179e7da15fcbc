/**
 * Reads the files that were asked for, and those that they use, into one analysis.
 *
 * A used file that cannot be read, or may not be, is a finding on its `use` line; a file that was asked for and cannot
 * be read is a problem of the run.
 */
import path from "node:path";
import type { CheckerParts } from "../core/checker.ts";
import type { UnitSystem } from "../core/measure/shown-figures.ts";
import { planWorkNear } from "../core/schedule/plan.ts";
import { cachingPlanner } from "../core/schedule/plan-cache.ts";
import { nearKept } from "../core/schedule/sessions/near-kept.ts";
import type { Schedule, ScheduleInput } from "../core/schedule/types.ts";
import type { KeptNotes } from "../core/totals/job-totals.ts";
import type { Analysis, Analyst } from "../features/types.ts";
import type { Permit } from "../reading/may-read.ts";
import { type NamedPicture, pathOfPicture } from "../reading/read-pictures.ts";
import { type AskedFile, findFiles, labelFor } from "./find-files.ts";
import { type CliIo, UsageError, warn } from "./io.ts";
import { createPackages, type Packages, resolveUse } from "./packages.ts";
import { foldersToReadAlso, permitFor, recipesIn, withPackages } from "./permits.ts";
import { createProjectConfigs, type ProjectConfigs } from "./project-config.ts";
import type { ReadBytes } from "./read-plain.ts";

export interface Loaded {
  readonly analysis: Analysis;
  /** Only those that could be read. */
  readonly asked: readonly AskedFile[];
  /** Whether every path led to files, and every file, configuration included, could be read. */
  readonly complete: boolean;
  /** How reports name a file, asked for or used. */
  readonly label: (file: string) => string;
  /** What the files may use. */
  readonly permit: Permit;
}

export interface LoadOptions {
  /** Folders whose recipes may be used as well, as the person has given them. */
  readonly readAlso?: readonly string[];
  /** How standard input is called: its findings are those of a file of this name at this place, which need not exist. */
  readonly inputName?: string;
  /**
   * Also the other jobs of the project that may be done in the same shops; they are in the analysis, and not asked for. What
   * tells dates needs them, so that every command tells the same.
   */
  readonly withProject?: boolean;
  /** Files that are no part of the project although they lie there, as another state of it; without, none. */
  readonly isApart?: (file: string) => boolean;
  /** A plan that later ones are to be near. */
  readonly kept?: KeptNotes;
  /** A local ISO date or date-time before which nothing more is done; without it, jobs go on from their last record. */
  readonly today?: string;
  /** What figures are told in; without, the units that the text itself is written in. */
  readonly units?: UnitSystem;
  /** In so many threads files are looked into, where that is asked for. */
  readonly threads?: number;
}

/** A file that was asked for and could be read. */
export interface ReadFile extends AskedFile {
  readonly text: string;
}

/** See `LoadOptions.withProject`. */
interface JobsBeside {
  readonly files: readonly ReadFile[];
  /** What was left out, which is no fault of what was asked for. */
  readonly notes: readonly string[];
}

/** What the paths lead to, and what is needed to look into it. */
export interface Asked {
  /** Only those that could be read. */
  readonly files: readonly ReadFile[];
  readonly beside: JobsBeside;
  readonly problems: readonly string[];
  /** What they may use. */
  readonly permit: Permit;
  readonly packages: Packages;
  /** What the project of a file says. */
  readonly configOf: ProjectConfigs["of"];
  readonly today?: string;
  readonly threads?: number;
  /** An analyst without any file. */
  createAnalyst(): Analyst;
  /** Gives an analyst what its files use. */
  addUsed(analyst: Analyst): Promise<void>;
}

/** Loads what the paths lead to. What went wrong has been said on stderr. */
export async function load(io: CliIo, paths: readonly string[], options: LoadOptions = {}): Promise<Loaded> {
  const read = await readAsked(io, paths, options);
  const { files, problems } = read;
  const analyst = await analystOf(read, files);
  for (const problem of [...problems, ...read.beside.notes]) warn(io, problem);
  return {
    analysis: analyst.analysis(),
    asked: files,
    complete: problems.length === 0,
    label: labelling(io, files),
    permit: read.permit,
  };
}

/** An analyst of some of the files that were asked for, of those `beside` them, and of what they use. */
export async function analystOf(
  { createAnalyst, addUsed, ...asked }: Asked,
  files: readonly ReadFile[],
  beside: readonly ReadFile[] = asked.beside.files,
): Promise<Analyst> {
  const analyst = createAnalyst();
  for (const { path: file, text } of [...beside, ...files]) analyst.setFile(file, text);
  await addUsed(analyst);
  return analyst;
}

/** Reads what the paths lead to, and looks into none of it. */
export async function readAsked(
  io: CliIo,
  paths: readonly string[],
  { readAlso, inputName, withProject, isApart, kept, today, units, threads }: LoadOptions = {},
): Promise<Asked> {
  const also = await foldersToReadAlso(io, readAlso);
  const input = standardInput(io, paths, inputName);
  const found = input ? { files: [input], problems: [] } : await findFiles(io.files, io.cwd, paths);
  const configs = createProjectConfigs(io);
  const files: ReadFile[] = [];
  const problems = [...found.problems];
  for (const file of found.files) problems.push(...(await configs.find(file.path)));
  const packages = createPackages(io.files);
  const inFolders = recipesIn([
    ...found.files.flatMap(({ path: file, foundIn }) => [
      configs.folder(file),
      ...(foundIn ? [foundIn] : []),
      ...(withProject ? [configs.folderOfJobs(file)] : []),
    ]),
    ...also,
  ]);
  const permit = withPackages(inFolders, packages);
  for (const file of found.files) {
    const read = input ? await io.readInput() : await io.files.read(file.path, permitFor(file, permit));
    if ("text" in read) files.push({ ...file, text: read.text });
    else problems.push(`\`${file.label}\` ${read.reason}.`);
  }
  return {
    files,
    beside: withProject ? await jobsBeside(io, files, { configs, permit, isApart }) : NOTHING_BESIDE,
    problems,
    permit,
    packages,
    configOf: configs.of,
    ...(today === undefined ? {} : { today }),
    ...(threads === undefined ? {} : { threads }),
    createAnalyst: () =>
      io.createAnalyst({
        resolve: packages.resolve,
        config: configs.of,
        ...(units === undefined ? {} : { units: () => units }),
        ...(io.onFault ? { onFault: io.onFault } : {}),
        parts: {
          ...dayOf(today),
          ...(kept ? { kept, plan: cachingPlanner(MOST_PLANS, planNear) } : {}),
        },
      }),
    async addUsed(analyst) {
      for (let missing = analyst.missingFiles(); missing.length > 0; missing = analyst.missingFiles()) {
        for (const file of missing) {
          const read = await io.files.read(file, permit);
          if ("text" in read) analyst.setFile(file, read.text);
          else analyst.setAbsent(file, `it ${read.reason}`);
        }
      }
    },
  };
}

/** The part of an analysis that says from when plans go on. */
export const dayOf = (today: string | undefined): Pick<CheckerParts, "today"> =>
  today === undefined ? {} : { today };

/** As many as there are jobs in a large folder. */
const MOST_PLANS = 200;

const planNear = (input: ScheduleInput): Schedule => planWorkNear(input, nearKept);

const NOTHING_BESIDE: JobsBeside = { files: [], notes: [] };

/** Which of the folders are in none of these, nor one of them. */
const notWithin = (folders: readonly string[], listed: ReadonlySet<string>): readonly string[] =>
  folders.filter((folder) => {
    for (let above = folder; ; above = path.dirname(above)) {
      if (listed.has(above)) return false;
      if (above === path.dirname(above)) return true;
    }
  });

/** More files of a project are not looked into for jobs of the same shops. */
export const MOST_BESIDE = 2_000;

/**
 * The other files of the projects with jobs that may be done in the same shops, where a job was asked for. In a shop that a
 * file has for itself nobody else's job is done, so only files that use another count; what the asked files use is read
 * anyway, and of a folder that was asked for everything is.
 */
export async function jobsBeside(
  io: CliIo,
  asked: readonly ReadFile[],
  {
    configs,
    permit,
    isApart = () => false,
  }: {
    readonly configs: ProjectConfigs;
    readonly permit: Permit;
    readonly isApart?: LoadOptions["isApart"];
  },
): Promise<JobsBeside> {
  const withJobs = asked.filter(({ text }) => hasJob(text));
  const listed = new Set(asked.flatMap(({ foundIn }) => foundIn ?? []));
  const ofJobs = [...new Set(withJobs.map(({ path: file }) => configs.folderOfJobs(file)))];
  const folders = notWithin(ofJobs, listed);
  if (folders.length === 0) return NOTHING_BESIDE;
  const found = await findFiles(io.files, io.cwd, folders);
  const own = new Set(asked.map(({ path: file }) => file));
  const others = found.files.filter(({ path: file }) => !own.has(file) && !isApart(file));
  const files: ReadFile[] = [];
  const notes: string[] = [];
  if (others.length > MOST_BESIDE) notes.push(leftOutOf(others.length));
  for (const file of others.slice(0, MOST_BESIDE)) {
    const read = await io.files.read(file.path, { ...permit, purpose: "found" });
    const label = labelFor(io.cwd, file.path);
    if (!("text" in read)) {
      notes.push(`\`${label}\` ${read.reason}. Its jobs are left out of the plan of the shop.`);
    } else if (mayShareShop(read.text)) {
      notes.push(...(await configs.find(file.path)));
      files.push({ ...file, label, text: read.text });
    }
  }
  return { files, notes };
}

/** What is said of a project with so many files. */
export const leftOutOf = (files: number): string =>
  `The project has ${files - MOST_BESIDE} more files, whose jobs are left out of the plan of the shop.`;

export const hasJob = (text: string): boolean => JOB_LINE.test(text);

/** Whether jobs of it may be done in the shop of another file. */
export const mayShareShop = (text: string): boolean => hasJob(text) && USE_LINE.test(text);

const JOB_LINE = /^[ \t]*job[ \t]/mu;
const USE_LINE = /^[ \t]*use[ \t]/mu;

/** Standard input as a file, where it was asked for. */
function standardInput(io: CliIo, paths: readonly string[], name: string | undefined): AskedFile | undefined {
  if (!paths.includes("-")) {
    if (name === undefined) return undefined;
    throw new UsageError("`--input-name` names standard input. Give `-` as the only path with it.");
  }
  if (paths.length > 1) throw new UsageError("`-` is standard input and stands alone, without files.");
  if (name === "") throw new UsageError("`--input-name` needs the name of a file, such as `table.finish`.");
  return { path: path.resolve(io.cwd, name ?? "standard-input.finish"), label: name ?? "-" };
}

/** How reports name a file, asked for or used. */
export function labelling(io: CliIo, asked: readonly AskedFile[]): (file: string) => string {
  const labels = new Map(asked.map((file) => [file.path, file.label]));
  return (file) => labels.get(file) ?? labelFor(io.cwd, file);
}

/** The picture that a text in the file `from` names, from where the recipes lie that may be used there, too. */
export async function readNamedPicture(
  { files }: CliIo,
  { permit }: Pick<Loaded, "permit">,
  { file, target }: NamedPicture,
): Promise<ReadBytes> {
  return files.readBytes(resolveUse(file, pathOfPicture(target)), { ...permit, purpose: "picture" });
}
