/**
 * What every command shares: the machine, the way to say how it ended, and options that several commands have.
 */
import { type Command, InvalidArgumentError, Option } from "commander";
import { readMoment } from "../core/measure/iso-dates.ts";
import { UNIT_SYSTEMS } from "../core/measure/shown-figures.ts";
import { closest } from "../core/model/suggest.ts";
import { ruleById } from "../core/rules/registry.ts";
import { isTradeRule } from "../core/rules/rule.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { type Colours, coloursFor } from "../reports/colours.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { type CliIo, type ExitStatus, UsageError } from "./io.ts";
import type { Loaded } from "./load.ts";

export interface CommandContext {
  /** All words of the command line as they were given, `--` among them. */
  readonly argv: readonly string[];
  readonly io: CliIo;
  /** How the command ended. */
  finish(status: ExitStatus): void;
  /** The program with all its commands, for what tells about them. */
  wholeProgram(): Promise<Command>;
}

/** Adds one command to the program. */
export type AddCommand = (program: Command, ctx: CommandContext) => void;

/** `--format` with the words that a command has; the first is taken when nothing is said. */
export const formatOption = (formats: readonly string[]): Option =>
  new Option("--format <format>", "form of the output").choices([...formats]).default(formats[0]);

/** `--job`, as often as wanted. */
export const jobOption = (): Option =>
  new Option("--job <name>", "only this job; may be given several times").argParser(
    (name: string, before: readonly string[] | undefined) => [...(before ?? []), name],
  );

/** `--read-also`, as often as wanted. */
export const readAlsoOption = (): Option =>
  new Option(
    "--read-also <folder>",
    "let `use` read recipes of this folder, too; may be given several times",
  ).argParser((folder: string, before: readonly string[] | undefined) => [...(before ?? []), folder]);

/** `--today`: every command that plans takes it, as none asks the clock of the machine. */
export const todayOption = (): Option =>
  new Option(
    "--today <date>",
    "plan what is left from this day on, such as 2027-03-10 or 2027-03-10T14:00; without it, from the last record",
  ).argParser((text: string): string => {
    const moment = readMoment(text);
    if (moment === undefined)
      throw new InvalidArgumentError("A day is year-month-day, such as 2027-03-10, or 2027-03-10T14:00.");
    return moment;
  });

/** `--units`, of every command that prints figures for people; JSON and CSV keep theirs. */
export const unitsOption = (): Option =>
  new Option(
    "--units <units>",
    "tell figures in these units; without it, in those of the project file, or else of the recipe. Cans are told as they are sold",
  ).choices(UNIT_SYSTEMS);

/** The paths of a command that reads recipes and writes none. */
export const PATHS = "files, folders or patterns; the current folder if none is given; - is standard input";

/** `--input-name`, which says where standard input would lie. */
export const inputNameOption = (): Option =>
  new Option(
    "--input-name <file>",
    "what standard input is called; what it uses and the project it belongs to are looked for from there",
  );

export type ColourChoice = "auto" | "always" | "never";

/** `--colour`, which goes before `NO_COLOR` and `FORCE_COLOR`. */
export const colourOption = (): Option =>
  new Option("--colour <when>", "when to colour the output; by default on a terminal")
    .choices(["auto", "always", "never"])
    .default("auto");

export const outputColours = (io: CliIo, choice: ColourChoice = "auto"): Colours =>
  coloursFor({ isTTY: io.stdout.isTTY, env: io.env, choice });

/** Columns for running text: those of the terminal, within what reads well. */
export const outputColumns = (io: CliIo): number =>
  Math.min(100, Math.max(40, io.stdout.isTTY ? (io.stdout.columns ?? 80) : 80));

export interface AskedJob {
  /** The file, as reports name it. */
  readonly label: string;
  readonly file: string;
  readonly result: JobResult;
}

/** The jobs of the files that were asked for; with names, only those, and a name that is none of them is wrong use. */
export function askedJobs(loaded: Loaded, names: readonly string[] | undefined): readonly AskedJob[] {
  const all = loaded.asked.flatMap((file) =>
    loaded.analysis.jobs(file.path).map((result) => ({ label: file.label, file: file.path, result })),
  );
  if (!names) return all;
  for (const name of names) {
    if (!all.some(({ result }) => result.job.name === name)) throw new UsageError(noJob(name, all));
  }
  return all.filter(({ result }) => names.includes(result.job.name));
}

function noJob(name: string, all: readonly AskedJob[]): string {
  const known = [...new Set(all.map(({ result }) => result.job.name))];
  if (known.length === 0) return `There is no job \`${name}\`: the files have no jobs.`;
  const near = closest(name, known);
  const list = known.map((job) => `\`${job}\``).join(", ");
  return `There is no job \`${name}\`.${near ? ` Did you mean \`${near}\`?` : ` The files have ${list}.`}`;
}

export interface FileWithErrors {
  readonly label: string;
  readonly count: number;
  /** Not asked for, but a file that was asked for uses it. */
  readonly isUsed: boolean;
}

/**
 * Files with errors among `files`, and those among the files that they use, directly or not, in which something cannot be
 * read as it was meant: a mistake of the trade in another's recipe changes no figure here.
 */
export function filesWithErrors(
  { analysis, label }: Pick<Loaded, "analysis" | "label">,
  files: readonly string[],
): readonly FileWithErrors[] {
  const asked = new Set(files);
  const used = new Set(files.flatMap((file) => analysis.usedBy(file)));
  return [...new Set([...asked, ...used])].flatMap((file) => {
    const isUsed = !asked.has(file);
    const found = analysis.findings(file);
    const count = isUsed ? ownErrors(found) : found.filter(({ severity }) => severity === "error").length;
    return count > 0 ? [{ label: label(file), count, isUsed }] : [];
  });
}

/** Of a file that is only used: errors by which something cannot be read as it was meant. */
export const ownErrors = (findings: readonly FileFinding[]): number =>
  findings.filter(({ severity, rule }) => severity === "error" && !isOfTrade(rule)).length;

function isOfTrade(id: string): boolean {
  const rule = ruleById(id);
  return rule !== undefined && isTradeRule(rule);
}
