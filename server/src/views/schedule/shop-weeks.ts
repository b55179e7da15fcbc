/** What is done in a shop, week by week: the sessions of all its jobs in the order of time, without what is only waited for. */
import type { Job, Shop } from "../../core/model/model.ts";
import type { FileId } from "../../core/place.ts";
import { isoAfter } from "../../core/schedule/iso-after.ts";
import type { ShopPlans } from "../../core/schedule/shop/plan-shop.ts";
import { keyAt, splitKey } from "../../core/schedule/shop/shop-input.ts";
import type { PlannedSession, Schedule } from "../../core/schedule/types.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { JobInShop } from "../../core/totals/shop-plans.ts";
import { unpromised } from "../missing-inputs.ts";
import { type PlanLine, type PlanRow, planLines, rowsOf } from "./job-plan.ts";

/** A shop in which several jobs are planned together. */
export interface PlannedShop {
  readonly shop: Shop;
  /** All jobs whose work is in the weeks, in the order in which they begin. */
  readonly jobs: readonly JobResult[];
  /** Each plan of jobs that share the people, in the order of time. */
  readonly plans: readonly {
    readonly jobs: readonly JobResult[];
    readonly schedule: Schedule;
    /** Of those of its jobs that have dates; a local ISO date-time. */
    readonly lastWorkAt?: string;
  }[];
  /** Jobs of the shop that are planned by themselves and may need its people at the same time. */
  readonly leftOut: readonly Job[];
  readonly weeks: readonly ShopWeek[];
}

export interface ShopWeek {
  /** ISO date. */
  readonly monday: string;
  readonly sessions: readonly ShopSession[];
}

/** Work of one person in one go. */
export interface ShopSession {
  /** Local ISO date-times. */
  readonly startAt: string;
  readonly endAt: string;
  /** From 1. */
  readonly person: number;
  /** Hours of work. */
  readonly hours: number;
  /** In order, each of one job. */
  readonly does: readonly { readonly job: string; readonly row: PlanRow; readonly closesAt?: string }[];
}

/** What is asked for the weeks of shops. */
export interface ShopSource {
  shopPlans(shop: Shop): ShopPlans<JobInShop>;
  /** The jobs of a file. */
  jobs(file: FileId): readonly JobResult[];
}

/** The shops of these jobs in which several are planned together, once each; none whose plans are still being made. */
export function plannedShops(source: ShopSource, results: readonly JobResult[]): readonly PlannedShop[] {
  const shops = new Set(results.flatMap(({ shop, job }) => (shop && job.start ? [shop] : [])));
  return [...shops].flatMap((shop): readonly PlannedShop[] => {
    const { plans, singles, leftOut, pending } = source.shopPlans(shop);
    const resultOf = ({ job }: JobInShop): readonly JobResult[] =>
      source.jobs(job.file).filter((result) => result.job === job);
    if (plans.length === 0 || pending.size > 0) return [];
    const together = plans.map(({ members, schedule }) => {
      const jobs = members.flatMap(resultOf);
      const at = lastWorkOf(jobs, schedule);
      return { jobs, schedule, ...(at === undefined ? {} : { lastWorkAt: at }) };
    });
    const apart = singles.flatMap(resultOf);
    const sessions = [...together.flatMap(sessionsOfPlan), ...apart.flatMap(sessionsOfJob)];
    return [
      {
        shop,
        jobs: [...together.flatMap(({ jobs }) => jobs), ...apart].toSorted(byStart),
        plans: together,
        leftOut: leftOut.map(({ job }) => job),
        // What a job takes of the hours without a date that can be promised is nobody's to look up.
        weeks: weeksOf(sessions.filter(({ does }) => does.length > 0)),
      },
    ];
  });
}

function lastWorkOf(jobs: readonly JobResult[], schedule: Schedule): string | undefined {
  if (jobs.every((result) => unpromised(result) === undefined)) return schedule.lastWorkAt;
  return jobs
    .flatMap(({ totals }) => totals.last_work ?? [])
    .toSorted()
    .at(-1);
}

const byStart = (a: JobResult, b: JobResult): number =>
  (a.schedule.startAt ?? "") < (b.schedule.startAt ?? "") ? -1 : 1;

/** `jobs` as they stand in the plan. */
function sessionsOfPlan({ jobs, schedule }: PlannedShop["plans"][number]): readonly ShopSession[] {
  const known = new Map(jobs.map((result, place) => [keyAt(place), { result, lines: linesOf(result) }]));
  return (schedule.sessions ?? []).map((session) =>
    shopSession(schedule, session, (id) => {
      const [key, own] = splitKey(id);
      const of = known.get(key);
      const line = of?.lines.get(own);
      return of && line ? { result: of.result, line } : undefined;
    }),
  );
}

function sessionsOfJob(result: JobResult): readonly ShopSession[] {
  const lines = linesOf(result);
  if (result.schedule.startAt === undefined) return [];
  return (result.schedule.sessions ?? []).map((session) =>
    shopSession(result.schedule, session, (id) => {
      const line = lines.get(id);
      return line && { result, line };
    }),
  );
}

const linesOf = (result: JobResult): ReadonlyMap<string, PlanLine> =>
  new Map(unpromised(result) ? [] : planLines(result).map((line) => [line.id, line]));

interface Done {
  readonly result: JobResult;
  readonly line: PlanLine;
}

function shopSession(
  schedule: Schedule,
  { start, end, person, hours, items }: PlannedSession,
  find: (id: string) => Done | undefined,
): ShopSession {
  const byJob = new Map<JobResult, PlanLine[]>();
  for (const id of items) {
    const done = find(id);
    if (done === undefined) continue;
    const lines = byJob.get(done.result);
    if (lines === undefined) byJob.set(done.result, [done.line]);
    else lines.push(done.line);
  }
  return {
    startAt: isoAfter(schedule, start)!,
    endAt: isoAfter(schedule, end)!,
    person: person + 1,
    hours,
    does: [...byJob].flatMap(([result, lines]) =>
      rowsOf(lines).map((row) => ({
        job: result.job.name,
        row,
        ...(row.closes === undefined ? {} : { closesAt: isoAfter(result.schedule, row.closes)! }),
      })),
    ),
  };
}

const DAY_MS = 86_400_000;

function weeksOf(sessions: readonly ShopSession[]): readonly ShopWeek[] {
  const weeks = new Map<string, ShopSession[]>();
  const inOrder = sessions.toSorted(
    (a, b) => compare(a.startAt, b.startAt) || a.person - b.person || compare(a.endAt, b.endAt),
  );
  for (const session of inOrder) {
    const monday = mondayOf(session.startAt);
    const week = weeks.get(monday);
    if (week === undefined) weeks.set(monday, [session]);
    else week.push(session);
  }
  return [...weeks].map(([monday, done]) => ({ monday, sessions: done }));
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Read as if it were UTC, which knows no summer time. */
function mondayOf(iso: string): string {
  const day = new Date(`${iso.slice(0, 10)}T00:00Z`);
  return new Date(day.getTime() - ((day.getUTCDay() + 6) % 7) * DAY_MS).toISOString().slice(0, 10);
}
