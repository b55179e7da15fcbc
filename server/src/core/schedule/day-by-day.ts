/**
 * A plan from the openings in which tasks are meant to lie: as time goes by, the most pressing task first.
 *
 * A task is pressing by the latest moment at which it may begin: so that it keeps its window, and so that what the
 * windows tie to it can still be done before the shop closes for too long. Of those that may wait, the ones meant for
 * the earliest opening go first. A chain that misses a window all the same begins what is tied together anew, or is put
 * in at the end wherever there is room.
 */
import { horizonOf, shopFit } from "./bounds.ts";
import { closingAfter } from "./calendar.ts";
import { earliestStart, endOf, latestStartAt, latestStartByEnd } from "./fit.ts";
import type { Plan } from "./heuristic.ts";
import type { Problem, Track } from "./problem.ts";
import { makeProfile } from "./profile.ts";
import { emptyTimes, endAt, placeWait, settle, type Times } from "./settle.ts";
import type { Meant } from "./spread.ts";

interface Chain {
  readonly place: number;
  readonly track: Track;
  readonly times: Times;
  readonly meant: Meant;
  /** How long it can be under way at most. */
  readonly reach: number;
  /** By step, the last step of the stretch that windows tie together, if the step does not begin one; else undefined. */
  readonly tiedTo: readonly (number | undefined)[];
  /** Place of the next task among the chain's tasks. */
  position: number;
  /** When it may begin, by waits and by what is meant. */
  ready: number;
  /** When it must have begun for the sake of windows. */
  latest: number;
  /** When it should have begun. */
  wanted: number;
  misses: number;
  /** No task before. */
  floor: number;
}

export interface DayByDay {
  readonly meant: (track: number) => Meant;
  /** How long before that it may begin, milliseconds. */
  readonly early: number;
  /** How often a chain may begin anew what is tied together. */
  readonly again: number;
}

export function planDayByDay(problem: Problem, how: DayByDay, reach: readonly number[]): Plan | undefined {
  const free: number[] = Array.from({ length: problem.crew }, () => problem.start);
  const chains = problem.tracks.map((track, place): Chain => {
    const chain: Chain = {
      place,
      track,
      times: emptyTimes(track),
      meant: how.meant(place),
      reach: reach[place]!,
      tiedTo: track.steps.map(
        (_, index) => track.blocks.find(([first, last]) => first < index && index <= last)?.[1],
      ),
      position: 0,
      ready: 0,
      latest: 0,
      wanted: 0,
      misses: 0,
      floor: problem.start,
    };
    goOn(problem, chain, 0, how.early);
    return chain;
  });
  const late: Chain[] = [];
  let going = chains.filter(({ track }) => track.hands.length > 0);
  while (going.length > 0) {
    const { chain, start, end } = mostPressing(problem, going, free[0]!);
    const index = chain.track.hands[chain.position]!;
    const step = chain.track.steps[index]!;
    const window = step.kind === "hands" ? step.window : undefined;
    if (window !== undefined && start > endAt(problem, chain.times, window.of) + window.within) {
      if (chain.misses < how.again) {
        const [first] = chain.track.blocks.findLast(([begins]) => begins <= index)!;
        chain.misses++;
        chain.floor = start;
        chain.position = chain.track.hands.findIndex((hands) => hands >= first);
        goOn(problem, chain, first, how.early);
      } else {
        late.push(chain);
        going = going.filter((other) => other !== chain);
      }
      continue;
    }
    chain.times.starts[index] = start;
    chain.times.ends[index] = end;
    if (end > start) {
      free[0] = end;
      free.sort((a, b) => a - b);
    }
    chain.position++;
    if (chain.position === chain.track.hands.length) going = going.filter((other) => other !== chain);
    goOn(problem, chain, index + 1, how.early);
  }
  return withLate(problem, chains, late, reach);
}

/** Gives times to the waits from step `from` on, and says when the task behind them may and must begin. */
function goOn(problem: Problem, chain: Chain, from: number, early: number): void {
  const { track, times, meant } = chain;
  let index = from;
  for (; index < track.steps.length; index++) {
    const step = track.steps[index]!;
    if (step.kind === "hands") break;
    placeWait(problem, times, index, step);
  }
  const step = track.steps[index];
  if (step?.kind !== "hands") return;
  const part = meant.get(index);
  chain.ready = Math.max(endAt(problem, times, index - 1), (part?.opens ?? 0) - early, chain.floor);
  chain.wanted = part === undefined ? chain.ready : wantedStart(chain, index, part.closes);
  const tiedTo = chain.tiedTo[index];
  if (tiedTo !== undefined) {
    chain.latest = latestTied(problem, chain, index, tiedTo);
    return;
  }
  // What is tied together begins when the windows can be kept, were the chain alone.
  chain.latest = Number.POSITIVE_INFINITY;
  const block = chain.track.blocks.find(([first, last]) => first <= index && index <= last)!;
  const trial = copyOf(times);
  trial.holds[index] = chain.ready;
  settle(
    problem,
    track,
    trial,
    index,
    block[1],
    shopFit(problem),
    horizonOf(problem, chain.ready, chain.reach),
  );
  chain.ready = Math.max(chain.ready, trial.starts[index]!);
}

