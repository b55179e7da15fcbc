/** The plans of jobs as tables for people and as JSON for programs. */

import { t } from "../../../grammar/src/translate.ts";
import { dayText, momentText, printed, timeText, weekdayText } from "../core/measure/figures.ts";
import { exactDuration, formatDuration } from "../core/measure/format-amount.ts";
import { isBeingPlanned } from "../core/schedule/being-planned.ts";
import { conflictText } from "../core/schedule/conflict-text.ts";
import type { Schedule } from "../core/schedule/types.ts";
import { sentence } from "../core/sentence.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import type { Help } from "../core/what-helps.ts";
import { jsonText } from "../escape/json.ts";
import { shownText } from "../escape/shown-text.ts";
import { beingPlannedText, gapsOf, noDateText, unpromised } from "../views/missing-inputs.ts";
import { aloneSentences, amongSentences, othersAmong } from "../views/schedule/among.ts";
import { helpJson, helpText, isLate } from "../views/schedule/helps.ts";
import { dateReasons, fewestCoatJobDates, jobDates } from "../views/schedule/job-dates.ts";
import {
  inSessions,
  isDated,
  type PlanLine,
  type PlanRow,
  planLines,
  planRows,
  rowOf,
  sessionRows,
  surfacesText,
} from "../views/schedule/job-plan.ts";
import { planNotes } from "../views/schedule/plan-notes.ts";
import type { PlannedShop } from "../views/schedule/shop-weeks.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, padEnd } from "./display-text.ts";
import { overAirText, proofText } from "./proof-text.ts";
import { shopJson, shopText } from "./shop-text.ts";

/** Beside the jobs themselves. */
export interface ScheduleContext {
  /** Shops whose weeks are shown in the place of the days of their jobs. */
  readonly shops?: readonly PlannedShop[];
  /** Of jobs that are looked at alone, their part in the plans of their shops. */
  readonly inShop?: ReadonlyMap<JobResult, Schedule>;
  /** What would let a job end earlier, where that was asked or the job is late. */
  readonly helps?: ReadonlyMap<JobResult, readonly Help[]>;
  /** What stands first, as text and as more of the JSON. */
  readonly first?: { readonly text: string; readonly json: Readonly<Record<string, unknown>> };
}

export function scheduleText(
  results: readonly JobResult[],
  colours: Colours,
  { shops = [], inShop, helps, first }: ScheduleContext = {},
): string {
  const inWeeks = new Set(shops.flatMap(({ jobs }) => jobs));
  const parts = [
    ...(first ? [first.text] : []),
    ...results
      .filter((result) => !inWeeks.has(result))
      .map((result) => `${jobText(result, inShop?.get(result), helps?.get(result), colours)}\n`),
    ...shops.map((shop) => shopText(shop, colours)),
    ...[...inWeeks].map(
      (result) =>
        `${[
          titleOf(result, colours),
          ...withHelps(result, helps?.get(result), [
            ...(unpromised(result)
              ? noDateLines(result)
              : [...endLines(result), ...amongText(result, undefined)]),
            ...notesText(result),
          ]),
        ].join("\n")}\n`,
    ),
  ];
  return parts.join("\n");
}

const titleOf = ({ job }: JobResult, colours: Colours): string =>
  colours.bold(`${job.name}${job.title ? ` “${shownText(job.title)}”` : ""}`);

function jobText(
  result: JobResult,
  inShop: Schedule | undefined,
  helps: readonly Help[] | undefined,
  colours: Colours,
): string {
  const { schedule } = result;
  const title = titleOf(result, colours);
  if (schedule.status === "impossible") {
    const reasons = schedule.conflicts.map(
      ({ reason }) => `  ${t`No plan: ${shownText(conflictText(reason))}.`}`,
    );
    return [title, ...withHelps(result, helps, reasons)].join("\n");
  }
  if (isBeingPlanned(schedule)) return `${title}\n  ${sentence(beingPlannedText())}.`;
  const kept = noDateLines(result);
  const missing = isDated(result) || kept.length > 0 ? [] : gapsOf(result, "finish");
  const lines = [
    ...kept,
    ...daysText(planRows(result), colours),
    ...(missing.length > 0 ? [`  ${t`No dates: ${missing.join(", ")}.`}`] : []),
    ...airText(schedule),
    ...(kept.length > 0 ? [] : [...endLines(result), ...amongText(result, inShop)]),
    ...notesText(result),
  ];
  return [title, ...withHelps(result, helps, lines)].join("\n");
}

