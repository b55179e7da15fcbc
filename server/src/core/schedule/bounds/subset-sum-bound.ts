/**
 * How much of a job's work fits into an opening, for one person: work that pauses fills whatever there is, but
 * non-preemptive tasks must lie in it side by side.
 *
 * Two things are counted that no arrangement can beat: the greatest sum of task lengths that is not above the opening,
 * and how many tasks of some length or more it holds. The sums are those of the unbounded subset sum problem, by dynamic
 * programming (Martello and Toth, "Knapsack Problems", 1990) on a grid of the lengths' common measure; where that is too
 * fine the opening itself is the limit.
 */
import { type ShopTime, spanLengths } from "../calendar.ts";

export interface SubsetSums {
  /** The most work in one go, by one person, in an opening of this length. */
  readonly most: (length: number) => number;
  /** Lengths of tasks of which an opening holds few: longest first. */
  readonly counted: readonly number[];
  /** Whether tasks in one go can leave time over at all. */
  readonly isTight: boolean;
}

/** Lengths that are counted, at most. */
const mostCounted = 3;
/** Steps of the grid on which lengths are added up, at most. */
const mostSteps = 20_000;

/** `lengths` are those of all tasks in one go, longer than nothing. */
export function makeSubsetSums(shop: ShopTime, lengths: readonly number[]): SubsetSums {
  const distinct = [...new Set(lengths)].sort((a, b) => b - a);
  const measure = distinct.reduce(commonMeasure, 0);
  const longest = Math.max(0, ...spanLengths(shop));
  const canBeSummed = distinct.length > 0 && longest / measure <= mostSteps;
  const reached = canBeSummed ? sums(distinct, measure, longest) : undefined;
  const most = (length: number): number => {
    if (reached === undefined || length > longest) return length;
    return reached[Math.floor(length / measure)]! * measure;
  };
  const counted = distinct.filter((each) => leavesTimeOver(shop, each)).slice(0, mostCounted);
  const isTight = spanLengths(shop).some((length) => most(length) < length) || counted.length > 0;
  return { most, counted, isTight };
}

/** For every number of steps up to `longest` the greatest sum of lengths that is not above it, in steps. */
function sums(lengths: readonly number[], measure: number, longest: number): Int32Array {
  const steps = Math.floor(longest / measure);
  const best = new Int32Array(steps + 1);
  for (let step = 1; step <= steps; step++) {
    let most = best[step - 1]!;
    for (const length of lengths) {
      const rest = step - Math.round(length / measure);
      if (rest >= 0 && best[rest]! === rest) most = Math.max(most, step);
    }
    best[step] = most;
  }
  return best;
}

/** Tasks of this length side by side leave a twentieth of some opening or more. */
const leavesTimeOver = (shop: ShopTime, length: number): boolean =>
  spanLengths(shop).some((span) => span >= length && Math.floor(span / length) * length < 0.95 * span);

function commonMeasure(a: number, b: number): number {
  let [greater, less] = [a, b];
  while (less > 0) [greater, less] = [less, greater % less];
  return greater;
}