/** The latest start with which what is meant for the same part of an opening can still be done in it. */
function wantedStart({ track, meant }: Chain, index: number, closes: number): number {
  let time = closes;
  let last = index;
  for (const hands of track.hands) {
    if (hands <= last) continue;
    if (meant.get(hands)?.closes !== closes) break;
    last = hands;
  }
  for (let at = last; at >= index; at--) {
    const step = track.steps[at]!;
    if (step.kind === "hands") time -= step.work;
    else if (step.kind === "wait" && step.of >= index) time -= step.time;
  }
  return time;
}

/** The latest start of a tied task from which the rest of what is tied can be done, were the chain alone. */
function latestTied(
  problem: Problem,
  { track, times, ready, reach }: Chain,
  index: number,
  last: number,
): number {
  const step = track.steps[index]!;
  if (step.kind !== "hands") return ready;
  const closes =
    step.window === undefined
      ? Number.POSITIVE_INFINITY
      : endAt(problem, times, step.window.of) + step.window.within;
  if (!Number.isFinite(closes)) return Number.POSITIVE_INFINITY;
  for (let at = latestStartAt(problem.shop, closes, step.work, step.whole); at > ready; ) {
    const trial = copyOf(times);
    trial.holds[index] = at;
    const failed = settle(
      problem,
      track,
      trial,
      index,
      last,
      shopFit(problem),
      horizonOf(problem, at, reach),
    );
    if (failed === undefined && trial.starts[index] === at) return at;
    // The opening before.
    at = latestStartByEnd(problem.shop, at, step.work, step.whole);
  }
  return ready;
}

const copyOf = ({ starts, ends, holds }: Times): Times => ({
  starts: [...starts],
  ends: [...ends],
  holds: [...holds],
});

interface Choice {
  readonly chain: Chain;
  readonly start: number;
  readonly end: number;
}

/** Of the tasks that can begin before the first of them would end, the most pressing. */
function mostPressing(problem: Problem, going: readonly Chain[], free: number): Choice {
  const starts = new Float64Array(going.length);
  const ends = new Float64Array(going.length);
  const asSoonAsFree = new Map<number, number>();
  let firstStart = Number.POSITIVE_INFINITY;
  let firstEnd = Number.POSITIVE_INFINITY;
  for (let place = 0; place < going.length; place++) {
    const { track, position, ready } = going[place]!;
    const step = track.steps[track.hands[position]!]!;
    const work = step.kind === "hands" ? step.work : 0;
    const whole = step.kind === "hands" && step.whole;
    const isReady = work > 0 && ready <= free;
    // Most wait for hands only, and tasks alike find them at the same time.
    const alike = whole ? -work : work;
    const start =
      (isReady ? asSoonAsFree.get(alike) : undefined) ??
      earliestStart(problem.shop, isReady ? free : ready, work, whole);
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
  return { chain: going[best!]!, start: starts[best!]!, end: ends[best!]! };
}

/** Whether one chain's next task goes before another's: first what must be done today. */
function isMorePressing(a: Chain, b: Chain, today: number): boolean {
  const mustA = a.latest <= today;
  if (mustA !== b.latest <= today) return mustA;
  if (mustA) return a.latest < b.latest;
  return Math.min(a.wanted, a.latest) < Math.min(b.wanted, b.latest);
}

/** The chains that went well, and those that did not wherever there is room for them. */
function withLate(
  problem: Problem,
  chains: readonly Chain[],
  late: readonly Chain[],
  reach: readonly number[],
): Plan | undefined {
  const times = chains.map((chain) => chain.times);
  let finish = problem.start;
  const profile = makeProfile(problem.shop, problem.crew);
  const book = (track: Track, placed: Times): void => {
    for (const index of track.hands) {
      const step = track.steps[index]!;
      if (step.kind === "hands") profile.take(placed.starts[index]!, step.work);
    }
    finish = Math.max(finish, placed.ends.at(-1) ?? finish);
  };
  for (const chain of chains) if (!late.includes(chain)) book(chain.track, chain.times);
  for (const { place, track } of late) {
    const placed = emptyTimes(track);
    const horizon = horizonOf(problem, finish, reach[place]!);
    if (settle(problem, track, placed, 0, track.steps.length - 1, profile.findStart, horizon) !== undefined)
      return undefined;
    book(track, placed);
    times[place] = placed;
  }
  return { times, finish };
}
