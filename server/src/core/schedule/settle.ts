/**
 * The earliest times of one chain, given where its tasks fit: the least solution of its waits and windows.
 *
 * Items are placed in order, each as early as it goes. Where a task then misses its window, the item that the window
 * counts from is held back just enough, and placing goes on from there. Every rule is monotone, so what comes out is
 * the earliest of all ways to respect them, or proof that there is none before the horizon. Where a window counts from
 * a wait, the task that the wait counts from is held back, which is enough but not always the least.
 */
import { firstOpeningAtLeast, lastOpening, type ShopTime } from "./calendar.ts";
import { endOf, startForEnd } from "./fit.ts";
import { overnightMs, overnightWithoutShopMs, type Problem, type Step, type Track } from "./problem.ts";

/** The earliest allowed start at or after `time`. Must be monotone in `time`. */
export type Fit = (time: number, work: number, whole: boolean) => number;

/** Starts and ends of one chain's items, and the starts below which windows forbid to go. */
export interface Times {
  readonly starts: number[];
  readonly ends: number[];
  readonly holds: number[];
}

export function emptyTimes(track: Track): Times {
  return {
    starts: track.steps.map(() => 0),
    ends: track.steps.map(() => 0),
    holds: track.steps.map(() => Number.NEGATIVE_INFINITY),
  };
}

/** The end of a wait or overnight item after `previous`; `counted` is the end that a wait counts from. */
export function waitEnd(problem: Problem, step: Step, previous: number, counted: number): number {
  if (step.kind === "wait") return Math.max(previous, counted + step.time);
  if (step.kind === "hands") return previous;
  return problem.inShop
    ? firstOpeningAtLeast(problem.shop, previous, overnightMs)
    : previous + overnightWithoutShopMs;
}

/** The end of the item at `index`, or the schedule's start for −1. */
export function endAt(problem: Problem, times: Times, index: number): number {
  return index < 0 ? problem.start : times.ends[index]!;
}

/** Gives times to the wait at `index`, the items before it having theirs. */
export function placeWait(problem: Problem, times: Times, index: number, step: Step): void {
  const previous = endAt(problem, times, index - 1);
  const counted = step.kind === "wait" ? endAt(problem, times, step.of) : 0;
  times.starts[index] = previous;
  times.ends[index] = waitEnd(problem, step, previous, counted);
}

/**
 * Places the items `first` … `last`, those before being fixed, and returns undefined; or returns the index of the task
 * whose window cannot be met, because what it counts from lies before `first` or the horizon is passed.
 */
export function settle(
  problem: Problem,
  track: Track,
  times: Times,
  first: number,
  last: number,
  findStart: Fit,
  horizon: number,
): number | undefined {
  let pushed = first;
  for (let index = first; index <= last; index++) {
    const step = track.steps[index]!;
    const previous = endAt(problem, times, index - 1);
    if (step.kind !== "hands") {
      placeWait(problem, times, index, step);
      continue;
    }
    const start = findStart(Math.max(previous, times.holds[index]!), step.work, step.whole);
    times.starts[index] = start;
    times.ends[index] = endOf(problem.shop, start, step.work);
    if (times.ends[index]! > horizon || !Number.isFinite(start)) return Math.max(index, pushed);
    if (step.window === undefined) continue;
    if (start <= endAt(problem, times, step.window.of) + step.window.within) continue;
    const held = holdBack(problem, track, times, step.window.of, start - step.window.within);
    if (held === undefined || held < first) return index;
    pushed = Math.max(pushed, index);
    index = held - 1;
  }
  return undefined;
}

/** Raises the hold of the task that decides when item `index` ends, so that this is not before `end`. */
export function holdBack(
  problem: Problem,
  track: Track,
  times: Times,
  index: number,
  end: number,
): number | undefined {
  let wanted = end;
  for (let at = index; at >= 0; ) {
    const step = track.steps[at]!;
    if (step.kind === "hands") {
      times.holds[at] = Math.max(times.holds[at]!, startForEnd(problem.shop, wanted, step.work, step.whole));
      return at;
    }
    if (step.kind === "wait") {
      wanted -= step.time;
      at = step.of;
    } else {
      wanted = problem.inShop ? restBefore(problem.shop, wanted) : wanted - overnightWithoutShopMs;
      at--;
    }
  }
  return undefined;
}

/** The least end of the task before an overnight wait with which the wait ends at or after `end`. */
function restBefore(shop: ShopTime, end: number): number {
  // By the least there is later than with the opening before.
  return (lastOpening(shop, end - 1) ?? Number.NEGATIVE_INFINITY) + 1 - overnightMs;
}
