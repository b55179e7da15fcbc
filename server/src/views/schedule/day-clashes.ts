/**
 * Days on which the jobs of a shop, as each is planned, need more hours of its people than there are. A plan of several jobs
 * books nobody twice; jobs that are planned beside it, or each by itself, may.
 */

import type { Shop } from "../../core/model/model.ts";
import { dayMs, dayNumber, hourMs, makeShopTime, openingsBetween } from "../../core/schedule/calendar.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { tasksById } from "../../core/totals/planned-tasks.ts";
import { unpromised } from "../missing-inputs.ts";

export interface DayClash {
  /** ISO date. */
  readonly date: string;
  /** Two at least, in their order. */
  readonly jobs: readonly JobResult[];
  /** Hours of work, and of the shop's people together. */
  readonly needed: number;
  readonly open: number;
}

/** What rounding to minutes and five minutes may make of a full day. */
const ROUNDED_H = 0.25;

/** In the order of the days; none where the shop states no hours. */
export function dayClashes(shop: Shop, results: readonly JobResult[]): readonly DayClash[] {
  if (!shop.hours) return [];
  const days = new Map<number, Map<JobResult, number>>();
  for (const result of results) {
    const from = startOf(result);
    if (from === undefined || unpromised(result)) continue;
    const tasks = tasksById(result.runs);
    for (const { id, start, end, workEnd = end, pauses, done } of result.schedule.items)
      if (!done && tasks.get(id)?.action.op !== "wait")
        for (const [day, hours] of hoursByDay(from, start, workEnd, pauses)) {
          const ofDay = days.get(day) ?? new Map<JobResult, number>();
          days.set(day, ofDay.set(result, (ofDay.get(result) ?? 0) + hours));
        }
  }
  const first = Math.min(...days.keys());
  const time = days.size > 0 ? makeShopTime({ hours: shop.hours, closed: shop.closed }, first) : undefined;
  return [...days]
    .toSorted(([a], [b]) => a - b)
    .flatMap(([day, ofDay]): readonly DayClash[] => {
      const at = (day - first) * dayMs;
      const openings = openingsBetween(time!, at, at + dayMs, MOST_OPENINGS) ?? [];
      const open =
        shop.crew * openings.reduce((sum, { opens, closes }) => sum + (closes - opens) / hourMs, 0);
      const needed = [...ofDay.values()].reduce((sum, hours) => sum + hours, 0);
      if (ofDay.size < 2 || needed <= open + ROUNDED_H) return [];
      const date = new Date(day * dayMs).toISOString().slice(0, 10);
      return [{ date, jobs: [...ofDay.keys()], needed, open }];
    });
}

/** In one day. */
const MOST_OPENINGS = 50;

/** Hours since 1970-01-01, by the shop's clock. */
function startOf({ schedule: { startAt } }: JobResult): number | undefined {
  const day = startAt === undefined ? undefined : dayNumber(startAt.slice(0, 10));
  return day === undefined ? undefined : Date.parse(`${startAt!}Z`) / hourMs;
}

/** The hours of work in each day, counted from 1970-01-01. */
function hoursByDay(
  from: number,
  start: number,
  end: number,
  pauses: readonly { readonly start: number; readonly end: number }[],
): ReadonlyMap<number, number> {
  const days = new Map<number, number>();
  for (let day = Math.floor((from + start) / 24); day * 24 < from + end; day += 1) {
    const within = (a: number, b: number): number =>
      Math.max(0, Math.min(from + b, day * 24 + 24) - Math.max(from + a, day * 24));
    const paused = pauses.reduce((sum, pause) => sum + within(pause.start, pause.end), 0);
    days.set(day, within(start, end) - paused);
  }
  return days;
}
