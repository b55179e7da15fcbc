/**
 * What no plan can beat: each chain alone through the opening hours, and the crew's work in one piece.
 *
 * The work bound takes every set of tasks that cannot begin before some moment and have at least some time to run
 * after them: the crew cannot have done the set earlier than its working time divided among them, and the chain of the
 * task that comes last has still to run to its end.
 */
import { dayMs, endAfterWork, workingTimeBefore } from "./calendar.ts";
import { earliestStart, endOf } from "./fit.ts";
import { overnightMs, overnightWithoutShopMs, type Problem, type Track } from "./problem.ts";
import { emptyTimes, type Fit, settle, type Times, waitEnd } from "./settle.ts";

/** How many thresholds of each of the two axes the work bound tries. */
const nThresholds = 24;

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

/** The chain's earliest times with the shop to itself, or the index of the task whose window cannot be met. */
export function settleAlone(problem: Problem, track: Track): Times | number {
  const times = emptyTimes(track);
  const horizon = Math.max(problem.start, problem.shop.settledFrom) + reachOf(problem, track);
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

interface Task {
  readonly track: Track;
  readonly index: number;
  readonly work: number;
  readonly head: number;
  readonly tail: number;
  readonly count: number;
}

/** A moment before which no plan ends. `alone` are the chains' own earliest times, by sort. */
export function lowestFinish(problem: Problem, alone: ReadonlyMap<number, Times>): number {
  const tasks: Task[] = [];
  let bound = problem.start;
  for (const [sort, times] of alone) {
    bound = Math.max(bound, times.ends.at(-1) ?? problem.start);
    const alike = problem.tracks.filter((track) => track.sort === sort);
    const track = alike[0]!;
    const tails = leastTails(problem, track);
    for (const index of track.hands) {
      const step = track.steps[index]!;
      if (step.kind !== "hands" || step.work === 0) continue;
      const shared = { track, index, work: step.work, count: alike.length };
      tasks.push({ ...shared, head: times.starts[index]!, tail: tails[index]! });
    }
  }
  if (!Number.isFinite(problem.crew) || tasks.length === 0) return bound;
  const byTail = [...tasks].sort((a, b) => b.tail - a.tail);
  for (const head of thresholds(tasks.map((task) => task.head))) {
    for (const tail of thresholds(tasks.map((task) => task.tail))) {
      bound = Math.max(bound, boundOfSet(problem, alone, byTail, head, tail));
    }
  }
  return bound;
}

function boundOfSet(
  problem: Problem,
  alone: ReadonlyMap<number, Times>,
  byTail: readonly Task[],
  head: number,
  tail: number,
): number {
  const set = byTail.filter((task) => task.head >= head && task.tail >= tail);
  const work = set.reduce((sum, task) => sum + task.work * task.count, 0);
  const done = workingTimeBefore(problem.shop, head) + Math.ceil(work / problem.crew);
  const end = endAfterWork(problem.shop, done);
  let least = Number.POSITIVE_INFINITY;
  for (let place = set.length - 1; place >= 0 && end + set[place]!.tail < least; place--) {
    const task = set[place]!;
    const ends = [...alone.get(task.track.sort)!.ends];
    ends[task.index] = Math.max(ends[task.index]!, end);
    least = Math.min(least, runOut(problem, task.track, ends, task.index + 1, problem.start));
  }
  return Number.isFinite(least) ? least : problem.start;
}

/** Distinct values, evenly thinned out. */
function thresholds(values: readonly number[]): readonly number[] {
  const distinct = [...new Set(values)].sort((a, b) => a - b);
  if (distinct.length <= nThresholds) return distinct;
  const stride = (distinct.length - 1) / (nThresholds - 1);
  return Array.from({ length: nThresholds }, (_, place) => distinct[Math.round(place * stride)]!);
}
