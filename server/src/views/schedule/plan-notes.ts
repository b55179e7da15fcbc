/**
 * What a person should know of the hours of a plan, where it matters: a start while the shop is closed, a shop that says
 * no hours, the night in spring in which the clocks go forward, and dust where coats are wet.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { clocksForward } from "../../core/knowledge/clock-changes.ts";
import { dayText, momentText } from "../../core/measure/figures.ts";
import { dayAfter, momentAfter } from "../../core/measure/iso-dates.ts";
import { andList } from "../../core/model/suggest.ts";
import { closedHoursAt } from "../../core/schedule/calendar.ts";
import { materialsInTheCold } from "../../core/surface/cold-layers.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { dustNote } from "./dust-note.ts";

/** Sentences with names in backticks; none for a job without a plan or without dates. */
export function planNotes(result: JobResult): readonly string[] {
  const { schedule, shop, job } = result;
  if (schedule.status !== "planned" || !shop || !job.start || schedule.startAt === undefined) return [];
  if (schedule.items.length === 0) return [];
  return [
    ...startNote(result),
    ...hoursNote(result),
    ...coldNote(result),
    ...clockNote(result),
    ...dustNote(result),
  ];
}

/** The day of the start is closed, or its hour comes after closing. */
function startNote({ job, shop }: JobResult): readonly string[] {
  if (!shop!.hours && shop!.closed.length === 0) return [];
  const { date, time } = job.start!;
  const at = time === "24:00" ? `${dayAfter(date)}T00:00` : `${date}T${time ?? "00:00"}`;
  const closed = closedHoursAt({ closed: shop!.closed, ...(shop!.hours ? { hours: shop!.hours } : {}) }, at);
  if (!Number.isFinite(closed) || closed === 0) return [];
  const opens = momentAfter(at, Math.round(closed * 60) * 60, "minute");
  if (opens.slice(0, 10) === at.slice(0, 10)) return [];
  const said = time === undefined ? dayText(date) : momentText(`${date}T${time}`);
  return [t`\`start\` is ${said}, when \`${shop!.name}\` is closed; it opens ${momentText(opens)}.`];
}

function hoursNote({ shop }: JobResult): readonly string[] {
  if (shop!.hours) return [];
  return [
    t`\`${shop!.name}\` states no \`hours\`, so work is planned at any hour, by night and on Sundays too.`,
  ];
}

/** In air that is colder than a label bears, a film may never form, whatever the plan says. */
export function coldNote({ shop, runs }: JobResult): readonly string[] {
  const cold = runs.flatMap(materialsInTheCold).map(({ name }) => `\`${name}\``);
  if (!shop || cold.length === 0) return [];
  return [
    t`\`${shop.name}\` is too cold for ${andList([...new Set(cold)])}: it may dry late or never, so do not rely on these dates.`,
  ];
}

/** Longer than this an hour less makes no difference that anybody could see. */
const MOST_HOURS = 48;

/** Of waits and work that go on while the clocks go forward: an hour of it is on the clock alone. */
function clockNote({ shop, schedule }: JobResult): readonly string[] {
  const country = shop!.country?.value;
  if (country === undefined) return [];
  const days = new Set<string>();
  for (const { start, end, startAt, endAt } of schedule.items) {
    if (!startAt || !endAt || end - start > MOST_HOURS) continue;
    const change = clocksForward(country, Number(endAt.slice(0, 4)));
    if (change !== undefined && startAt < change && endAt > change) days.add(change.slice(0, 10));
  }
  return [...days].map(
    (day) =>
      t`The clocks go forward on ${dayText(day)}: what waits through that night has an hour less than the plan shows.`,
  );
}
