/**
 * Good plans for jobs too large to search: several priority rules, then random variations of the best of them.
 *
 * Serial schedule generation places one chain after the other, the parallel one whatever is ready (Kelley, "The
 * critical-path method: resources planning and scheduling", 1963; Kolisch, "Serial and parallel resource-constrained
 * project scheduling methods revisited: Theory and computation", 1996). The weight of a block is its longest tail, the
 * rule known as latest finish time; the variations are biased random sampling (Kolisch and Drexl, "Adaptive search for
 * solving hard project scheduling problems", 1996).
 *
 * Work is placed in blocks, the stretches of a chain that recoat windows tie together; a block goes in whole or not
 * yet, so a window is never missed for want of a free pair of hands. Chains that are alike count as one candidate. The
 * variations come from a fixed sequence of numbers and are limited by items placed, so the same job gives the same plan.
 */
import { horizonOf, leastTails, reachOf } from "./bounds/chain-bounds.ts";
import { emptyTimes, endAt, type Times, timeChain } from "./chain-timing.ts";
import type { Problem, ProblemChain } from "./problem.ts";
import { makeResourceProfile, type ResourceProfile } from "./resource-profile.ts";

/** Start and end of every item, by chain. */
export interface Plan {
  readonly times: readonly Times[];
  readonly finish: number;
}

/** Items that the variations may place in all. */
const mostPlacements = 60_000;

/**
 * The best plan of all rules, or undefined when no rule finds one that respects the windows. `bound` is a moment before
 * which no plan ends; `placements` limits the random variations, 0 for none.
 */
export function scheduleByPriorityRules(
  problem: Problem,
  bound: number,
  placements = mostPlacements,
): Plan | undefined {
  const tails = problem.chains.map((chain) => leastTails(problem, chain));
  const blocks = problem.chains.map((chain) => chain.blocks);
  const reach = problem.chains.map((chain) => reachOf(problem, chain));
  const weights = (chain: number, first: number): number => {
    const step = problem.chains[chain]!.steps[first]!;
    return tails[chain]![first]! + (step.kind === "hands" ? step.work : 0);
  };
  let best: Plan | undefined;
  const keep = (plan: Plan | undefined): void => {
    if (plan !== undefined && (best === undefined || plan.finish < best.finish)) best = plan;
  };
  const isDone = (): boolean => best !== undefined && best.finish <= bound;

  const longestFirst = problem.chains.map((_, chain) => chain).sort((a, b) => weights(b, 0) - weights(a, 0));
  keep(dispatchBlocks(problem, blocks, weights, "next", reach));
  if (!isDone()) keep(dispatchBlocks(problem, blocks, (chain) => -chain, "next", reach));
  if (!isDone()) keep(serialSchedule(problem, longestFirst, reach));
  if (!isDone())
    keep(
      serialSchedule(
        problem,
        problem.chains.map((_, chain) => chain),
        reach,
      ),
    );
  if (!isDone()) keep(dispatchBlocks(problem, blocks, weights, "heaviest", reach));

  const next = chance();
  let order = longestFirst;
  for (
    let left = placements;
    left >= problem.nSteps && !isDone() && problem.nSteps > 0;
    left -= 2 * problem.nSteps
  ) {
    keep(
      dispatchBlocks(
        problem,
        blocks,
        (chain, first) => weights(chain, first) * (0.7 + 0.6 * next()),
        "next",
        reach,
      ),
    );
    const varied = [...order];
    const from = Math.floor(next() * varied.length);
    const [moved] = varied.splice(from, 1);
    varied.splice(Math.floor(next() * (varied.length + 1)), 0, moved!);
    const before = best?.finish;
    keep(serialSchedule(problem, varied, reach));
    if (best?.finish !== before) order = varied;
  }
  return best;
}

/** Puts whole chains in, one after the other, each as early as the crew left over allows. */
function serialSchedule(
  problem: Problem,
  order: readonly number[],
  reach: readonly number[],
): Plan | undefined {
  const profile = makeResourceProfile(problem.shop, problem.crew);
  const times: Times[] = problem.chains.map(emptyTimes);
  let finish = problem.start;
  for (const place of order) {
    const chain = problem.chains[place]!;
    const last = chain.steps.length - 1;
    const placed = emptyTimes(chain);
    const horizon = horizonOf(problem, finish, reach[place]!);
    if (timeChain(problem, chain, placed, 0, last, profile.findStart, horizon) !== undefined)
      return undefined;
    takeAll(chain, placed, profile, 0, last);
    times[place] = placed;
    finish = Math.max(finish, placed.ends.at(-1) ?? problem.start);
  }
  return { times, finish };
}

