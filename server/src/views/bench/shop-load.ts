/**
 * How the work of all jobs of a shop on a day stands to its hours and its people: the hours of work, the hours that its
 * people are there, and whether more hands are needed at once than there are. That is so where jobs are planned by
 * themselves that may need the same people. Hours are counted from the start of a job.
 */
import { hoursBetween } from "../../core/measure/iso-dates.ts";
import type { Shop } from "../../core/model/model.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { isDated, planLines } from "../schedule/job-plan.ts";
import type { ShopSource } from "../schedule/shop-weeks.ts";
import { titleOf } from "../sheet/words.ts";
import type { BenchDay } from "./model.ts";
import { shopClock } from "./shop-clock.ts";

/** More days than these say nothing to an eye. */
const MOST_DAYS = 60;

interface Work {
  readonly start: number;
  readonly end: number;
  /** Hours of work in it, which set-ups are part of. */
  readonly hours: number;
  /** The same for what one person does. */
  readonly who: string;
  readonly of: JobResult;
  /** Its title. */
  readonly job: string;
}

/** A day with the jobs that something is done for on it. */
export interface LoadDay extends BenchDay {
  readonly of: readonly JobResult[];
}

/** `others`: all other jobs of the shop. */
export const shopLoad = (
  result: JobResult,
  others: readonly JobResult[],
  source: ShopSource,
): readonly BenchDay[] => loadOfDays(result, others, source).map(({ of: _, ...day }) => day);

/** The same with the jobs themselves. */
export function loadOfDays(
  result: JobResult,
  others: readonly JobResult[],
  source: ShopSource,
): readonly LoadDay[] {
  const { shop, schedule } = result;
  const { startAt } = schedule;
  if (!shop || !isDated(result) || startAt === undefined) return [];
  const planOf = plansOf(shop, source);
  const works = [result, ...others].flatMap((each) => worksOf(each, startAt, planOf(each)));
  const midnight = -hoursBetween(`${startAt.slice(0, 10)}T00:00`, startAt);
  const days = new Map<number, Work[]>();
  for (const work of works) {
    for (
      let day = Math.floor((work.start - midnight) / 24);
      midnight + day * 24 < work.end - 1e-9;
      day += 1
    ) {
      days.set(day, [...(days.get(day) ?? []), work]);
    }
  }
  if (days.size > MOST_DAYS) return [];
  const clock = shopClock(shop, startAt, midnight + Math.min(0, ...days.keys()) * 24);
  return [...days]
    .toSorted(([a], [b]) => a - b)
    .map(([day, done]): LoadDay => {
      const from = midnight + day * 24;
      const to = from + 24;
      return {
        from,
        to,
        hours: done.reduce((sum, work) => sum + hoursWithin(work, from, to), 0),
        ...(clock ? { has: clock.openHours(from, to) * shop.crew } : {}),
        crew: shop.crew,
        ...clashOf(done, shop.crew),
        of: [...new Set(done.map(({ of }) => of))],
      };
    });
}

/** Of work that goes on over midnight the share of it. */
const hoursWithin = ({ start, end, hours }: Work, from: number, to: number): number =>
  (hours * (Math.min(end, to) - Math.max(start, from))) / (end - start);

/** Jobs of one plan share its people; every other job has people of its own as far as its plan knows. */
function plansOf(shop: Shop, source: ShopSource): (result: JobResult) => string {
  const numbers = new Map(
    source.shopPlans(shop).plans.flatMap(({ members }, i) => members.map(({ job }) => [job, i] as const)),
  );
  return ({ job }) => String(numbers.get(job) ?? `${job.file} ${job.name}`);
}

function worksOf(result: JobResult, startAt: string, plan: string): readonly Work[] {
  const { schedule } = result;
  if (!isDated(result) || schedule.startAt === undefined) return [];
  const from = hoursBetween(startAt, schedule.startAt);
  if (!Number.isFinite(from)) return [];
  const job = titleOf(result.job);
  const works = schedule.sessions
    ? schedule.sessions.map(({ start, end, hours, person }) => ({
        start,
        end,
        hours,
        who: `${plan} ${person}`,
        of: result,
        job,
      }))
    : planLines(result).flatMap(({ kind, start, end, id }) =>
        kind === "wait"
          ? []
          : [{ start, end, hours: end - start, who: `${plan} ${job} ${id}`, of: result, job }],
      );
  return works
    .filter(({ start, end }) => end > start)
    .map((work) => ({ ...work, start: work.start + from, end: work.end + from }));
}

/** The first time at which more is done at once than there are people, and by which jobs. */
function clashOf(works: readonly Work[], crew: number): Pick<BenchDay, "clash"> {
  for (const { start } of works.toSorted((a, b) => a.start - b.start)) {
    const atOnce = works.filter((each) => each.start <= start + 1e-6 && each.end > start + 1e-6);
    const people = new Set(atOnce.map(({ who }) => who)).size;
    if (people <= crew) continue;
    const to = Math.min(...atOnce.map(({ end }) => end));
    return { clash: { from: start, to, needs: people, jobs: [...new Set(atOnce.map(({ job }) => job))] } };
  }
  return {};
}
