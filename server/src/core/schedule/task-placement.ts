/**
 * Where one task fits into opening hours: earliest and latest starts of a task of a given length.
 *
 * A task is `whole` when it must lie inside one opening span; otherwise it pauses at closing. All functions are
 * monotone in their time argument, which is what lets the rest of the scheduler find least and greatest solutions by
 * repetition. A task without length needs no opening after it, so it may also stand at the very closing.
 */
import {
  endAfterWork,
  lastClosing,
  nextOpening,
  type ShopTime,
  spanAroundWork,
  startAfterWork,
  touchOpening,
  workingTimeBefore,
} from "./calendar.ts";

/** The earliest start at or after `time`; Infinity when the shop never opens for so long. */
export function earliestStart(shop: ShopTime, time: number, work: number, nonPreemptive: boolean): number {
  if (work === 0) return touchOpening(shop, time);
  let done = workingTimeBefore(shop, time);
  if (!nonPreemptive) return startAfterWork(shop, done);
  for (;;) {
    const span = spanAroundWork(shop, done);
    if (span === undefined) return Number.POSITIVE_INFINITY;
    if (done + work <= span.to) return startAfterWork(shop, done);
    done = span.to;
  }
}

export function endOf(shop: ShopTime, start: number, work: number): number {
  return work === 0 ? start : endAfterWork(shop, workingTimeBefore(shop, start) + work);
}

/** The earliest moment from which any allowed start makes the task end at or after `end`. */
export function startForEnd(shop: ShopTime, end: number, work: number, nonPreemptive: boolean): number {
  if (nonPreemptive || work === 0) return end - work;
  const done = workingTimeBefore(shop, end);
  // Within closed hours the task has to reach past the opening, be it by the least there is.
  const reach = endAfterWork(shop, done) < end ? 1 : 0;
  const start = done - work + reach;
  return start < 0 ? Number.NEGATIVE_INFINITY : startAfterWork(shop, start);
}

/** The latest start with which the task ends at or before `end`; −Infinity when there is none. */
export function latestStartByEnd(shop: ShopTime, end: number, work: number, nonPreemptive: boolean): number {
  if (work === 0) return latestTouch(shop, end);
  const done = workingTimeBefore(shop, end) - work;
  if (done < 0) return Number.NEGATIVE_INFINITY;
  return nonPreemptive ? latestWhole(shop, done, work) : startAfterWork(shop, done);
}

/** The latest allowed start at or before `time`; −Infinity when there is none. */
export function latestStartAt(shop: ShopTime, time: number, work: number, nonPreemptive: boolean): number {
  if (work === 0) return latestTouch(shop, time);
  const done = workingTimeBefore(shop, time);
  const isClosed = startAfterWork(shop, done) > time;
  const latest = isClosed ? done - 1 : done;
  if (latest < 0) return Number.NEGATIVE_INFINITY;
  return nonPreemptive ? latestWhole(shop, latest, work) : startAfterWork(shop, latest);
}

/** The latest start of an unbroken task with at most `done` working time before it. */
function latestWhole(shop: ShopTime, done: number, work: number): number {
  for (let latest = done; latest >= 0; ) {
    const span = spanAroundWork(shop, latest);
    if (span === undefined) return Number.NEGATIVE_INFINITY;
    const start = Math.min(latest, span.to - work);
    if (start >= span.from) return startAfterWork(shop, start);
    latest = span.from - 1;
  }
  return Number.NEGATIVE_INFINITY;
}

function latestTouch(shop: ShopTime, time: number): number {
  if (nextOpening(shop, time) === time) return time;
  return lastClosing(shop, time) ?? Number.NEGATIVE_INFINITY;
}
