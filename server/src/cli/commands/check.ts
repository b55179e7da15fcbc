/** `check`: the findings of files and folders. */
import path from "node:path";
import { InvalidArgumentError, Option } from "commander";
import type { Severity } from "../../core/findings.ts";
import { isAtLeast } from "../../core/findings.ts";
import { closest } from "../../core/model/suggest.ts";
import { ruleById, ruleIds } from "../../core/rules/registry.ts";
import { shownText } from "../../escape/shown-text.ts";
import { findingsGithub } from "../../reports/findings-github.ts";
import { findingsGitlab } from "../../reports/findings-gitlab.ts";
import { findingsJson } from "../../reports/findings-json.ts";
import { findingsJunit } from "../../reports/findings-junit.ts";
import { findingsLines } from "../../reports/findings-lines.ts";
import { findingsSarif } from "../../reports/findings-sarif.ts";
import { findingsStatistics } from "../../reports/findings-statistics.ts";
import { counted, findingsText } from "../../reports/findings-text.ts";
import { type FindingReport, type OtherFile, onePerLine } from "../../reports/reported.ts";
import type { FileFinding } from "../../views/places/file-finding.ts";
import { partsOf } from "../../views/places/finding-parts.ts";
import { readBaseline, withoutKnown, writeBaseline } from "../baseline.ts";
import { changeText } from "../change-text.ts";
import type { CacheOptions } from "../check-cache.ts";
import { type Checked, checkFiles, checkRead } from "../check-files.ts";
import {
  type AddCommand,
  type ColourChoice,
  type CommandContext,
  colourOption,
  formatOption,
  inputNameOption,
  outputColours,
  outputColumns,
  PATHS,
  readAlsoOption,
  todayOption,
} from "../command-context.ts";
import { fingerprintsOf } from "../finding-fingerprint.ts";
import { fixedTexts } from "../fix-files.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "../io.ts";
import { type LoadOptions, readAsked } from "../load.ts";

type CheckFormat = "text" | "lines" | "json" | "sarif" | "github" | "gitlab" | "junit";

export interface CheckOptions extends LoadOptions, CacheOptions {
  readonly format: CheckFormat;
  readonly failOn: Severity;
  readonly maxWarnings?: number;
  readonly quiet?: true;
  readonly rule?: readonly string[];
  readonly fix?: true;
  readonly diff?: true;
  readonly watch?: true;
  readonly statistics?: true;
  readonly baseline?: string;
  readonly writeBaseline?: string;
  readonly colour?: ColourChoice;
}

export const addCheck: AddCommand = (program, ctx) => {
  program
    .command("check")
    .summary("report errors and likely problems")
    .description(
      "Checks recipes and reports errors and likely problems. Files that a recipe uses are read, too; " +
        "their own findings are printed only if you name those files.",
    )
    .argument("[paths...]", PATHS)
    .addOption(formatOption(["text", "lines", "json", "sarif", "github", "gitlab", "junit"]))
    .addOption(
      new Option("--fail-on <level>", "lowest level of finding for which the exit status is 1")
        .choices(["error", "warning", "hint"])
        .default("error"),
    )
    .addOption(
      new Option("--max-warnings <number>", "end with 1 if there are more warnings than this").argParser(
        wholeNumber,
      ),
    )
    .option("--quiet", "report errors only")
    .addOption(
      new Option("--rule <name>", "report only what this rule finds; may be given several times").argParser(
        ruleName,
      ),
    )
    .option("--fix", "apply the safe fixes, which change nothing that is done or promised")
    .option(
      "--diff",
      "print what --fix would change, change nothing, and end with 1 if it would change anything",
    )
    .option("--watch", "check again after every change, until Ctrl+C")
    .option("--baseline <file>", "leave out the findings that this file lists")
    .option("--write-baseline <file>", "list the findings of today in this file, for --baseline")
    .option("--cache", "keep what is found, and next time look only into what has changed")
    .option("--cache-file <file>", "keep it in this file; without it in your folder for caches")
    .addOption(
      new Option(
        "--threads <number>",
        "look into so many files at a time; without it, in a large folder as many as there are processors",
      ).argParser(threadCount),
    )
    .option("--statistics", "count the findings of each rule as well")
    .addOption(colourOption())
    .addOption(todayOption())
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .action(async (paths: string[], options: CheckOptions) => ctx.finish(await check(ctx, paths, options)));
};

function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/u.test(text)) throw new InvalidArgumentError("Give a whole number, such as 0.");
  return Number(text);
}

function threadCount(text: string): number {
  const count = /^\d{1,3}$/u.test(text) ? Number(text) : 0;
  if (count < 1 || count > MOST_THREADS)
    throw new InvalidArgumentError(`Give a number from 1 to ${MOST_THREADS}.`);
  return count;
}

const MOST_THREADS = 64;

