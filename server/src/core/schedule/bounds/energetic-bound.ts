/**
 * A finish that no plan beats, from the crew's work alone: between any two moments lies only so much working time.
 *
 * Energetic reasoning (Erschler, Lopez and Thuriot, "Raisonnement temporel sous contraintes de ressource et problèmes
 * d'ordonnancement", 1991; Baptiste, Le Pape and Nuijten, "Satisfiability tests and time-bound adjustments for cumulative
 * scheduling problems", 1999), here for tasks that lie wholly in an interval. For a finish in question every task has an
 * earliest start and a latest end, from its chain alone in this shop. All that must begin after one moment and end before
 * another has to fit in between: the work of the crew as a whole, the tasks in one go opening by opening, and the long
 * ones by their number. Where that is too much no plan ends so early; the earliest finish for which it never is bounds
 * all plans.
 */

import { firstIndex } from "../../../../../grammar/src/binary-search.ts";
import { hourMs, openingsBetween, workingTimeBetween } from "../calendar.ts";
import type { Times } from "../chain-timing.ts";
import type { Problem, ProblemChain } from "../problem.ts";
import { latestEnds } from "./chain-bounds.ts";
import { makeSubsetSums, type SubsetSums } from "./subset-sum-bound.ts";

/** Chains that are alike. */
export interface ChainClass {
  readonly chain: ProblemChain;
  readonly count: number;
  /** The earliest times of one of them by itself. */
  readonly alone: Times;
}

/** How many beginnings, and how many ends to each, are tried. */
const nMoments = 24;
/** Openings that are looked at one by one, at most. */
const mostOpenings = 5000;

export function chainClassesOf(problem: Problem, alone: ReadonlyMap<number, Times>): readonly ChainClass[] {
  const classes = new Map<number, { chain: ProblemChain; count: number; alone: Times }>();
  for (const chain of problem.chains) {
    const chainClass = classes.get(chain.chainClass);
    if (chainClass === undefined)
      classes.set(chain.chainClass, { chain, count: 1, alone: alone.get(chain.chainClass)! });
    else chainClass.count++;
  }
  return [...classes.values()];
}

/** The lengths of all tasks in one go. */
export function subsetSumsOf(problem: Problem): SubsetSums {
  const lengths = new Set<number>();
  for (const chain of problem.chains) {
    for (const step of chain.steps)
      if (step.kind === "hands" && step.nonPreemptive && step.work > 0) lengths.add(step.work);
  }
  return makeSubsetSums(problem.shop, [...lengths]);
}

/** A moment before which no plan ends. `alone` are the chains' own earliest times, by class. */
export function energeticBound(problem: Problem, alone: ReadonlyMap<number, Times>): number {
  const classes = chainClassesOf(problem, alone);
  const lowest = classes.reduce(
    (most, chainClass) => Math.max(most, chainClass.alone.ends.at(-1) ?? 0),
    problem.start,
  );
  if (!Number.isFinite(problem.crew) || classes.length === 0) return lowest;
  const sums = subsetSumsOf(problem);
  const isTooEarly = (finish: number): boolean => !hasRoom(problem, classes, sums, finish);
  if (!isTooEarly(lowest)) return lowest;
  let early = lowest;
  let step = hourMs;
  while (isTooEarly(early + step)) {
    early += step;
    step *= 2;
  }
  let late = early + step;
  while (late - early > 1) {
    const middle = Math.floor((early + late) / 2);
    if (isTooEarly(middle)) early = middle;
    else late = middle;
  }
  return late;
}

interface Task {
  readonly head: number;
  /** Latest end. */
  readonly due: number;
  readonly work: number;
  readonly nonPreemptive: boolean;
  readonly count: number;
}

