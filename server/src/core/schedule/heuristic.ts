/**
 * Good plans for jobs too large to search: several priority rules, then chance variations of the best of them.
 *
 * Work is placed in blocks, the stretches of a chain that recoat windows tie together; a block goes in whole or not
 * yet, so a window is never missed for want of a free pair of hands. Chains that are alike count as one candidate. The
 * variations come from a fixed sequence of numbers and are limited by items placed, so the same job gives the same plan.
 */
import { horizonOf, leastTails, reachOf } from "./bounds.ts";
import type { Problem, Track } from "./problem.ts";
import { makeProfile, type Profile } from "./profile.ts";
import { emptyTimes, endAt, settle, type Times } from "./settle.ts";

/** Start and end of every item, by track. */
export interface Plan {
  readonly times: readonly Times[];
  readonly finish: number;
}

/** Items that the variations may place in all. */
const placements = 60_000;

/** The best plan of all rules, or undefined when no rule finds one that respects the windows. */
export function planByRules(problem: Problem, lowest: number): Plan | undefined {
  const tails = problem.tracks.map((track) => leastTails(problem, track));
  const blocks = problem.tracks.map((track) => track.blocks);
  const reach = problem.tracks.map((track) => reachOf(problem, track));
  const weights = (track: number, first: number): number => {
    const step = problem.tracks[track]!.steps[first]!;
    return tails[track]![first]! + (step.kind === "hands" ? step.work : 0);
  };
  let best: Plan | undefined;
  const keep = (plan: Plan | undefined): void => {
    if (plan !== undefined && (best === undefined || plan.finish < best.finish)) best = plan;
  };
  const isDone = (): boolean => best !== undefined && best.finish <= lowest;

  const longestFirst = problem.tracks.map((_, track) => track).sort((a, b) => weights(b, 0) - weights(a, 0));
  keep(dispatch(problem, blocks, weights, "next", reach));
  if (!isDone()) keep(dispatch(problem, blocks, (track) => -track, "next", reach));
  if (!isDone()) keep(insertInOrder(problem, longestFirst, reach));
  if (!isDone())
    keep(
      insertInOrder(
        problem,
        problem.tracks.map((_, track) => track),
        reach,
      ),
    );
  if (!isDone()) keep(dispatch(problem, blocks, weights, "heaviest", reach));

  const next = chance();
  let order = longestFirst;
  for (
    let left = placements;
    left >= problem.nSteps && !isDone() && problem.nSteps > 0;
    left -= 2 * problem.nSteps
  ) {
    keep(
      dispatch(
        problem,
        blocks,
        (track, first) => weights(track, first) * (0.7 + 0.6 * next()),
        "next",
        reach,
      ),
    );
    const varied = [...order];
    const from = Math.floor(next() * varied.length);
    const [moved] = varied.splice(from, 1);
    varied.splice(Math.floor(next() * (varied.length + 1)), 0, moved!);
    const before = best?.finish;
    keep(insertInOrder(problem, varied, reach));
    if (best?.finish !== before) order = varied;
  }
  return best;
}

/** Puts whole chains in, one after the other, each as early as the crew left over allows. */
function insertInOrder(
  problem: Problem,
  order: readonly number[],
  reach: readonly number[],
): Plan | undefined {
  const profile = makeProfile(problem.shop, problem.crew);
  const times: Times[] = problem.tracks.map(emptyTimes);
  let finish = problem.start;
  for (const place of order) {
    const track = problem.tracks[place]!;
    const last = track.steps.length - 1;
    const placed = emptyTimes(track);
    const horizon = horizonOf(problem, finish, reach[place]!);
    if (settle(problem, track, placed, 0, last, profile.findStart, horizon) !== undefined) return undefined;
    takeAll(track, placed, profile, 0, last);
    times[place] = placed;
    finish = Math.max(finish, placed.ends.at(-1) ?? problem.start);
  }
  return { times, finish };
}

/**
 * Places one block after the other. `next`: of the blocks that could start before the first of them would end its
 * first task, the heaviest; `heaviest`: of all blocks.
 */
