/** The plans of jobs as tables for people and as JSON for programs. */
import type { JobResult } from "../core/totals/job-totals.ts";
import { gapsOf } from "../features/job-gaps.ts";
import { isDated, type PlanLine, planLines } from "../features/job-plan.ts";
import { hoursText, momentText } from "../features/spoken.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, padEnd, shownText } from "./display-text.ts";

export function scheduleText(results: readonly JobResult[], colours: Colours): string {
  return results.map((result) => `${jobText(result, colours)}\n`).join("\n");
}

function jobText(result: JobResult, colours: Colours): string {
  const { job, schedule, totals } = result;
  const title = colours.bold(`${job.name}${job.title ? ` “${shownText(job.title)}”` : ""}`);
  if (schedule.status === "impossible") {
    return [title, ...schedule.conflicts.map(({ message }) => `  No plan: ${shownText(message)}`)].join("\n");
  }
  const lines = planLines(result);
  const rows = lines.map((line) => [
    startText(line),
    endText(line),
    surfaceText(line),
    line.what,
    line.critical ? "critical" : line.slack > 0 ? `can slip ${hoursText(line.slack)}` : "",
  ]);
  const widths = [0, 1, 2, 3].map((column) =>
    Math.max(0, ...rows.map((row) => displayWidth(shownText(row[column]!)))),
  );
  const table = rows.map((row, i) => {
    const text = row.map((cell, column) => padEnd(shownText(cell), widths[column] ?? 0)).join("  ");
    return `  ${lines[i]!.kind === "wait" ? colours.dim(text.trimEnd()) : text.trimEnd()}`;
  });
  const missing = isDated(result) ? [] : gapsOf(result, "finish");
  return [
    title,
    ...table,
    ...(missing.length > 0 ? [`  No dates: ${missing.join(", ")}.`] : []),
    endLine(result),
    ...(totals.in_service ? [`  In service ${momentText(totals.in_service)}.`] : []),
  ].join("\n");
}

function endLine({ schedule, totals }: JobResult): string {
  const elapsed = totals.elapsed_h === null ? "not known" : hoursText(totals.elapsed_h);
  const end = totals.finish ? `, finished ${momentText(totals.finish)}` : "";
  const proof = schedule.exact
    ? "no plan is shorter"
    : `no plan is shorter than ${hoursText(schedule.lowerBound)}`;
  return `  Elapsed ${elapsed}${end}; ${proof}.`;
}

const startText = ({ startAt, start }: PlanLine): string =>
  startAt ? momentText(startAt) : afterText(start);

function endText({ startAt, endAt, end }: PlanLine): string {
  if (!endAt) return `to ${afterText(end)}`;
  const text = momentText(endAt);
  return `to ${startAt?.slice(0, 10) === endAt.slice(0, 10) ? text.slice(-5) : text}`;
}

const afterText = (hours: number): string => (hours === 0 ? "the start" : `+ ${hoursText(hours)}`);

const surfaceText = ({ surface, piece, pieces }: PlanLine): string =>
  pieces > 1 ? `${surface} ${piece}/${pieces}` : surface;

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
    conflicts: result.schedule.conflicts.map(({ message }) => message),
  }));
  return `${JSON.stringify({ jobs }, null, 2)}\n`;
}

const rounded = (hours: number | null): number | null =>
  hours === null ? null : Math.round(hours * 1e6) / 1e6;
