/** `schedule`: when every task and wait of a job begins and ends. */

import path from "node:path";
import { hoursSinceOpen } from "../../core/schedule/calendar.ts";
import { isoAfter } from "../../core/schedule/iso-after.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { whatHelps } from "../../core/what-helps.ts";
import { type IcsAlarm, type IcsItem, planToIcs } from "../../reports/ics.ts";
import { keptJson, keptText } from "../../reports/kept-text.ts";
import { scheduleJson, scheduleText } from "../../reports/schedule-text.ts";
import { isLate } from "../../views/schedule/helps.ts";
import { jobDates } from "../../views/schedule/job-dates.ts";
import {
  inSessions,
  isDated,
  type PlanRow,
  planRows,
  rowOf,
  surfacesText,
} from "../../views/schedule/job-plan.ts";
import { keptNotes, keptPlanOf, sinceKept } from "../../views/schedule/kept-plan.ts";
import { planNotes } from "../../views/schedule/plan-notes.ts";
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

/** When what it waited for is over, and an hour before its window closes, or before the shop does for the last time in it. */
function alarmsOf(result: JobResult, { what, waited, start, closes }: PlanRow): readonly IcsAlarm[] {
  const left = closes === undefined ? undefined : closes - closedHours(result, closes) - start;
  return [
    ...(waited ? [{ text: `The wait is over: ${what}`, afterMin: 0 }] : []),
    ...(left === undefined
      ? []
      : [{ text: `One hour left to put it on: ${what}`, afterMin: Math.max(0, left * 60 - 60) }]),
  ];
}

/** For how long the shop has been closed at a moment of the plan, hours. */
function closedHours({ shop, schedule: plan }: JobResult, hours: number): number {
  const at = isoAfter(plan, hours);
  if (!shop?.hours || at === undefined) return 0;
  return hoursSinceOpen({ hours: shop.hours, closed: shop.closed }, at);
}

/** From when on a piece may be used: what nobody works on, but the owner waits for. */
const useMoments = (result: JobResult, nameOfJob: string): readonly IcsItem[] =>
  jobDates(result).flatMap(({ field, name, at, reason }) =>
    at === undefined || field === "last_work"
      ? []
      : [
          {
            uid: `${encodeURIComponent(`${nameOfJob}-${field}`)}@finishwright`,
            title: `${name[0]!.toUpperCase()}${name.slice(1)} from now on: ${titleOf(result)}`,
            description: reason.replaceAll("`", ""),
            startAt: at,
            isMoment: true,
            alarms: [{ text: `${titleOf(result)}: ${name} from now on`, afterMin: 0 }],
          },
        ],
  );

const titleOf = ({ job }: JobResult): string => job.title ?? job.name;

/**
 * Names for the events of a job by what is done to which surface, the how many-th time: a line that is added before, or
 * one more coat, leaves the names of the others, so that a second import moves events and doubles none.
 */
function uidsOf(job: string): (row: PlanRow) => string {
  const times = new Map<string, number>();
  return ({ id, what }) => {
    const surface = id.slice(0, id.lastIndexOf("#"));
    const name = `${job}-${surface}-${what.replace(/ of \d+/u, "")}`;
    const time = (times.get(name) ?? 0) + 1;
    times.set(name, time);
    return `${encodeURIComponent(`${name}-${time}`)}@finishwright`;
  };
}

/** The name of a job, with that of its file where another of these has the same. */
function nameAmong({ job }: JobResult, all: readonly AskedJob[]): string {
  const isAlone = all.every(({ result }) => result.job === job || result.job.name !== job.name);
  return isAlone ? job.name : `${path.basename(job.file)}:${job.name}`;
}

/** One calendar for all jobs; a job without dates cannot be in it. */
function writeIcs(io: CliIo, jobs: readonly AskedJob[]): void {
  const dated = jobs.filter(({ result }) => isDated(result));
  for (const { result } of jobs.filter((job) => !dated.includes(job))) {
    warn(io, `The job \`${result.job.name}\` has no dates: it needs \`start\` and \`in\` (the shop).`);
  }
  if (dated.length === 0 && jobs.length > 0) throw new UsageError("No dated jobs to export.");
  const items = dated.flatMap(({ result }) => {
    const nameOfJob = nameAmong(result, dated);
    const uidOf = uidsOf(nameOfJob);
    // Who looks into a calendar wants to know when to work: a wait is in it as what ends it.
    const rows = planRows(result).filter(({ kind, start, end }) => kind !== "wait" && end > start);
    const events = inSessions(rows).map((session): IcsItem => {
      const uids = session.map(uidOf);
      const { startAt, endAt } = rowOf(session);
      return {
        uid: uids[0]!,
        title: session.map((row) => `${row.what} (${surfacesText(row)})`).join(" | "),
        description: titleOf(result),
        alarms: session.flatMap((row) => alarmsOf(result, row)),
        ...(startAt ? { startAt } : {}),
        ...(endAt ? { endAt } : {}),
      };
    });
    return [...events, ...useMoments(result, nameOfJob)];
  });
  const name = dated.map(({ result }) => titleOf(result)).join(", ");
  const notes = [
    ...new Set(dated.flatMap(({ result }) => planNotes(result).map((note) => `${titleOf(result)}: ${note}`))),
  ];
  const description = notes.join("\n").replaceAll("`", "");
  io.stdout.write(planToIcs({ name: name || "Finishwright", description, items, stamp: io.now() }));
}
