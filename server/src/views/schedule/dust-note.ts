/** What a plan does about dust and wet coats in one room, in words. */
import { shortMomentText, timeText, weekdayText } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { andList } from "../../core/model/suggest.ts";
import { isoAfter } from "../../core/schedule/iso-after.ts";
import type { Dust, DustWork } from "../../core/schedule/types.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { type PlanLine, planLines, rowsOf, surfacesText } from "./job-plan.ts";

/** Less is within what work takes more or less than planned. */
const LEAST_HOURS = 0.5;

/** That dust flies onto wet coats, or what it costs that it does not: one line at most. */
export function dustNote(result: JobResult): readonly string[] {
  const { dust } = result.schedule;
  if (dust === undefined) return [];
  return dust.meetings.length === 0 ? keptApartNote(dust) : [meetingNote(result, dust)];
}

/** Said of the jobs of a shop together as well. */
export function keptApartNote({ meetings, laterHours = 0 }: Dust): readonly string[] {
  if (meetings.length > 0 || laterHours < LEAST_HOURS) return [];
  return [
    `Dusty work waits until wet coats are dry to the touch, which puts off the last work by ${formatDuration(laterHours)}. ` +
      'With dust extraction at the tool it need not: say `"with extraction"` behind the step.',
  ];
}

function meetingNote(result: JobResult, { meetings }: Dust): string {
  const [{ from, wetUntil, dusty, wet }] = meetings as readonly [Dust["meetings"][number]];
  const [at, until] = [isoAfter(result.schedule, from)!, isoAfter(result.schedule, wetUntil)!];
  const again = meetings.length > 1 ? `, and at ${meetings.length - 1} more times` : "";
  const end = `${at.slice(0, 10) === until.slice(0, 10) ? "" : `${weekdayText(until)} `}${timeText(until)}`;
  return (
    `Dust on ${shortMomentText(at)}: ${workText(result, dusty, "work")}, while ${workText(result, wet, "a coat")} is wet until ${end}${again}. ` +
    "Cover what is wet, do it in another room or with dust extraction, and wipe down damp before the next coat."
  );
}

/** `` `sand 180` (seat, all 4) ``, or whose it is. */
function workText(result: JobResult, { items, job }: DustWork, what: string): string {
  if (job !== undefined) return `${what} of ${code(job)}`;
  const ids = new Set(items);
  const lines: readonly PlanLine[] = planLines(result).filter(({ id }) => ids.has(id));
  return andList(rowsOf(lines).map((row) => `${code(row.what)} (${surfacesText(row)})`));
}
