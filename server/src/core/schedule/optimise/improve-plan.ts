/**
 * Brings a plan and its bound together: prices prove finishes too early, and the mixture that proves nothing shows which
 * chain goes best into which openings.
 *
 * First it is asked whether the plan could be any earlier at all, then how late a finish can be ruled out. From mixtures
 * for finishes between bound and plan whole plans are made: as many chains of a class go a assignment as its share says. All is
 * counted in steps, so that the same job gives the same plan.
 */
import { reachOf } from "../bounds/chain-bounds.ts";
import { chainClassesOf, subsetSumsOf } from "../bounds/energetic-bound.ts";
import { dayMs, minuteMs } from "../calendar.ts";
import type { Times } from "../chain-timing.ts";
import { chance, type Plan } from "../priority-rules.ts";
import type { Problem } from "../problem.ts";
import { type Budget, type Mixture, type PreferredSlots, solveMaster } from "./column-generation.ts";
import { type DispatchRule, parallelDispatch } from "./parallel-dispatch.ts";

/** Steps for the prices. */
const priceLimit = 1_200_000;
/** Looks at a task in plans from one mixture. */
const planLimit = 600_000;
/** Plans from one mixture, at most. */
const mostPlans = 24;
/** Where between bound and plan mixtures are made, and into how many parts openings are cut for them. */
const mixtures = [
  { fraction: 0.03, nParts: 1 },
  { fraction: 0.2, nParts: 2 },
  { fraction: 0.6, nParts: 1 },
];
/** A gap that no further plan is made for. */
const smallGap = 0.003;

/** How strictly plans keep to a mixture, in turn. */
const manners: readonly Omit<DispatchRule, "preferred">[] = [
  { early: dayMs, again: 0 },
  { early: Number.MAX_SAFE_INTEGER, again: 1 },
  { early: 4 * dayMs, again: 0 },
  { early: 4 * dayMs, again: 1 },
  { early: 0, again: 0 },
  { early: Number.MAX_SAFE_INTEGER, again: 0 },
];

export interface Improved {
  readonly plan: Plan | undefined;
  /** No plan ends before. */
  readonly bound: number;
}

/** The better of `first` and the plans from mixtures, with a bound that is no lower than `low`. */
export function improveByColumns(
  problem: Problem,
  alone: ReadonlyMap<number, Times>,
  first: Plan | undefined,
  low: number,
): Improved {
  if (first === undefined || problem.nHands === 0) return { plan: first, bound: low };
  const classes = chainClassesOf(problem, alone);
  const sums = subsetSumsOf(problem);
  const budget: Budget = { left: priceLimit };
  const isTooEarly = (finish: number): boolean =>
    solveMaster(problem, classes, sums, finish, budget, { enough: 1, nParts: 2 }).isTooEarly;
  if (isTooEarly(first.finish - 1)) return { plan: first, bound: first.finish };
  const lowest = raised(low, first.finish, isTooEarly);
  let plan = first;
  for (const { fraction, nParts } of mixtures) {
    if (plan.finish - lowest <= smallGap * (lowest - problem.start)) break;
    const finish = Math.floor(lowest + (plan.finish - lowest) * fraction);
    const mixture = solveMaster(problem, classes, sums, finish, budget, { enough: 0, nParts });
    if (!mixture.isTooEarly && mixture.shares !== undefined)
      plan = planFrom(problem, mixture.shares, plan, lowest);
  }
  const isBest = plan !== first && isTooEarly(plan.finish - 1);
  return { plan, bound: isBest ? plan.finish : lowest };
}

/** A moment before which no plan ends, found by prices: at least `low`, at most `high`, the end of some plan. */
export function boundByColumns(
  problem: Problem,
  alone: ReadonlyMap<number, Times>,
  low: number,
  high: number,
): number {
  if (low >= high || problem.nHands === 0) return low;
  const classes = chainClassesOf(problem, alone);
  const sums = subsetSumsOf(problem);
  const budget: Budget = { left: priceLimit / 2 };
  const isTooEarly = (finish: number): boolean =>
    solveMaster(problem, classes, sums, finish, budget, { enough: 1, nParts: 2 }).isTooEarly;
  return isTooEarly(high - 1) ? high : raised(low, high, isTooEarly);
}

/** The latest finish found that is too early, between `low`, below which all are, and `high`, which is none. */
function raised(low: number, high: number, isTooEarly: (finish: number) => boolean): number {
  const span = high - low;
  // Where a finish right above the bound cannot be ruled out, hardly a later one can.
  const near = Math.min(high - 1, low + Math.ceil(span / 40));
  if (!isTooEarly(near)) return low;
  let [early, late] = [near, high - 1];
  while (late - early > Math.max(minuteMs, span / 100)) {
    const middle = Math.floor((early + late) / 2);
    if (isTooEarly(middle)) early = middle;
    else late = middle;
  }
  return early;
}

/** The best of `plan` and of plans whose chains are assigned by their shares. */
function planFrom(problem: Problem, shares: readonly Mixture[], plan: Plan, lowest: number): Plan {
  const looks = problem.nHands * (problem.chains.length + 30);
  const count = Math.min(mostPlans, Math.floor(planLimit / looks));
  const reach = problem.chains.map((chain) => reachOf(problem, chain));
  const next = chance();
  let best = plan;
  for (let turn = 0; turn < count && best.finish > lowest; turn++) {
    // At first as the shares are, then the last digit by chance.
    const preferred = preferredBy(problem, shares, turn < manners.length ? () => 1 : next);
    const manner = manners[turn % manners.length]!;
    const other = parallelDispatch(problem, { ...manner, preferred: (chain) => preferred[chain]! }, reach);
    if (other !== undefined && other.finish < best.finish) best = other;
  }
  return best;
}

/** By chain, the slots it prefers: whole numbers of chains for the shares of their class. */
function preferredBy(
  problem: Problem,
  shares: readonly Mixture[],
  next: () => number,
): readonly PreferredSlots[] {
  const preferred: PreferredSlots[] = problem.chains.map(() => new Map());
  for (const { chainClass, assignments } of shares) {
    const begins = (assignment: PreferredSlots): number =>
      Math.min(...[...assignment.values()].map(({ opens }) => opens));
    const inOrder = [...assignments].sort((a, b) => begins(a.preferred) - begins(b.preferred));
    const counts = wholeNumbers(
      inOrder.map(({ share }) => share * chainClass.count),
      chainClass.count,
      next,
    );
    const ofEach = inOrder.flatMap((assignment, rank) =>
      Array.from({ length: counts[rank]! }, () => assignment.preferred),
    );
    let taken = 0;
    for (const [place, chain] of problem.chains.entries())
      if (chain.chainClass === chainClass.chain.chainClass)
        preferred[place] = ofEach[taken++] ?? preferred[place]!;
  }
  return preferred;
}

/** Numbers that add up to `total`, each next to its part; `next` weighs who gets what is left over. */
function wholeNumbers(parts: readonly number[], total: number, next: () => number): readonly number[] {
  const counts = parts.map((part) => Math.floor(part + 1e-9));
  const byRest = parts
    .map((part, place) => ({ place, weight: (part - counts[place]!) * next() }))
    .sort((a, b) => b.weight - a.weight);
  let left = total - counts.reduce((sum, count) => sum + count, 0);
  for (let turn = 0; left > 0 && byRest.length > 0; turn++, left--)
    counts[byRest[turn % byRest.length]!.place]!++;
  return counts;
}