/**
 * Places one block after the other. `next`: of the blocks that could start before the first of them would end its
 * first task, the heaviest; `heaviest`: of all blocks.
 */
function dispatchBlocks(
  problem: Problem,
  blocks: readonly (readonly (readonly [number, number])[])[],
  weight: (chain: number, first: number) => number,
  choice: "next" | "heaviest",
  reach: readonly number[],
): Plan | undefined {
  const profile = makeResourceProfile(problem.shop, problem.crew);
  const times = problem.chains.map(emptyTimes);
  const position = problem.chains.map(() => 0);
  const weightOf = problem.chains.map((_, chain) =>
    blocks[chain]!.length > 0 ? weight(chain, blocks[chain]![0]![0]) : 0,
  );
  const queues: Queues = new Map();
  for (const chain of problem.chains.keys()) enqueue(queues, problem, blocks, times, position, chain);
  let finish = problem.start;
  for (;;) {
    const candidates = [...queues.values()].map((queue) => queue[0]!.chain).sort((a, b) => a - b);
    if (candidates.length === 0) return { times, finish };
    let chosen = candidates[0]!;
    if (choice === "heaviest") {
      for (const chain of candidates) if (weightOf[chain]! > weightOf[chosen]!) chosen = chain;
    }
    const pool = choice === "heaviest" ? [chosen] : candidates;
    let firstEnd = Number.POSITIVE_INFINITY;
    const starts: number[] = [];
    const ends: number[] = [];
    for (const chain of pool) {
      const [first, last] = blocks[chain]![position[chain]!]!;
      const horizon = horizonOf(problem, finish, reach[chain]!);
      const failed = timeChain(
        problem,
        problem.chains[chain]!,
        times[chain]!,
        first,
        last,
        profile.findStart,
        horizon,
      );
      if (failed !== undefined) return undefined;
      const hands = problem.chains[chain]!.hands.find((index) => index >= first);
      starts.push(hands === undefined ? problem.start : times[chain]!.starts[hands]!);
      ends.push(hands === undefined ? problem.start : times[chain]!.ends[hands]!);
      firstEnd = Math.min(firstEnd, ends.at(-1)!);
    }
    let heaviest = Number.NEGATIVE_INFINITY;
    for (const [place, chain] of pool.entries()) {
      if (starts[place]! >= firstEnd && ends[place] !== firstEnd) continue;
      if (weightOf[chain]! <= heaviest) continue;
      heaviest = weightOf[chain]!;
      chosen = chain;
    }
    const chain = problem.chains[chosen]!;
    const [first, last] = blocks[chosen]![position[chosen]!]!;
    takeAll(chain, times[chosen]!, profile, first, last);
    finish = Math.max(finish, times[chosen]!.ends[last]!);
    dequeue(queues, problem, position, chosen);
    position[chosen]!++;
    enqueue(queues, problem, blocks, times, position, chosen);
    const following = blocks[chosen]![position[chosen]!];
    if (following !== undefined) weightOf[chosen] = weight(chosen, following[0]);
  }
}

/** Chains alike that have come equally far, the one that is ready first at the front; of equals the first. */
type Queues = Map<number, Waiting[]>;

interface Waiting {
  readonly chain: number;
  readonly ready: number;
}

/** Puts a chain into the queue of those that are alike and have come as far, unless it is done. */
function enqueue(
  queues: Queues,
  problem: Problem,
  blocks: readonly (readonly (readonly [number, number])[])[],
  times: readonly Times[],
  position: readonly number[],
  chain: number,
): void {
  const block = blocks[chain]![position[chain]!];
  if (block === undefined) return;
  const key = problem.chains[chain]!.chainClass * 100_000 + position[chain]!;
  const ready = endAt(problem, times[chain]!, block[0] - 1);
  const queue = queues.get(key);
  if (queue === undefined) {
    queues.set(key, [{ chain, ready }]);
    return;
  }
  let place = queue.length;
  while (place > 0 && isBefore({ chain, ready }, queue[place - 1]!)) place--;
  queue.splice(place, 0, { chain, ready });
}

/** Takes the front of a queue away. */
function dequeue(queues: Queues, problem: Problem, position: readonly number[], chain: number): void {
  const key = problem.chains[chain]!.chainClass * 100_000 + position[chain]!;
  const queue = queues.get(key)!;
  queue.shift();
  if (queue.length === 0) queues.delete(key);
}

const isBefore = (a: Waiting, b: Waiting): boolean =>
  a.ready < b.ready || (a.ready === b.ready && a.chain < b.chain);

function takeAll(
  chain: ProblemChain,
  times: Times,
  profile: ResourceProfile,
  first: number,
  last: number,
): void {
  for (const index of chain.hands) {
    const step = chain.steps[index]!;
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
