/**
 * One chain by itself: its earliest times with the shop to itself, its latest ones before a finish, and how far it can
 * reach. No plan of several chains gives any of them an earlier task or a later one.
 */
import { dayMs } from "./calendar.ts";
import { earliestStart, endOf, latestStartAt, latestStartByEnd } from "./fit.ts";
import { overnightMs, overnightWithoutShopMs, type Problem, type Track } from "./problem.ts";
import {
  emptyTimes,
  type Fit,
  type Horizon,
  latestBeforeNight,
  settle,
  type Times,
  waitEnd,
} from "./settle.ts";

export function shopFit(problem: Problem): Fit {
  return (time, work, whole) => earliestStart(problem.shop, time, work, whole);
}

/**
 * How long after the last closed day, or after the moment it may begin, a chain can be under way at most: a chain that
 * fails for so many weeks fails in every week.
 */
export function reachOf(problem: Problem, track: Track): number {
  const late = Math.max(problem.start, problem.shop.settledFrom);
  const nWindows = track.steps.filter((step) => step.kind === "hands" && step.window !== undefined).length;
  const ends = track.steps.map(() => 0);
  return runOut({ ...problem, start: late }, track, ends, 0, late) - late + (nWindows + 2) * 7 * dayMs;
}

/** How far to look for a chain that reaches so far, where others are at work until `finish`. */
export function horizonOf(problem: Problem, finish: number, reach: number): Horizon {
  const settled = Math.max(finish, problem.shop.settledFrom);
  return { settled, end: settled + reach };
}

/** The chain's earliest times with the shop to itself, or the index of the task whose window cannot be met. */
export function settleAlone(problem: Problem, track: Track): Times | number {
  const times = emptyTimes(track);
  const horizon = horizonOf(problem, problem.start, reachOf(problem, track));
  return settle(problem, track, times, 0, track.steps.length - 1, shopFit(problem), horizon) ?? times;
}

/** For each item the least time from its end to the end of the chain. */
export function leastTails(problem: Problem, track: Track): readonly number[] {
  const tails = track.steps.map(() => 0);
  const night = problem.inShop ? overnightMs : overnightWithoutShopMs;
  for (let index = track.steps.length - 1; index > 0; index--) {
    const step = track.steps[index]!;
    const tail = tails[index]!;
    const own = step.kind === "hands" ? step.work : step.kind === "overnight" ? night : 0;
    tails[index - 1] = Math.max(tails[index - 1]!, own + tail);
    if (step.kind === "wait" && step.of >= 0) tails[step.of] = Math.max(tails[step.of]!, step.time + tail);
  }
  return tails;
}

/**
 * The chain's end when its items from `from` on go as early as the shop allows and no task starts before `floor`;
 * windows are left out. `ends` holds the ends of the items before and is written over from there on.
 */
export function runOut(problem: Problem, track: Track, ends: number[], from: number, floor: number): number {
  let previous = from > 0 ? ends[from - 1]! : problem.start;
  for (let index = from; index < track.steps.length; index++) {
    const step = track.steps[index]!;
    if (step.kind === "hands") {
      const start = earliestStart(problem.shop, Math.max(previous, floor), step.work, step.whole);
      previous = endOf(problem.shop, start, step.work);
    } else {
      const counted = step.kind === "wait" ? (step.of < 0 ? problem.start : ends[step.of]!) : 0;
      previous = waitEnd(problem, step, previous, counted);
    }
    ends[index] = previous;
  }
  return previous;
}

/**
 * The latest end of every item with which its chain can still end by `finish`; undefined when it cannot. Nothing else
 * is at work, and windows count as far as the latest end of their task.
 */
export function latestEnds(problem: Problem, track: Track, finish: number): readonly number[] | undefined {
  const { shop } = problem;
  const { steps } = track;
  const ends = steps.map(() => finish);
  const lower = (index: number, end: number): boolean => {
    if (index < 0 || end >= ends[index]!) return true;
    ends[index] = end;
    return Number.isFinite(end);
  };
  // A window is looked at again once the latest end of what it counts from is known.
  for (let round = track.hasWindows ? 2 : 1; round > 0; round--) {
    for (let index = steps.length - 1; index >= 0; index--) {
      const step = steps[index]!;
      const end = ends[index]!;
      if (step.kind === "hands") {
        let start = latestStartByEnd(shop, end, step.work, step.whole);
        if (round === 1 && step.window !== undefined) {
          const last = ends[step.window.of]! + step.window.within;
          start = Math.min(start, latestStartAt(shop, last, step.work, step.whole));
        }
        if (!lower(index, endOf(shop, start, step.work)) || !lower(index - 1, start)) return undefined;
        if (start < problem.start) return undefined;
      } else if (step.kind === "wait") {
        if (!lower(step.of, end - step.time) || !lower(index - 1, end)) return undefined;
      } else if (!lower(index - 1, latestBeforeNight(problem, end))) return undefined;
    }
  }
  return ends;
}
