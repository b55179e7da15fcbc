/** The work of jobs as a calendar file: an event for each session, reminders, and from when on a piece may be used. */
import { t } from "../../../grammar/src/translate.ts";
import { hoursSinceOpen } from "../core/schedule/calendar.ts";
import { isoAfter } from "../core/schedule/iso-after.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { jobDates } from "../views/schedule/job-dates.ts";
import { inSessions, type PlanRow, planRows, rowOf, surfacesText } from "../views/schedule/job-plan.ts";
import { planNotes } from "../views/schedule/plan-notes.ts";
import { type IcsAlarm, type IcsItem, planToIcs } from "./ics.ts";

/** All jobs must have dates. `stamp`: when it is made, an ISO date-time in UTC. */
export function calendarReport(dated: readonly JobResult[], stamp: string): string {
  const items = dated.flatMap((result) => {
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
  const name = dated.map(titleOf).join(", ");
  const notes = [
    ...new Set(dated.flatMap((result) => planNotes(result).map((note) => `${titleOf(result)}: ${note}`))),
  ];
  const description = notes.join("\n").replaceAll("`", "");
  return planToIcs({ name: name || "Finishwright", description, items, stamp });
}

/** The name of a job, with that of its file where another of these has the same. */
function nameAmong({ job }: JobResult, all: readonly JobResult[]): string {
  const isAlone = all.every((result) => result.job === job || result.job.name !== job.name);
  return isAlone ? job.name : `${job.file.split(/[\\/]/u).at(-1)}:${job.name}`;
}

/** When what it waited for is over, and an hour before its window closes, or before the shop does for the last time in it. */
function alarmsOf(result: JobResult, { what, waited, start, closes }: PlanRow): readonly IcsAlarm[] {
  const left = closes === undefined ? undefined : closes - closedHours(result, closes) - start;
  return [
    ...(waited ? [{ text: t`The wait is over: ${what}`, afterMin: 0 }] : []),
    ...(left === undefined
      ? []
      : [{ text: t`One hour left to put it on: ${what}`, afterMin: Math.max(0, left * 60 - 60) }]),
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
            title: t`${`${name[0]!.toUpperCase()}${name.slice(1)}`} from now on: ${titleOf(result)}`,
            description: reason.replaceAll("`", ""),
            startAt: at,
            isMoment: true,
            alarms: [{ text: t`${titleOf(result)}: ${name} from now on`, afterMin: 0 }],
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
