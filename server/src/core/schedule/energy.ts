/**
 * A finish that no plan beats, from the crew's work alone: between any two moments lies only so much working time.
 *
 * For a finish in question every task has an earliest start and a latest end, from its chain alone in this shop. All
 * that must begin after one moment and end before another has to fit in between: the work of the crew as a whole, the
 * tasks in one go opening by opening, and the long ones by their number. Where that is too much no plan ends so early;
 * the earliest finish for which it never is bounds all plans.
 */
import { latestEnds } from "./bounds.ts";
import { hourMs, openingsBetween, workingTimeBetween } from "./calendar.ts";
import { makePacking, type Packing } from "./packing.ts";
import type { Problem, Track } from "./problem.ts";
import type { Times } from "./settle.ts";

/** Chains that are alike. */
export interface Sort {
  readonly track: Track;
  readonly count: number;
  /** The earliest times of one of them by itself. */
  readonly alone: Times;
}

/** How many beginnings, and how many ends to each, are tried. */
const nMoments = 24;
/** Openings that are looked at one by one, at most. */
const mostOpenings = 5000;

export function sortsOf(problem: Problem, alone: ReadonlyMap<number, Times>): readonly Sort[] {
  const sorts = new Map<number, { track: Track; count: number; alone: Times }>();
  for (const track of problem.tracks) {
    const sort = sorts.get(track.sort);
    if (sort === undefined) sorts.set(track.sort, { track, count: 1, alone: alone.get(track.sort)! });
    else sort.count++;
  }
  return [...sorts.values()];
}

/** The lengths of all tasks in one go. */
export function packingOf(problem: Problem): Packing {
  const lengths = new Set<number>();
  for (const track of problem.tracks) {
    for (const step of track.steps)
      if (step.kind === "hands" && step.whole && step.work > 0) lengths.add(step.work);
  }
  return makePacking(problem.shop, [...lengths]);
}

/** A moment before which no plan ends. `alone` are the chains' own earliest times, by sort. */
export function lowestFinish(problem: Problem, alone: ReadonlyMap<number, Times>): number {
  const sorts = sortsOf(problem, alone);
  const lowest = sorts.reduce((most, sort) => Math.max(most, sort.alone.ends.at(-1) ?? 0), problem.start);
  if (!Number.isFinite(problem.crew) || sorts.length === 0) return lowest;
  const packing = packingOf(problem);
  const isTooEarly = (finish: number): boolean => !hasRoom(problem, sorts, packing, finish);
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
  readonly whole: boolean;
  readonly count: number;
}

/** False when the work cannot be done by `finish`, whatever the plan. */
export function hasRoom(problem: Problem, sorts: readonly Sort[], packing: Packing, finish: number): boolean {
  const tasks: Task[] = [];
  for (const { track, count, alone } of sorts) {
    const due = latestEnds(problem, track, finish);
    if (due === undefined) return false;
    for (const index of track.hands) {
      const step = track.steps[index]!;
      if (step.kind !== "hands" || step.work === 0) continue;
      if (alone.ends[index]! > due[index]!) return false;
      tasks.push({ head: alone.starts[index]!, due: due[index]!, work: step.work, whole: step.whole, count });
    }
  }
  tasks.sort((a, b) => a.due - b.due);
  const room = makeRoom(problem, packing, finish);
  const ends = new Set(thinned(tasks.map(({ due }) => due)));
  return thinned(tasks.map(({ head }) => head)).every((from) => isRoomFrom(tasks, from, ends, room, packing));
}

/** Whether all that begins at `from` or later can be done by each of these ends. */
function isRoomFrom(
  tasks: readonly Task[],
  from: number,
  ends: ReadonlySet<number>,
  room: Room,
  { counted }: Packing,
): boolean {
  let work = 0;
  let whole = 0;
  const counts = counted.map(() => 0);
  for (const [place, task] of tasks.entries()) {
    if (task.head >= from) {
      work += task.work * task.count;
      if (task.whole) {
        whole += task.work * task.count;
        for (const [rank, length] of counted.entries()) if (task.work >= length) counts[rank]! += task.count;
      }
    }
    if (tasks[place + 1]?.due === task.due || !ends.has(task.due) || work === 0) continue;
    if (!room(from, task.due, work, whole, counts)) return false;
  }
  return true;
}

/** Whether so much work, so much of it in one go, and so many long tasks fit between two moments. */
type Room = (from: number, to: number, work: number, whole: number, counts: readonly number[]) => boolean;

function makeRoom({ shop, crew, start }: Problem, packing: Packing, finish: number): Room {
  const openings = packing.isTight ? openingsBetween(shop, start, finish, mostOpenings) : undefined;
  const measures = [
    packing.most,
    ...packing.counted.map((each) => (length: number) => Math.floor(length / each)),
  ];
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
  return (from, to, work, whole, counts) => {
    if (work > crew * workingTimeBetween(shop, from, to)) return false;
    if (openings === undefined) return true;
    if (whole > crew * held(0, from, to)) return false;
    return counts.every((count, rank) => count <= crew * held(rank + 1, from, to));
  };
}

/** Index of the first opening that closes after `time`. */
function firstAfter(openings: readonly { readonly closes: number }[], time: number): number {
  let low = 0;
  let high = openings.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (openings[middle]!.closes > time) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Distinct values, evenly thinned out. */
function thinned(values: readonly number[]): readonly number[] {
  const distinct = [...new Set(values)].sort((a, b) => a - b);
  if (distinct.length <= nMoments) return distinct;
  const stride = (distinct.length - 1) / (nMoments - 1);
  return Array.from({ length: nMoments }, (_, place) => distinct[Math.round(place * stride)]!);
}