/** Before all else why nothing can be promised; empty where dates may be told. */
function noDateLines(result: JobResult): readonly string[] {
  const kept = unpromised(result);
  return kept ? [`  ${sentence(noDateText())}: ${shownText(kept.reasons.join(", "))}.`] : [];
}

/** What would help comes first where the job is late, and last where it was only asked. */
function withHelps(
  result: JobResult,
  helps: readonly Help[] | undefined,
  lines: readonly string[],
): readonly string[] {
  if (helps === undefined) return lines;
  const list =
    helps.length === 0
      ? [
          `  ${t`Nothing was found that lets it end earlier: no hour more, nobody more, no warmer air, no other material.`}`,
        ]
      : [
          `  ${t`What would help, each by itself, with the job alone in its shop:`}`,
          ...helps.map((help) => `    ${shownText(helpText(help))}.`),
        ];
  const { ready } = result.job;
  if (ready === undefined || !isLate(result)) return [...lines, ...list];
  const wanted = momentText(ready.time === undefined ? ready.date : `${ready.date}T${ready.time}`);
  return [`  ${t`Wanted by ${wanted}, and not done by then.`}`, ...list, ...lines];
}

/** A heading for every day on which something begins, and what begins on it. */
function daysText(all: readonly PlanRow[], colours: Colours): readonly string[] {
  const sessions = inSessions(all);
  const rows = sessions.map(rowOf);
  const cells = rows.map((row, at) => {
    const where = [...new Set(sessions[at]!.map(surfacesText))].join(" | ");
    const what = sessions[at]!.map((each) => each.what).join(" | ");
    return [timesText(row), where, what, slackText(row)].map((cell) => shownText(cell));
  });
  const widths = [0, 1, 2].map((column) => Math.max(0, ...cells.map((row) => displayWidth(row[column]!))));
  return rows.flatMap((row, i) => {
    const text = cells[i]!.map((cell, column) => padEnd(cell, widths[column] ?? 0))
      .join("  ")
      .trimEnd();
    const day = dayOf(row);
    const heading = i === 0 || day !== dayOf(rows[i - 1]!) ? [`  ${colours.bold(day)}`] : [];
    return [...heading, `    ${row.kind === "wait" ? colours.dim(text) : text}`];
  });
}

const dayOf = ({ startAt }: PlanLine): string => (startAt ? dayText(startAt) : t`From the start`);

/** `09:00 to 09:10`; an end on another day has its weekday, and its date where that may be of another week. */
function timesText({ start, end, startAt, endAt }: PlanLine): string {
  if (!startAt || !endAt) return t`${afterText(start)} to ${afterText(end)}`;
  const to = timeText(endAt);
  if (dayText(startAt) === dayText(endAt)) return t`${timeText(startAt)} to ${to}`;
  const isNear = end - start < HOURS_OF_SIX_DAYS;
  return t`${timeText(startAt)} to ${isNear ? `${weekdayText(endAt)} ${to}` : momentText(endAt)}`;
}

/** Within six days a weekday says which day is meant. */
const HOURS_OF_SIX_DAYS = 144;

const afterText = (hours: number): string => (hours === 0 ? "0 h" : exactDuration(hours));

function slackText({ critical, slack, done }: PlanLine): string {
  if (done) return t`done`;
  if (critical) return t`critical`;
  return slack > 0 ? t`can slip ${formatDuration(slack)}` : "";
}

/** What the other jobs of its shop do to the job. */
const amongText = ({ schedule }: JobResult, inShop: Schedule | undefined): readonly string[] =>
  (inShop === undefined ? amongSentences(schedule) : aloneSentences(inShop)).map((text) => `  ${text}`);

/** What is to be known of the plan's hours. */
const notesText = (result: JobResult): readonly string[] =>
  planNotes(result).map((note) => `  ${shownText(note)}`);

