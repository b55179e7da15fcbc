/**
 * One chain by itself: its earliest times with the shop to itself, its latest ones before a finish, and how far it can
 * reach. No plan of several chains gives any of them an earlier task or a later one.
 */
import { dayMs } from "../calendar.ts";
import {
  emptyTimes,
  type FindStart,
  type Horizon,
  latestBeforeNight,
  type Times,
  timeChain,
  waitEnd,
} from "../chain-timing.ts";
import { overnightMs, overnightWithoutShopMs, type Problem, type ProblemChain } from "../problem.ts";
import { earliestStart, endOf, latestStartAt, latestStartByEnd } from "../task-placement.ts";

export function findStartInShop(problem: Problem): FindStart {
  return (time, work, nonPreemptive) => earliestStart(problem.shop, time, work, nonPreemptive);
}

/**
 * How long after the last closed day, or after the moment it may begin, a chain can be under way at most: a chain that
 * fails for so many weeks fails in every week.
 */
export function reachOf(problem: Problem, chain: ProblemChain): number {
  const late = Math.max(problem.start, problem.shop.settledFrom);
  const nWindows = chain.steps.filter((step) => step.kind === "hands" && step.window !== undefined).length;
  const ends = chain.steps.map(() => 0);
  return runOut({ ...problem, start: late }, chain, ends, 0, late) - late + (nWindows + 2) * 7 * dayMs;
}

/** How far to look for a chain that reaches so far, where others are at work until `finish`. */
export function horizonOf(problem: Problem, finish: number, reach: number): Horizon {
  const settled = Math.max(finish, problem.shop.settledFrom);
  return { settled, end: settled + reach };
}

/** The chain's earliest times with the shop to itself, or the index of the task whose window cannot be met. */
export function timeAlone(problem: Problem, chain: ProblemChain): Times | number {
  const times = emptyTimes(chain);
  const horizon = horizonOf(problem, problem.start, reachOf(problem, chain));
  return (
    timeChain(problem, chain, times, 0, chain.steps.length - 1, findStartInShop(problem), horizon) ?? times
  );
}

/** By class, the earliest times of the chains with the shop to themselves; only of those that can be timed at all. */
export function earliestByClass(problem: Problem): ReadonlyMap<number, Times> {
  const earliest = new Map<number, Times>();
  for (const chain of problem.chains) {
    if (earliest.has(chain.chainClass)) continue;
    const times = timeAlone(problem, chain);
    if (typeof times !== "number") earliest.set(chain.chainClass, times);
  }
  return earliest;
}

/** For each item the least time from its end to the end of the chain. */
export function leastTails(problem: Problem, chain: ProblemChain): readonly number[] {
  const tails = chain.steps.map(() => 0);
  const night = problem.inShop ? overnightMs : overnightWithoutShopMs;
  for (let index = chain.steps.length - 1; index > 0; index--) {
    const step = chain.steps[index]!;
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
export function runOut(
  problem: Problem,
  chain: ProblemChain,
  ends: number[],
  from: number,
  floor: number,
): number {
  let previous = from > 0 ? ends[from - 1]! : problem.start;
  for (let index = from; index < chain.steps.length; index++) {
    const step = chain.steps[index]!;
    if (step.kind === "hands") {
      const start = earliestStart(problem.shop, Math.max(previous, floor), step.work, step.nonPreemptive);
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
export function latestEnds(
  problem: Problem,
  chain: ProblemChain,
  finish: number,
): readonly number[] | undefined {
  const { shop } = problem;
  const { steps } = chain;
  const ends = steps.map(() => finish);
  const lower = (index: number, end: number): boolean => {
    if (index < 0 || end >= ends[index]!) return true;
    ends[index] = end;
    return Number.isFinite(end);
  };
  // A window is looked at again once the latest end of what it counts from is known.
  for (let round = chain.hasWindows ? 2 : 1; round > 0; round--) {
    for (let index = steps.length - 1; index >= 0; index--) {
      const step = steps[index]!;
      const end = ends[index]!;
      if (step.kind === "hands") {
        let start = latestStartByEnd(shop, end, step.work, step.nonPreemptive);
        if (round === 1 && step.window !== undefined) {
          const last = ends[step.window.of]! + step.window.within;
          start = Math.min(start, latestStartAt(shop, last, step.work, step.nonPreemptive));
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
