/**
 * The earliest times of one chain, given where its tasks fit: the least solution of its waits and maximum lags.
 *
 * Constraint propagation as for temporal networks with minimum and maximum lags (Bartusch, Möhring and Radermacher,
 * "Scheduling project networks with resource constraints and time windows", 1988), on a calendar. Items are placed in
 * order, each as early as it goes. Where a task then misses its window, the earliest start of the item that the window
 * counts from is pushed up just enough, and placing goes on from there. Every rule is monotone, so what comes out is the
 * earliest of all ways to respect them, or proof that there is none before the horizon.
 */
import { dayMs, latestBeforeNightEnd, nightEnd } from "./calendar.ts";
import {
  overnightMs,
  overnightWithoutShopMs,
  type Problem,
  type ProblemChain,
  type Step,
} from "./problem.ts";
import { endOf, startForEnd } from "./task-placement.ts";

/** The earliest allowed start at or after `time`. Must be monotone in `time`. */
export type FindStart = (time: number, work: number, nonPreemptive: boolean) => number;

/** Starts and ends of one chain's items, and the starts below which windows forbid to go. */
export interface Times {
  readonly starts: number[];
  readonly ends: number[];
  readonly holds: number[];
}

export function emptyTimes(chain: ProblemChain): Times {
  return {
    starts: chain.steps.map(() => 0),
    ends: chain.steps.map(() => 0),
    holds: chain.steps.map(() => Number.NEGATIVE_INFINITY),
  };
}

/** The end of a wait or overnight item after `previous`; `counted` is the end that a wait counts from. */
export function waitEnd(problem: Problem, step: Step, previous: number, counted: number): number {
  if (step.kind === "wait") return Math.max(previous, counted + step.time);
  if (step.kind === "hands") return previous;
  return problem.inShop ? nightEnd(problem.shop, previous, overnightMs) : previous + overnightWithoutShopMs;
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

/** How far it makes sense to go on. */
export interface Horizon {
  /** From here on one week is like the other, and nobody else is at work. */
  readonly settled: number;
  /** No item need end later. */
  readonly end: number;
}

/**
 * Places the items `first` … `last`, those before being fixed, and returns undefined; or returns the index of the task
 * whose window cannot be met, because what it counts from lies before `first` or the horizon is passed. What windows tie
 * together and does not go in one settled week goes in none: whatever would keep all windows later would keep them so
 * many weeks earlier as well.
 */
export function timeChain(
  problem: Problem,
  chain: ProblemChain,
  times: Times,
  first: number,
  last: number,
  findStart: FindStart,
  horizon: Horizon,
): number | undefined {
  let pushed = first;
  const begun = new Map<number, number>();
  for (let index = first; index <= last; index++) {
    const step = chain.steps[index]!;
    const previous = endAt(problem, times, index - 1);
    if (step.kind !== "hands") {
      placeWait(problem, times, index, step);
      continue;
    }
    const start = findStart(Math.max(previous, times.holds[index]!), step.work, step.nonPreemptive);
    times.starts[index] = start;
    times.ends[index] = endOf(problem.shop, start, step.work);
    if (times.ends[index]! > horizon.end || !Number.isFinite(start)) return Math.max(index, pushed);
    if (step.window === undefined) {
      if (chain.begins[index] && !begun.has(index)) begun.set(index, Math.max(start, horizon.settled));
      continue;
    }
    if (start <= endAt(problem, times, step.window.of) + step.window.within) continue;
    if (step.window.of < first) return index;
    pushEarliestStart(problem, chain, times, step.window.of, start - step.window.within);
    pushed = Math.max(pushed, index);
    if (times.holds[step.window.of]! >= (begun.get(step.window.of) ?? Number.POSITIVE_INFINITY) + 7 * dayMs)
      return pushed;
    index = step.window.of - 1;
  }
  return undefined;
}

/** Raises the hold of a task so that it does not end before `end`. */
export function pushEarliestStart(
  problem: Problem,
  chain: ProblemChain,
  times: Times,
  index: number,
  end: number,
): void {
  const step = chain.steps[index]!;
  if (step.kind !== "hands") return;
  times.holds[index] = Math.max(
    times.holds[index]!,
    startForEnd(problem.shop, end, step.work, step.nonPreemptive),
  );
}

/** The latest end of the task before an overnight wait that ends at or before `end`. */
export function latestBeforeNight(problem: Problem, end: number): number {
  if (!problem.inShop) return end - overnightWithoutShopMs;
  return latestBeforeNightEnd(problem.shop, end, overnightMs) ?? Number.NEGATIVE_INFINITY;
}
