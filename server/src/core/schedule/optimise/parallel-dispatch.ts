/**
 * A plan from the openings that tasks prefer: parallel schedule generation, the most pressing task first.
 *
 * A task is pressing by the latest moment at which it may begin: so that it keeps its window, and so that what the
 * windows tie to it can still be done before the shop closes for too long. Of those that may wait, the ones that prefer
 * the earliest opening go first. A chain that misses a window all the same begins what is tied together anew, or is put
 * in at the end wherever there is room.
 */
import { findStartInShop, horizonOf } from "../bounds/chain-bounds.ts";
import { closingAfter } from "../calendar.ts";
import { emptyTimes, endAt, placeWait, type Times, timeChain } from "../chain-timing.ts";
import type { Plan } from "../priority-rules.ts";
import type { Problem, ProblemChain } from "../problem.ts";
import { makeResourceProfile } from "../resource-profile.ts";
import { earliestStart, endOf, latestStartAt, latestStartByEnd } from "../task-placement.ts";
import type { PreferredSlots } from "./column-generation.ts";

interface ChainProgress {
  readonly place: number;
  readonly chain: ProblemChain;
  readonly times: Times;
  readonly preferred: PreferredSlots;
  /** How long it can be under way at most. */
  readonly reach: number;
  /** By step, the last step of the stretch that windows tie together, if the step does not begin one; else undefined. */
  readonly tiedTo: readonly (number | undefined)[];
  /** Place of the next task among the chain's tasks. */
  position: number;
  /** When it may begin, by waits and by what it prefers. */
  ready: number;
  /** When it must have begun for the sake of windows. */
  latest: number;
  /** When it should have begun. */
  wanted: number;
  misses: number;
  /** No task before. */
  floor: number;
}

export interface DispatchRule {
  readonly preferred: (chain: number) => PreferredSlots;
  /** How long before that it may begin, milliseconds. */
  readonly early: number;
  /** How often a progress may begin anew what is tied together. */
  readonly again: number;
}

export function parallelDispatch(
  problem: Problem,
  how: DispatchRule,
  reach: readonly number[],
): Plan | undefined {
  const free: number[] = Array.from({ length: problem.crew }, () => problem.start);
  const progresses = problem.chains.map((chain, place): ChainProgress => {
    const progress: ChainProgress = {
      place,
      chain,
      times: emptyTimes(chain),
      preferred: how.preferred(place),
      reach: reach[place]!,
      tiedTo: chain.steps.map(
        (_, index) => chain.blocks.find(([first, last]) => first < index && index <= last)?.[1],
      ),
      position: 0,
      ready: 0,
      latest: 0,
      wanted: 0,
      misses: 0,
      floor: problem.start,
    };
    goOn(problem, progress, 0, how.early);
    return progress;
  });
  const late: ChainProgress[] = [];
  let going = progresses.filter(({ chain }) => chain.hands.length > 0);
  while (going.length > 0) {
    const { progress, start, end } = mostPressing(problem, going, free[0]!);
    const index = progress.chain.hands[progress.position]!;
    const step = progress.chain.steps[index]!;
    const window = step.kind === "hands" ? step.window : undefined;
    if (window !== undefined && start > endAt(problem, progress.times, window.of) + window.within) {
      if (progress.misses < how.again) {
        const [first] = progress.chain.blocks.findLast(([begins]) => begins <= index)!;
        progress.misses++;
        progress.floor = start;
        progress.position = progress.chain.hands.findIndex((hands) => hands >= first);
        goOn(problem, progress, first, how.early);
      } else {
        late.push(progress);
        going = going.filter((other) => other !== progress);
      }
      continue;
    }
    progress.times.starts[index] = start;
    progress.times.ends[index] = end;
    if (end > start) {
      free[0] = end;
      free.sort((a, b) => a - b);
    }
    progress.position++;
    if (progress.position === progress.chain.hands.length)
      going = going.filter((other) => other !== progress);
    goOn(problem, progress, index + 1, how.early);
  }
  return withLate(problem, progresses, late, reach);
}

/** Gives times to the waits from step `from` on, and says when the task behind them may and must begin. */
function goOn(problem: Problem, progress: ChainProgress, from: number, early: number): void {
  const { chain, times, preferred } = progress;
  let index = from;
  for (; index < chain.steps.length; index++) {
    const step = chain.steps[index]!;
    if (step.kind === "hands") break;
    placeWait(problem, times, index, step);
  }
  const step = chain.steps[index];
  if (step?.kind !== "hands") return;
  const part = preferred.get(index);
  progress.ready = Math.max(endAt(problem, times, index - 1), (part?.opens ?? 0) - early, progress.floor);
  progress.wanted = part === undefined ? progress.ready : wantedStart(progress, index, part.closes);
  const tiedTo = progress.tiedTo[index];
  if (tiedTo !== undefined) {
    progress.latest = latestTied(problem, progress, index, tiedTo);
    return;
  }
  // What is tied together begins when the windows can be kept, were the progress alone.
  progress.latest = Number.POSITIVE_INFINITY;
  const block = progress.chain.blocks.find(([first, last]) => first <= index && index <= last)!;
  const trial = copyOf(times);
  trial.holds[index] = progress.ready;
  timeChain(
    problem,
    chain,
    trial,
    index,
    block[1],
    findStartInShop(problem),
    horizonOf(problem, progress.ready, progress.reach),
  );
  progress.ready = Math.max(progress.ready, trial.starts[index]!);
}