/** That sessions are smaller or later for the sake of the room's air, or that they are not. */
function airText({ heldByAir, overAir }: Schedule): readonly string[] {
  if (overAir !== undefined) return [overAirText(overAir)];
  if (heldByAir === undefined) return [];
  if (heldByAir === "usual")
    return [`  ${t`Sessions are kept small so that the room's air carries the vapour away.`}`];
  return [
    `  ${t`Sessions are kept small for the room's air, by the strictest solvent that may be meant: name it to have larger ones.`}`,
  ];
}

/** The dates that people ask for in the order in which they come, or without dates how long it takes; how good the plan is. */
function endLines(result: JobResult): readonly string[] {
  const { schedule, totals } = result;
  if (totals.finish === null) {
    // A plan of a part of the work proves nothing of the whole.
    if (totals.elapsed_h === null) return [`  ${t`How long it takes is not known.`}`];
    return [`  ${t`Elapsed ${formatDuration(totals.elapsed_h)}; ${proofText(schedule, result.shop)}.`}`];
  }
  const [first, ...dates] = jobDates(result).map(
    ({ name, text, reason }) => `  ${sentence(`${name} ${text}: ${shownText(reason)}`)}`,
  );
  // What holds it up in its shop is said below.
  const proof = schedule.among?.laterHours ? "" : `; ${proofText(schedule, result.shop)}`;
  return [`${first!}${proof}.`, ...dates.map((date) => `${date}.`), ...fewestText(result)];
}

function fewestText(result: JobResult): readonly string[] {
  const dates = fewestCoatJobDates(result);
  return dates
    ? [`  ${t`With the fewest coats ${dates.map(({ name, text }) => `${name} ${text}`).join(", ")}.`}`]
    : [];
}

function fewestJson(result: JobResult) {
  const dates = fewestCoatJobDates(result);
  return dates ? Object.fromEntries(dates.map(({ field, at }) => [field, at ?? null])) : null;
}

export function scheduleJson(
  results: readonly JobResult[],
  { shops = [], inShop, helps, first }: ScheduleContext = {},
): string {
  const jobs = results.map((result) => ({
    ...jobJson(result, inShop?.get(result)),
    what_helps: helps?.get(result)?.map(helpJson) ?? null,
  }));
  return jsonText({ jobs, shops: shops.map(shopJson), ...first?.json });
}

function jobJson(result: JobResult, inShop: Schedule | undefined) {
  return {
    name: result.job.name,
    status: result.schedule.status,
    start: isDated(result) ? (result.schedule.startAt ?? null) : null,
    finish: result.totals.finish,
    in_service: result.totals.in_service,
    elapsed_h: rounded(result.totals.elapsed_h),
    last_work: result.totals.last_work,
    light_use: result.totals.light_use,
    full_use: result.totals.full_use,
    reasons: dateReasons(result),
    notes: planNotes(result),
    fewest_coats: fewestJson(result),
    last_work_h: rounded(result.schedule.lastWorkHours ?? null),
    lower_bound_h: rounded(result.schedule.lowerBound),
    exact: result.schedule.exact,
    held_by_air: result.schedule.heldByAir !== undefined,
    items: planLines(result).map((line) => ({
      surface: line.surface,
      piece: line.piece,
      kind: line.kind,
      what: line.what,
      start: line.startAt ?? null,
      end: line.endAt ?? null,
      start_h: rounded(line.start),
      end_h: rounded(line.end),
      slack_h: rounded(line.slack),
      critical: line.critical,
      done: line.done === true,
    })),
    sessions: sessionsJson(result),
    shop_plan: amongJson(inShop ?? result.schedule),
    looks_alone: inShop !== undefined,
    conflicts: result.schedule.conflicts.map(({ reason }) => `${sentence(conflictText(reason))}.`),
  };
}

/** Null where the job is planned by itself. */
const amongJson = ({ among, lastWorkAt }: Schedule) =>
  among === undefined
    ? null
    : {
        with: othersAmong(among),
        last_work: lastWorkAt ?? null,
        later_h: rounded(among.laterHours),
        held_by: among.heldBy.map(({ job, hours, why }) => ({ job, hours: rounded(hours), why })),
        in_order: among.inOrder === true,
      };

/** What is done in one go, by whom; empty where the plan has no sessions. */
function sessionsJson(result: JobResult) {
  const rows = sessionRows(result);
  return (result.schedule.sessions ?? []).map(({ start, end, hours, person }, session) => ({
    start_h: rounded(start),
    end_h: rounded(end),
    hands_on_h: rounded(hours),
    person: person + 1,
    does: (rows.get(session) ?? []).map(({ what, surfaces }) => ({
      what,
      surfaces: surfaces.map(({ surface, which }) => ({ surface, pieces: which })),
    })),
  }));
}

const rounded = (hours: number | null): number | null => (hours === null ? null : printed(hours));
