/** `compare`: ways of doing a job, or versions of one, side by side. */
import path from "node:path";
import { unitsForAll } from "../../core/units-told.ts";
import { comparisonJson } from "../../reports/comparison-json.ts";
import { comparisonText, type SideNames } from "../../reports/comparison-text.ts";
import { type ComparedJob, compareJobs } from "../../views/job-comparison.ts";
import {
  type AddCommand,
  askedJobs,
  type CommandContext,
  formatOption,
  outputColours,
  readAlsoOption,
  todayOption,
  unitsOption,
} from "../command-context.ts";
import { type CliIo, type ExitStatus, UsageError } from "../io.ts";
import { type Loaded, type LoadOptions, load } from "../load.ts";
import { statusOf } from "./totals.ts";

interface CompareOptions extends LoadOptions {
  readonly format: "text" | "json";
}

export const addCompare: AddCommand = (program, ctx) => {
  program
    .command("compare")
    .summary("compare jobs, or versions of one")
    .description(
      "Compares two jobs or more, or versions of one in several files: coats, litres, cost, hands-on and elapsed time, dates, " +
        "fumes and findings. Use FILE if it contains one job, otherwise FILE:JOB.",
    )
    .argument("<a>", "FILE or FILE:JOB")
    .argument("<b>", "FILE or FILE:JOB")
    .argument("[more...]", "further jobs, each FILE or FILE:JOB")
    .addOption(formatOption(["text", "json"]))
    .addOption(todayOption())
    .addOption(unitsOption())
    .addOption(readAlsoOption())
    .action(async (a: string, b: string, more: readonly string[], options: CompareOptions) =>
      ctx.finish(await compare(ctx, [a, b, ...more], options)),
    );
};

async function compare(
  { io }: CommandContext,
  given: readonly string[],
  options: CompareOptions,
): Promise<ExitStatus> {
  for (const each of given) await refuseFolder(io, each);
  const asked = await Promise.all(given.map((each) => readArgument(io, each)));
  const loaded = await load(
    io,
    asked.map(({ file }) => file),
    options,
  );
  if (!loaded.complete) return 2;
  const jobs = asked.map((each) => jobOf(io, loaded, each));
  const [first, second, ...rest] = jobs as [ComparedJob, ComparedJob, ...ComparedJob[]];
  const comparison = compareJobs(first, second, ...rest);
  io.stdout.write(
    options.format === "json"
      ? comparisonJson(comparison, loaded.label)
      : comparisonText(
          sideNames(jobs, loaded.label),
          comparison,
          outputColours(io),
          unitsForAll(
            loaded.analysis.units,
            jobs.map(({ file }) => file),
          ),
        ),
  );
  return statusOf({ io }, loaded, { what: "figures" });
}

interface JobArgument {
  readonly given: string;
  readonly file: string;
  readonly job?: string;
}

async function refuseFolder(io: CliIo, given: string): Promise<void> {
  if ((await io.files.kind(path.resolve(io.cwd, given))) !== "folder") return;
  throw new UsageError(`\`${given}\` is a folder. Name the file of the job: \`FILE\` or \`FILE:JOB\`.`);
}

/** `FILE:JOB`, unless there is a file of that whole name. */
async function readArgument(io: CliIo, given: string): Promise<JobArgument> {
  const colon = given.lastIndexOf(":");
  const isFile = (await io.files.kind(path.resolve(io.cwd, given))) === "file";
  if (isFile || colon < 2) return { given, file: given };
  return { given, file: given.slice(0, colon), job: given.slice(colon + 1) };
}

function jobOf(io: CliIo, loaded: Loaded, { given, file, job }: JobArgument): ComparedJob {
  const absolute = path.resolve(io.cwd, file);
  const own = { ...loaded, asked: loaded.asked.filter((each) => each.path === absolute) };
  const jobs = askedJobs(own, job === undefined ? undefined : [job]);
  const [only] = jobs;
  if (!only) throw new UsageError(`\`${given}\` has no jobs to compare. A job says \`job NAME {\`.`);
  if (jobs.length > 1) {
    const names = jobs.map(({ result }) => `\`${file}:${result.job.name}\``).join(", ");
    throw new UsageError(`\`${given}\` has several jobs. Name one: ${names}.`);
  }
  // Of two ways of doing a job one is done, so neither is planned with the other.
  return { analysis: loaded.analysis, file: only.file, result: loaded.analysis.alone(only.result) };
}

/** By their jobs, or, for one job in several files, by these; by both where neither tells them apart. */
function sideNames(jobs: readonly ComparedJob[], label: (file: string) => string): SideNames {
  const names = jobs.map(({ result }) => result.job.name);
  const count = new Set(names).size;
  if (count === 1) return { all: names[0]!, sides: jobs.map(({ file }) => label(file)) };
  if (count === names.length) return { sides: names };
  return { sides: jobs.map(({ file, result }) => `${label(file)}:${result.job.name}`) };
}