/** False when the work cannot be done by `finish`, whatever the plan. */
export function hasRoom(
  problem: Problem,
  classes: readonly ChainClass[],
  sums: SubsetSums,
  finish: number,
): boolean {
  const tasks: Task[] = [];
  for (const { chain, count, alone } of classes) {
    const due = latestEnds(problem, chain, finish);
    if (due === undefined) return false;
    for (const index of chain.hands) {
      const step = chain.steps[index]!;
      if (step.kind !== "hands" || step.work === 0) continue;
      if (alone.ends[index]! > due[index]!) return false;
      tasks.push({
        head: alone.starts[index]!,
        due: due[index]!,
        work: step.work,
        nonPreemptive: step.nonPreemptive,
        count,
      });
    }
  }
  tasks.sort((a, b) => a.due - b.due);
  const room = makeRoom(problem, sums, finish);
  const ends = new Set(thinned(tasks.map(({ due }) => due)));
  return thinned(tasks.map(({ head }) => head)).every((from) => isRoomFrom(tasks, from, ends, room, sums));
}

/** Whether all that begins at `from` or later can be done by each of these ends. */
function isRoomFrom(
  tasks: readonly Task[],
  from: number,
  ends: ReadonlySet<number>,
  room: Room,
  { counted }: SubsetSums,
): boolean {
  let work = 0;
  let nonPreemptive = 0;
  const counts = counted.map(() => 0);
  for (const [place, task] of tasks.entries()) {
    if (task.head >= from) {
      work += task.work * task.count;
      if (task.nonPreemptive) {
        nonPreemptive += task.work * task.count;
        for (const [rank, length] of counted.entries()) if (task.work >= length) counts[rank]! += task.count;
      }
    }
    if (tasks[place + 1]?.due === task.due || !ends.has(task.due) || work === 0) continue;
    if (!room(from, task.due, work, nonPreemptive, counts)) return false;
  }
  return true;
}

/** Whether so much work, so much of it in one go, and so many long tasks fit between two moments. */
type Room = (
  from: number,
  to: number,
  work: number,
  nonPreemptive: number,
  counts: readonly number[],
) => boolean;

function makeRoom({ shop, crew, start }: Problem, sums: SubsetSums, finish: number): Room {
  const openings = sums.isTight ? openingsBetween(shop, start, finish, mostOpenings) : undefined;
  const measures = [sums.most, ...sums.counted.map((each) => (length: number) => Math.floor(length / each))];
  // By measure and opening, what all openings before it hold.
  const before = measures.map((measure) => {
    let sum = 0;
    return openings?.map(({ opens, closes }) => {
      const held = sum;
      sum += measure(closes - opens);
      return held;
    });
  });
  const held = (rank: number, from: number, to: number): number => {
    const measure = measures[rank]!;
    const first = firstAfter(openings!, from);
    const last = firstAfter(openings!, to - 1);
    const at = openings![first];
    if (at === undefined || at.opens >= to) return 0;
    const left = Math.max(from, at.opens);
    if (first >= last) return measure(Math.min(to, at.closes) - left);
    const end = openings![last];
    const between = (before[rank]![last] ?? Number.POSITIVE_INFINITY) - before[rank]![first + 1]!;
    const right = end === undefined || end.opens >= to ? 0 : measure(to - end.opens);
    return measure(at.closes - left) + between + right;
  };
  return (from, to, work, nonPreemptive, counts) => {
    if (work > crew * workingTimeBetween(shop, from, to)) return false;
    if (openings === undefined) return true;
    if (nonPreemptive > crew * held(0, from, to)) return false;
    return counts.every((count, rank) => count <= crew * held(rank + 1, from, to));
  };
}

/** Index of the first opening that closes after `time`. */
const firstAfter = (openings: readonly { readonly closes: number }[], time: number): number =>
  firstIndex(openings, ({ closes }) => closes > time);

/** Distinct values, evenly thinned out. */
function thinned(values: readonly number[]): readonly number[] {
  const distinct = [...new Set(values)].sort((a, b) => a - b);
  if (distinct.length <= nMoments) return distinct;
  const stride = (distinct.length - 1) / (nMoments - 1);
  return Array.from({ length: nMoments }, (_, place) => distinct[Math.round(place * stride)]!);
}