function dispatch(
  problem: Problem,
  blocks: readonly (readonly (readonly [number, number])[])[],
  weight: (track: number, first: number) => number,
  choice: "next" | "heaviest",
  reach: readonly number[],
): Plan | undefined {
  const profile = makeProfile(problem.shop, problem.crew);
  const times = problem.tracks.map(emptyTimes);
  const position = problem.tracks.map(() => 0);
  const weightOf = problem.tracks.map((_, track) =>
    blocks[track]!.length > 0 ? weight(track, blocks[track]![0]![0]) : 0,
  );
  const queues: Queues = new Map();
  for (const track of problem.tracks.keys()) enqueue(queues, problem, blocks, times, position, track);
  let finish = problem.start;
  for (;;) {
    const candidates = [...queues.values()].map((queue) => queue[0]!.track).sort((a, b) => a - b);
    if (candidates.length === 0) return { times, finish };
    let chosen = candidates[0]!;
    if (choice === "heaviest") {
      for (const track of candidates) if (weightOf[track]! > weightOf[chosen]!) chosen = track;
    }
    const pool = choice === "heaviest" ? [chosen] : candidates;
    let firstEnd = Number.POSITIVE_INFINITY;
    const starts: number[] = [];
    const ends: number[] = [];
    for (const track of pool) {
      const [first, last] = blocks[track]![position[track]!]!;
      const horizon = horizonOf(problem, finish, reach[track]!);
      const failed = settle(
        problem,
        problem.tracks[track]!,
        times[track]!,
        first,
        last,
        profile.findStart,
        horizon,
      );
      if (failed !== undefined) return undefined;
      const hands = problem.tracks[track]!.hands.find((index) => index >= first);
      starts.push(hands === undefined ? problem.start : times[track]!.starts[hands]!);
      ends.push(hands === undefined ? problem.start : times[track]!.ends[hands]!);
      firstEnd = Math.min(firstEnd, ends.at(-1)!);
    }
    let heaviest = Number.NEGATIVE_INFINITY;
    for (const [place, track] of pool.entries()) {
      if (starts[place]! >= firstEnd && ends[place] !== firstEnd) continue;
      if (weightOf[track]! <= heaviest) continue;
      heaviest = weightOf[track]!;
      chosen = track;
    }
    const track = problem.tracks[chosen]!;
    const [first, last] = blocks[chosen]![position[chosen]!]!;
    takeAll(track, times[chosen]!, profile, first, last);
    finish = Math.max(finish, times[chosen]!.ends[last]!);
    dequeue(queues, problem, position, chosen);
    position[chosen]!++;
    enqueue(queues, problem, blocks, times, position, chosen);
    const following = blocks[chosen]![position[chosen]!];
    if (following !== undefined) weightOf[chosen] = weight(chosen, following[0]);
  }
}

/** Tracks alike that have come equally far, the one that is ready first at the front; of equals the first. */
type Queues = Map<number, Waiting[]>;

interface Waiting {
  readonly track: number;
  readonly ready: number;
}

/** Puts a track into the queue of those that are alike and have come as far, unless it is done. */
function enqueue(
  queues: Queues,
  problem: Problem,
  blocks: readonly (readonly (readonly [number, number])[])[],
  times: readonly Times[],
  position: readonly number[],
  track: number,
): void {
  const block = blocks[track]![position[track]!];
  if (block === undefined) return;
  const key = problem.tracks[track]!.sort * 100_000 + position[track]!;
  const ready = endAt(problem, times[track]!, block[0] - 1);
  const queue = queues.get(key);
  if (queue === undefined) {
    queues.set(key, [{ track, ready }]);
    return;
  }
  let place = queue.length;
  while (place > 0 && isBefore({ track, ready }, queue[place - 1]!)) place--;
  queue.splice(place, 0, { track, ready });
}

/** Takes the front of a queue away. */
function dequeue(queues: Queues, problem: Problem, position: readonly number[], track: number): void {
  const key = problem.tracks[track]!.sort * 100_000 + position[track]!;
  const queue = queues.get(key)!;
  queue.shift();
  if (queue.length === 0) queues.delete(key);
}

const isBefore = (a: Waiting, b: Waiting): boolean =>
  a.ready < b.ready || (a.ready === b.ready && a.track < b.track);

function takeAll(track: Track, times: Times, profile: Profile, first: number, last: number): void {
  for (const index of track.hands) {
    const step = track.steps[index]!;
    if (index >= first && index <= last && step.kind === "hands")
      profile.take(times.starts[index]!, step.work);
  }
}

/** Numbers in [0, 1) from a fixed beginning (a linear congruence modulo 2^32). */
export function chance(): () => number {
  let state = 20_270_308;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 4_294_967_296;
  };
}