function ruleName(id: string, before: readonly string[] | undefined): readonly string[] {
  if (ruleById(id) !== undefined) return [...(before ?? []), id];
  const near = closest(id, ruleIds());
  throw new InvalidArgumentError(
    near ? `Did you mean ${near}?` : "`finishwright explain` lists the names of all rules.",
  );
}

export async function check(
  { io }: Pick<CommandContext, "io">,
  paths: readonly string[],
  options: CheckOptions,
): Promise<ExitStatus> {
  refuseContradictions(paths, options);
  if (options.diff) return showChanges(io, paths, options);
  if (options.watch) return checkOnChanges(io, paths, options);
  return checkOnce(io, paths, options, () => {});
}

/** Checks at once and after every change; it ends when the watch does, with what the last check came to. */
async function checkOnChanges(
  io: CliIo,
  paths: readonly string[],
  options: CheckOptions,
): Promise<ExitStatus> {
  const watch = io.watch();
  const named = paths.length > 0 ? paths : ["."];
  // Watched before it is read, so that no change between the two is missed.
  for (const each of named) {
    const place = path.resolve(io.cwd, each);
    const isFolder = (await io.files.kind(place)) === "folder";
    watch.add([{ folder: isFolder ? place : path.dirname(place), isDeep: isFolder }]);
  }
  const alsoUsed = ({ files, usedBy }: Checked): void => {
    const used = files.flatMap((file) => usedBy(file.path));
    watch.add([...used].map((file) => ({ folder: path.dirname(file), isDeep: false })));
  };
  try {
    let status = await checkOnce(io, paths, options, alsoUsed);
    for (;;) {
      io.stderr.write("Waiting for changes. Ctrl+C ends.\n");
      if (!(await watch.next())) return status;
      io.stderr.write("\nA recipe has changed. Checking again.\n");
      status = await checkOnce(io, paths, options, alsoUsed);
    }
  } finally {
    watch.close();
  }
}

async function checkOnce(
  io: CliIo,
  paths: readonly string[],
  options: CheckOptions,
  onChecked: (checked: Checked) => void,
): Promise<ExitStatus> {
  const isFixed = options.fix ? await applyFixes(io, paths, options) : true;
  const checked = await checkFiles(io, paths, options);
  onChecked(checked);
  const all = chosen(reportOf(checked), options);
  const known = await knownFindings(io, all, options);
  const report = known.report;
  write(io, report, checked, options);
  if (known.leftOut > 0) warn(io, `${counted(known.leftOut, "finding")} of the baseline left out.`);
  if (!checked.complete || !isFixed || !known.isWritten) return 2;
  return isFailed(report, options) ? 1 : 0;
}

function refuseContradictions(
  paths: readonly string[],
  { fix, diff, watch, baseline, writeBaseline, cache, cacheFile }: CheckOptions,
): void {
  if (watch && (fix || diff || writeBaseline !== undefined)) {
    throw new UsageError(
      "`--watch` only reports. Give `--fix`, `--diff` or `--write-baseline` in a run of its own.",
    );
  }
  if (watch && paths.includes("-")) {
    throw new UsageError("`--watch` waits for changes of files, and standard input is none.");
  }
  if (fix && diff) throw new UsageError("`--fix` changes files and `--diff` changes none: give one of them.");
  if (fix && paths.includes("-")) {
    throw new UsageError(
      "`--fix` changes files, and standard input is none. `--diff` prints what it would change.",
    );
  }
  if (paths.includes("-") && (cache || cacheFile !== undefined)) {
    throw new UsageError("`--cache` keeps what is found in files, and standard input is none.");
  }
  if (baseline !== undefined && writeBaseline !== undefined) {
    throw new UsageError("Give either `--baseline`, which is read, or `--write-baseline`, which is written.");
  }
}

/** The findings that the options leave; a finding for several rules stays where one of them was asked for. */
function chosen(report: FindingReport, { quiet, rule: rules }: CheckOptions): FindingReport {
  const isChosen = (finding: FileFinding): boolean =>
    (!quiet || finding.severity === "error") &&
    (!rules || partsOf(finding).some(({ rule }) => rules.includes(rule)));
  return {
    ...report,
    files: report.files.map((file) => ({ ...file, findings: file.findings.filter(isChosen) })),
  };
}

interface Known {
  readonly report: FindingReport;
  readonly leftOut: number;
  readonly isWritten: boolean;
}

async function knownFindings(io: CliIo, report: FindingReport, options: CheckOptions): Promise<Known> {
  if (options.writeBaseline !== undefined) {
    const failure = await writeBaseline(io, options.writeBaseline, report);
    if (failure !== undefined) warn(io, failure);
    return { report, leftOut: 0, isWritten: failure === undefined };
  }
  if (options.baseline === undefined) return { report, leftOut: 0, isWritten: true };
  const rest = withoutKnown(report, await readBaseline(io, options.baseline));
  const count = ({ files }: FindingReport): number =>
    files.reduce((sum, { findings }) => sum + findings.length, 0);
  return { report: rest, leftOut: count(report) - count(rest), isWritten: true };
}

