/**
 * Brings a plan and its bound together: prices prove finishes too early, and the mixture that proves nothing shows which
 * chain goes best into which openings.
 *
 * First it is asked whether the plan could be any earlier at all, then how late a finish can be ruled out. From mixtures
 * for finishes between bound and plan whole plans are made: as many chains of a sort go a way as its share says. All is
 * counted in steps, so that the same job gives the same plan.
 */
import { reachOf } from "./bounds.ts";
import { dayMs, minuteMs } from "./calendar.ts";
import { type DayByDay, planDayByDay } from "./day-by-day.ts";
import { packingOf, sortsOf } from "./energy.ts";
import { chance, type Plan } from "./heuristic.ts";
import type { Problem } from "./problem.ts";
import type { Times } from "./settle.ts";
import { type Budget, type Meant, type Shares, spreadWork } from "./spread.ts";

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
const manners: readonly Omit<DayByDay, "meant">[] = [
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
  readonly lowest: number;
}

/** The better of `first` and the plans from mixtures, with a bound that is no lower than `low`. */
export function improve(
  problem: Problem,
  alone: ReadonlyMap<number, Times>,
  first: Plan | undefined,
  low: number,
): Improved {
  if (first === undefined || problem.nHands === 0) return { plan: first, lowest: low };
  const sorts = sortsOf(problem, alone);
  const packing = packingOf(problem);
  const budget: Budget = { left: priceLimit };
  const isTooEarly = (finish: number): boolean =>
    spreadWork(problem, sorts, packing, finish, budget, { enough: 1, nParts: 2 }).isTooEarly;
  if (isTooEarly(first.finish - 1)) return { plan: first, lowest: first.finish };
  const lowest = raised(low, first.finish, isTooEarly);
  let plan = first;
  for (const { fraction, nParts } of mixtures) {
    if (plan.finish - lowest <= smallGap * (lowest - problem.start)) break;
    const finish = Math.floor(lowest + (plan.finish - lowest) * fraction);
    const mixture = spreadWork(problem, sorts, packing, finish, budget, { enough: 0, nParts });
    if (!mixture.isTooEarly && mixture.shares !== undefined)
      plan = planFrom(problem, mixture.shares, plan, lowest);
  }
  const isBest = plan !== first && isTooEarly(plan.finish - 1);
  return { plan, lowest: isBest ? plan.finish : lowest };
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

/** The best of `plan` and of plans whose chains go their ways by their shares. */
function planFrom(problem: Problem, shares: readonly Shares[], plan: Plan, lowest: number): Plan {
  const looks = problem.nHands * (problem.tracks.length + 30);
  const count = Math.min(mostPlans, Math.floor(planLimit / looks));
  const reach = problem.tracks.map((track) => reachOf(problem, track));
  const next = chance();
  let best = plan;
  for (let turn = 0; turn < count && best.finish > lowest; turn++) {
    // At first as the shares are, then the last digit by chance.
    const meant = meantBy(problem, shares, turn < manners.length ? () => 1 : next);
    const manner = manners[turn % manners.length]!;
    const other = planDayByDay(problem, { ...manner, meant: (track) => meant[track]! }, reach);
    if (other !== undefined && other.finish < best.finish) best = other;
  }
  return best;
}

/** By track, what is meant for it: whole numbers of chains for the shares of their sort. */
function meantBy(problem: Problem, shares: readonly Shares[], next: () => number): readonly Meant[] {
  const meant: Meant[] = problem.tracks.map(() => new Map());
  for (const { sort, ways } of shares) {
    const begins = (way: Meant): number => Math.min(...[...way.values()].map(({ opens }) => opens));
    const inOrder = [...ways].sort((a, b) => begins(a.meant) - begins(b.meant));
    const counts = wholeNumbers(
      inOrder.map(({ share }) => share * sort.count),
      sort.count,
      next,
    );
    const ofEach = inOrder.flatMap((way, rank) => Array.from({ length: counts[rank]! }, () => way.meant));
    let taken = 0;
    for (const [place, track] of problem.tracks.entries())
      if (track.sort === sort.track.sort) meant[place] = ofEach[taken++] ?? meant[place]!;
  }
  return meant;
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
