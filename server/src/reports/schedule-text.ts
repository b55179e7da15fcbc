/** The plans of jobs as tables for people and as JSON for programs. */

import { dayText, momentText, percentText, printed, timeText, weekdayText } from "../core/measure/figures.ts";
import { exactDuration, formatDuration } from "../core/measure/format-amount.ts";
import { isBeingPlanned } from "../core/schedule/being-planned.ts";
import { sentence } from "../core/sentence.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { jsonText } from "../escape/json.ts";
import { shownText } from "../escape/shown-text.ts";
import { BEING_PLANNED_TEXT, gapsOf } from "../views/missing-inputs.ts";
import { isDated, type PlanLine, planLines } from "../views/schedule/job-plan.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, padEnd } from "./display-text.ts";

export function scheduleText(results: readonly JobResult[], colours: Colours): string {
  return results.map((result) => `${jobText(result, colours)}\n`).join("\n");
}

function jobText(result: JobResult, colours: Colours): string {
  const { job, schedule, totals } = result;
  const title = colours.bold(`${job.name}${job.title ? ` “${shownText(job.title)}”` : ""}`);
  if (schedule.status === "impossible") {
    return [title, ...schedule.conflicts.map(({ reason }) => `  No plan: ${shownText(reason)}.`)].join("\n");
  }
  if (isBeingPlanned(schedule)) return `${title}\n  ${sentence(BEING_PLANNED_TEXT)}.`;
  const missing = isDated(result) ? [] : gapsOf(result, "finish");
  return [
    title,
    ...daysText(planLines(result), colours),
    ...(missing.length > 0 ? [`  No dates: ${missing.join(", ")}.`] : []),
    endLine(result),
    ...(totals.in_service ? [`  In service ${momentText(totals.in_service)}.`] : []),
  ].join("\n");
}

/** What happens to several pieces at the same time, as one row. */
interface PlanRow extends PlanLine {
  readonly which: readonly number[];
}

/** A heading for every day on which something begins, and what begins on it. */
function daysText(lines: readonly PlanLine[], colours: Colours): readonly string[] {
  const rows = rowsOf(lines);
  const cells = rows.map((row) =>
    [timesText(row), surfaceText(row), row.what, slackText(row)].map((cell) => shownText(cell)),
  );
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

function rowsOf(lines: readonly PlanLine[]): readonly PlanRow[] {
  const rows = new Map<string, PlanRow>();
  for (const line of lines) {
    const { start, end, kind, surface, what, slack, critical } = line;
    const key = JSON.stringify([start, end, kind, surface, what, slack, critical]);
    rows.set(key, { ...line, which: [...(rows.get(key)?.which ?? []), line.piece] });
  }
  return [...rows.values()];
}

const dayOf = ({ startAt }: PlanLine): string => (startAt ? dayText(startAt) : "From the start");

/** `09:00 to 09:10`; an end on another day has its weekday, and its date where that may be of another week. */
function timesText({ start, end, startAt, endAt }: PlanLine): string {
  if (!startAt || !endAt) return `${afterText(start)} to ${afterText(end)}`;
  const to = timeText(endAt);
  if (dayText(startAt) === dayText(endAt)) return `${timeText(startAt)} to ${to}`;
  const isNear = end - start < HOURS_OF_SIX_DAYS;
  return `${timeText(startAt)} to ${isNear ? `${weekdayText(endAt)} ${to}` : momentText(endAt)}`;
}

/** Within six days a weekday says which day is meant. */
const HOURS_OF_SIX_DAYS = 144;

const afterText = (hours: number): string => (hours === 0 ? "0 h" : exactDuration(hours));

/** `top`; of several pieces `top, all 4`, `top 1 to 3 of 4` or `top 1, 3 of 4`. */
function surfaceText({ surface, which, pieces }: PlanRow): string {
  if (pieces === 1) return surface;
  if (which.length === pieces) return `${surface}, ${pieces === 2 ? "both" : `all ${pieces}`}`;
  const sorted = which.toSorted((a, b) => a - b);
  const first = sorted[0]!;
  const last = sorted.at(-1)!;
  const run = sorted.length > 2 && last - first === sorted.length - 1;
  return `${surface} ${run ? `${first} to ${last}` : sorted.join(", ")} of ${pieces}`;
}

function slackText({ critical, slack }: PlanLine): string {
  if (critical) return "critical";
  return slack > 0 ? `can slip ${formatDuration(slack)}` : "";
}

function endLine({ schedule, totals }: JobResult): string {
  const elapsed = totals.elapsed_h === null ? "not known" : formatDuration(totals.elapsed_h);
  const end = totals.finish ? `, finished ${momentText(totals.finish)}` : "";
  return `  Elapsed ${elapsed}${end}; ${proofText(schedule)}.`;
}

/** How good the plan is: proven, or within which gap of what is proven. */
function proofText({ exact, lowerBound, gap }: JobResult["schedule"]): string {
  if (exact) return "no plan is shorter";
  return `no plan is shorter than ${formatDuration(lowerBound)} (a gap of ${percentText(gap * 100)})`;
}

export function scheduleJson(results: readonly JobResult[]): string {
  const jobs = results.map((result) => ({
    name: result.job.name,
    status: result.schedule.status,
    start: isDated(result) ? (result.schedule.startAt ?? null) : null,
    finish: result.totals.finish,
    in_service: result.totals.in_service,
    elapsed_h: rounded(result.totals.elapsed_h),
    lower_bound_h: rounded(result.schedule.lowerBound),
    exact: result.schedule.exact,
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
    })),
    conflicts: result.schedule.conflicts.map(({ reason }) => `${sentence(reason)}.`),
  }));
  return jsonText({ jobs });
}

const rounded = (hours: number | null): number | null => (hours === null ? null : printed(hours));