function isFailed(
  report: FindingReport,
  { failOn, maxWarnings, writeBaseline: written }: CheckOptions,
): boolean {
  // What has just been accepted is no reason to fail.
  if (written !== undefined) return false;
  const all = report.files.flatMap(({ findings }) => findings);
  const warnings = all.filter(({ severity }) => severity === "warning").length;
  return (
    all.some(({ severity }) => isAtLeast(severity, failOn)) ||
    (maxWarnings !== undefined && warnings > maxWarnings)
  );
}

const FORMS: Readonly<
  Record<Exclude<CheckFormat, "text">, (report: FindingReport, version: string) => string>
> = {
  lines: findingsLines,
  json: findingsJson,
  sarif: findingsSarif,
  github: findingsGithub,
  gitlab: (report) => findingsGitlab(report, fingerprintsOf),
  junit: findingsJunit,
};

function write(io: CliIo, report: FindingReport, checked: Checked, options: CheckOptions): void {
  const { format, colour, statistics } = options;
  if (format !== "text") {
    io.stdout.write(FORMS[format](onePerLine(report), io.version));
    if (statistics) io.stderr.write(findingsStatistics(report).trimStart());
    return;
  }
  if (checked.files.length === 0) return;
  io.stdout.write(findingsText(report, { colours: outputColours(io, colour), columns: outputColumns(io) }));
  if (statistics) io.stdout.write(findingsStatistics(report));
  tellOfUsed(io, checked);
}

/** The files as they are read, what went wrong with that, and their texts once all safe fixes are applied. */
async function fixed(io: CliIo, paths: readonly string[], options: CheckOptions) {
  const asked = await readAsked(io, paths, { ...options, withProject: true });
  const { files, problems } = asked;
  const texts = new Map(files.map(({ path, text }) => [path, text]));
  const after = await fixedTexts(texts, async (now) => {
    const again = await checkRead(io, {
      ...asked,
      files: files.map((file) => ({ ...file, text: now.get(file.path) ?? file.text })),
    });
    return chosen(reportOf(again), options).files.flatMap(({ findings }) => findings);
  });
  return { files, problems, after };
}

async function showChanges(io: CliIo, paths: readonly string[], options: CheckOptions): Promise<ExitStatus> {
  const { files, problems, after } = await fixed(io, paths, options);
  const style = { isTTY: io.stdout.isTTY, colours: outputColours(io, options.colour) };
  for (const { path, label, text } of files) {
    const changed = after.get(path);
    if (changed !== undefined) io.stdout.write(changeText(label, text, changed, style));
  }
  for (const problem of problems) warn(io, problem);
  if (problems.length > 0) return 2;
  return after.size > 0 ? 1 : 0;
}

/** Whether every fix could be written. What could not be read is said by the check that follows. */
async function applyFixes(io: CliIo, paths: readonly string[], options: CheckOptions): Promise<boolean> {
  const { files, after } = await fixed(io, paths, options);
  let isDone = true;
  for (const { path, label, text } of files) {
    const changed = after.get(path);
    if (changed === undefined) continue;
    const failure = await writeChanged(io, path, text, changed);
    if (failure === undefined) io.stderr.write(`Fixed \`${shownText(label)}\`.\n`);
    else warn(io, `\`${label}\` ${failure}.`);
    isDone &&= failure === undefined;
  }
  return isDone;
}

async function writeChanged(
  io: CliIo,
  file: string,
  text: string,
  changed: string,
): Promise<string | undefined> {
  // It was read before, so the person named it, or it may be read.
  const read = await io.files.read(file);
  if ("reason" in read) return read.reason;
  if (read.text !== text) return "has changed meanwhile and is left as it is. Try again";
  return (await io.files.replace(file, read, changed))?.reason;
}

/** What cannot be read in a file that is only used changes what is found here, and would not be seen. */
function tellOfUsed(io: CliIo, { files, usedBy, errorsIn, label }: Checked): void {
  const asked = new Set(files.map(({ path }) => path));
  const used = new Set(files.flatMap((file) => usedBy(file.path).filter((other) => !asked.has(other))));
  for (const file of used) {
    const count = errorsIn(file);
    if (count === 0) continue;
    const errors = count === 1 ? "an error" : `${count} errors`;
    const name = label(file);
    warn(io, `\`${name}\` is used here and has ${errors} of its own: see \`finishwright check ${name}\`.`);
  }
}

function reportOf({ files, text, label }: Checked): FindingReport {
  const others = new Map<string, OtherFile>();
  const other = (file: string): OtherFile => {
    const known = others.get(file) ?? { label: label(file), text: text(file) ?? "" };
    others.set(file, known);
    return known;
  };
  return { files, other };
}
