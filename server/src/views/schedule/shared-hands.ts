/** Where plans that are each made by themselves book the same people of one shop twice. */
import { onceFor } from "../../core/once.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { isDated } from "./job-plan.ts";

export interface DoubleBooking {
  /** Name of the other job. */
  readonly job: string;
  /** Local ISO date-time at which both together first need more people than there are. */
  readonly at: string;
}

const HOUR_MS = 3_600_000;
/** The last to begin may not be the last to end, but hardly by more than this. */
const DAY_MS = 24 * HOUR_MS;

/** More are no help to whoever has to move one of them. */
const MOST_NAMED = 3;

/** The first three jobs of `all` in the same shop that need its people at the same hours. */
export function doubleBookings(result: JobResult, all: readonly JobResult[]): readonly DoubleBooking[] {
  const { shop } = result;
  const found: DoubleBooking[] = [];
  if (shop === undefined || !isDated(result)) return found;
  const own = sessionTimes(result);
  for (const other of all) {
    if (found.length === MOST_NAMED) break;
    if (other === result || other.shop !== shop || !isDated(other)) continue;
    const times = sessionTimes(other);
    if (!meet(own, times)) continue;
    const at = firstShortage(own, times, shop.crew);
    if (at !== undefined) found.push({ job: other.job.name, at: new Date(at).toISOString().slice(0, 19) });
  }
  return found;
}

/** Whether one begins before the other has ended; sessions are in the order of their starts. */
const meet = (a: readonly Time[], b: readonly Time[]): boolean =>
  a.length > 0 &&
  b.length > 0 &&
  a[0]!.start < b.at(-1)!.end + DAY_MS &&
  b[0]!.start < a.at(-1)!.end + DAY_MS;

interface Time {
  readonly start: number;
  readonly end: number;
}

const sessionTimes = onceFor(({ schedule: { startAt, sessions = [] } }: JobResult): readonly Time[] => {
  // Local times, read as if they were UTC, which knows no summer time.
  const zero = Date.parse(`${startAt}Z`);
  return sessions.map(({ start, end }) => ({ start: zero + start * HOUR_MS, end: zero + end * HOUR_MS }));
});

/** When more than `crew` sessions first go on at once; no plan by itself has more. */
function firstShortage(a: readonly Time[], b: readonly Time[], crew: number): number | undefined {
  const changes = [...a, ...b]
    .flatMap(({ start, end }) => [
      { at: Math.round(start), by: 1 },
      { at: Math.round(end), by: -1 },
    ])
    .sort((one, other) => one.at - other.at || one.by - other.by);
  let busy = 0;
  for (const { at, by } of changes) {
    busy += by;
    if (busy > crew) return at;
  }
  return undefined;
}