/** The latest start with which what prefers the same part of an opening can still be done in it. */
function wantedStart({ chain, preferred }: ChainProgress, index: number, closes: number): number {
  let time = closes;
  let last = index;
  for (const hands of chain.hands) {
    if (hands <= last) continue;
    if (preferred.get(hands)?.closes !== closes) break;
    last = hands;
  }
  for (let at = last; at >= index; at--) {
    const step = chain.steps[at]!;
    if (step.kind === "hands") time -= step.work;
    else if (step.kind === "wait" && step.of >= index) time -= step.time;
  }
  return time;
}

/** The latest start of a tied task from which the rest of what is tied can be done, were the progress alone. */
function latestTied(
  problem: Problem,
  { chain, times, ready, reach }: ChainProgress,
  index: number,
  last: number,
): number {
  const step = chain.steps[index]!;
  if (step.kind !== "hands") return ready;
  const closes =
    step.window === undefined
      ? Number.POSITIVE_INFINITY
      : endAt(problem, times, step.window.of) + step.window.within;
  if (!Number.isFinite(closes)) return Number.POSITIVE_INFINITY;
  for (let at = latestStartAt(problem.shop, closes, step.work, step.nonPreemptive); at > ready; ) {
    const trial = copyOf(times);
    trial.holds[index] = at;
    const failed = timeChain(
      problem,
      chain,
      trial,
      index,
      last,
      findStartInShop(problem),
      horizonOf(problem, at, reach),
    );
    if (failed === undefined && trial.starts[index] === at) return at;
    // The opening before.
    at = latestStartByEnd(problem.shop, at, step.work, step.nonPreemptive);
  }
  return ready;
}

const copyOf = ({ starts, ends, holds }: Times): Times => ({
  starts: [...starts],
  ends: [...ends],
  holds: [...holds],
});

interface Choice {
  readonly progress: ChainProgress;
  readonly start: number;
  readonly end: number;
}

/** Of the tasks that can begin before the first of them would end, the most pressing. */
function mostPressing(problem: Problem, going: readonly ChainProgress[], free: number): Choice {
  const starts = new Float64Array(going.length);
  const ends = new Float64Array(going.length);
  const asSoonAsFree = new Map<number, number>();
  let firstStart = Number.POSITIVE_INFINITY;
  let firstEnd = Number.POSITIVE_INFINITY;
  for (let place = 0; place < going.length; place++) {
    const { chain, position, ready } = going[place]!;
    const step = chain.steps[chain.hands[position]!]!;
    const work = step.kind === "hands" ? step.work : 0;
    const nonPreemptive = step.kind === "hands" && step.nonPreemptive;
    const isReady = work > 0 && ready <= free;
    // Most wait for hands only, and tasks alike find them at the same time.
    const alike = nonPreemptive ? -work : work;
    const start =
      (isReady ? asSoonAsFree.get(alike) : undefined) ??
      earliestStart(problem.shop, isReady ? free : ready, work, nonPreemptive);
    if (isReady) asSoonAsFree.set(alike, start);
    starts[place] = start;
    ends[place] = endOf(problem.shop, start, work);
    firstStart = Math.min(firstStart, start);
    firstEnd = Math.min(firstEnd, ends[place]!);
  }
  const today = closingAfter(problem.shop, firstStart);
  let best: number | undefined;
  for (let place = 0; place < going.length; place++) {
    if (starts[place]! >= firstEnd && ends[place] !== firstEnd) continue;
    if (best === undefined || isMorePressing(going[place]!, going[best]!, today)) best = place;
  }
  return { progress: going[best!]!, start: starts[best!]!, end: ends[best!]! };
}

/** Whether one chain's next task goes before another's: first what must be done today. */
function isMorePressing(a: ChainProgress, b: ChainProgress, today: number): boolean {
  const mustA = a.latest <= today;
  if (mustA !== b.latest <= today) return mustA;
  if (mustA) return a.latest < b.latest;
  return Math.min(a.wanted, a.latest) < Math.min(b.wanted, b.latest);
}

/** The progresses that went well, and those that did not wherever there is room for them. */
function withLate(
  problem: Problem,
  progresses: readonly ChainProgress[],
  late: readonly ChainProgress[],
  reach: readonly number[],
): Plan | undefined {
  const times = progresses.map((progress) => progress.times);
  let finish = problem.start;
  const profile = makeResourceProfile(problem.shop, problem.crew);
  const book = (chain: ProblemChain, placed: Times): void => {
    for (const index of chain.hands) {
      const step = chain.steps[index]!;
      if (step.kind === "hands") profile.take(placed.starts[index]!, step.work);
    }
    finish = Math.max(finish, placed.ends.at(-1) ?? finish);
  };
  for (const progress of progresses) if (!late.includes(progress)) book(progress.chain, progress.times);
  for (const { place, chain } of late) {
    const placed = emptyTimes(chain);
    const horizon = horizonOf(problem, finish, reach[place]!);
    if (
      timeChain(problem, chain, placed, 0, chain.steps.length - 1, profile.findStart, horizon) !== undefined
    )
      return undefined;
    book(chain, placed);
    times[place] = placed;
  }
  return { times, finish };
}
