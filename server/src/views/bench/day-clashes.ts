/**
 * Days on which the jobs of a shop, as each is planned, need more of its people than there are: more hours, or more hands at
 * once. A plan of several jobs books nobody twice; jobs that are planned beside it, or each by itself, may.
 */
import { momentAfter } from "../../core/measure/iso-dates.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { isDated } from "../schedule/job-plan.ts";
import type { ShopSource } from "../schedule/shop-weeks.ts";
import { type LoadDay, loadOfDays } from "./shop-load.ts";

export interface DayClash extends Pick<LoadDay, "hours" | "has" | "crew" | "clash" | "of"> {
  /** ISO date. */
  readonly date: string;
  /** More hours are asked for than there are. */
  readonly isOver: boolean;
}

/** What rounding to minutes and five minutes may make of a full day. */
const ROUNDED_H = 0.25;

/** Of jobs of one shop, in the order of the days. */
export function dayClashes(results: readonly JobResult[], source: ShopSource): readonly DayClash[] {
  const [first, ...others] = results.filter(
    (result) => isDated(result) && result.schedule.startAt !== undefined,
  );
  if (!first || others.length === 0) return [];
  return loadOfDays(first, others, source).flatMap(({ from, hours, has, crew, clash, of }) => {
    const isOver = of.length > 1 && has !== undefined && hours > has + ROUNDED_H;
    if (!isOver && clash === undefined) return [];
    const date = momentAfter(first.schedule.startAt!, Math.round(from * 3600), "minute").slice(0, 10);
    return [
      { date, isOver, hours, crew, of, ...(has === undefined ? {} : { has }), ...(clash ? { clash } : {}) },
    ];
  });
}
