/** `schedule`: when every task and wait of a job begins and ends. */

import { whatHelps } from "../../core/what-helps.ts";
import { calendarReport } from "../../reports/calendar-report.ts";
import { keptJson, keptText } from "../../reports/kept-text.ts";
import { scheduleJson, scheduleText } from "../../reports/schedule-text.ts";
import { unpromised } from "../../views/missing-inputs.ts";
import { isLate, mayBeHelped } from "../../views/schedule/helps.ts";
import { isDated } from "../../views/schedule/job-plan.ts";
import { keptNotes, keptPlanOf, sinceKept } from "../../views/schedule/kept-plan.ts";
import { plannedShops } from "../../views/schedule/shop-weeks.ts";
import {
  type AddCommand,
  type AskedJob,
  askedJobs,
  type CommandContext,
  formatOption,
  inputNameOption,
  jobOption,
  outputColours,
  readAlsoOption,
  todayOption,
} from "../command-context.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "../io.ts";
import { nameInPlan, readKeptPlan, writeKeptPlan } from "../kept-plan-file.ts";
import { type LoadOptions, load } from "../load.ts";
import { statusOf } from "./totals.ts";

interface ScheduleOptions extends LoadOptions {
  readonly format: "text" | "json" | "ics";
  readonly job?: readonly string[];
  readonly whatHelps?: true;
  readonly keep?: string;
  readonly near?: string;
}

/** Late jobs for which it is said unasked what would help: each takes a dozen plans. */
const MOST_HELPED = 3;

export const addSchedule: AddCommand = (program, ctx) => {
  program
    .command("schedule")
    .summary("when every task and wait of a job begins and ends")
    .description(
      "Plans jobs through the shop's hours and its crew: when every task and wait begins and ends, what cannot slip, " +
        "and when the piece may go into service. Jobs that share a shop have one plan, one page a week; with `--job` " +
        "each is looked at alone. The plan of a shop has all jobs that are done in it of the project: of the folder of " +
        "the nearest `finishwright.config.json`, else of the file's own; all other commands date jobs by the same plan. " +
        "`--format ics` is for calendars.",
    )
    .argument("<file>", "the file of the job, or a folder of them")
    .addOption(jobOption())
    .addOption(formatOption(["text", "json", "ics"]))
    .option(
      "--what-helps",
      "say what would let each job end earlier: an hour, a pair of hands, warmer air, another material, a later start; " +
        "of late jobs it is said unasked",
    )
    .option("--keep <file>", "keep the plan in this file, for `--near`")
    .option(
      "--near <file>",
      "stay as near to the plan that this file keeps as can be, and say what has moved and why; " +
        "with `--keep` of the same file the new plan takes its place",
    )
    .addOption(todayOption())
    .addOption(readAlsoOption())
    .addOption(inputNameOption())
    .action(async (file: string, options: ScheduleOptions) => ctx.finish(await schedule(ctx, file, options)));
};

async function schedule({ io }: CommandContext, file: string, options: ScheduleOptions): Promise<ExitStatus> {
  const { keep, near } = options;
  if (options.job && (keep ?? near) !== undefined) {
    throw new UsageError(
      "A plan that is kept is that of the shop, and `--job` looks at jobs alone. Leave one of them out.",
    );
  }
  const kept = near === undefined ? undefined : await readKeptPlan(io, near);
  const loaded = await load(io, [file], {
    ...options,
    withProject: true,
    ...(kept ? { kept: keptNotes(kept, nameInPlan(io, near!)) } : {}),
  });
  const asked = askedJobs(loaded, options.job);
  // Who names jobs looks at each of them alone.
  const jobs = options.job
    ? asked.map((job) => ({ ...job, result: loaded.analysis.alone(job.result) }))
    : asked;
  const results = jobs.map(({ result }) => result);
  const helps = new Map(
    results
      .filter(mayBeHelped)
      .filter((result) => options.whatHelps || isLate(result) || result.schedule.status === "impossible")
      .slice(0, options.whatHelps ? results.length : MOST_HELPED)
      .map((result) => [result, whatHelps(loaded.analysis.program, loaded.analysis.alone(result))] as const),
  );
  const shops = options.job ? [] : plannedShops(loaded.analysis, results);
  const all = [...new Set([...results, ...shops.flatMap((shop) => shop.jobs)])];
  const since = kept && sinceKept(kept, all, nameInPlan(io, near!));
  const context = options.job
    ? { helps, inShop: new Map(results.map((result, at) => [result, asked[at]!.result.schedule])) }
    : {
        helps,
        shops,
        ...(since
          ? { first: { text: keptText(since, outputColours(io)), json: { since_kept: keptJson(since) } } }
          : {}),
      };
  if (jobs.length === 0 && loaded.asked.length > 0) {
    warn(io, `\`${file}\` has no jobs to plan. A job begins with \`job NAME {\`.`);
  }
  if (options.format === "ics") writeIcs(io, jobs);
  else if (options.format === "json") io.stdout.write(scheduleJson(results, context));
  else io.stdout.write(scheduleText(results, outputColours(io), context));
  const unkept =
    keep === undefined ? undefined : await writeKeptPlan(io, keep, keptPlanOf(all, nameInPlan(io, keep)));
  if (unkept !== undefined) warn(io, unkept);
  const told = statusOf({ io }, loaded, { what: "plan", jobs: options.job && jobs });
  const status = unkept === undefined ? told : 2;
  const impossible = results.some(({ schedule: plan }) => plan.status === "impossible");
  return status === 0 && impossible ? 1 : status;
}

/** One calendar for all jobs; a job without dates cannot be in it. */
function writeIcs(io: CliIo, jobs: readonly AskedJob[]): void {
  const dated = jobs.filter(({ result }) => isDated(result));
  for (const { result } of jobs.filter((job) => !dated.includes(job))) {
    const kept = unpromised(result);
    const why = kept ? `${kept.reasons.join(", ")}.` : "it needs `start` and `in` (the shop).";
    warn(io, `The job \`${result.job.name}\` has no dates: ${why}`);
  }
  if (dated.length === 0 && jobs.length > 0) throw new UsageError("No dated jobs to export.");
  io.stdout.write(
    calendarReport(
      dated.map(({ result }) => result),
      io.now(),
    ),
  );
}
