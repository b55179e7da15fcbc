/**
 * A moment before which no plan's last work ends, by what sessions take of people's time beyond their tasks: setting up,
 * and the steps of five minutes on which they begin and end.
 *
 * Every task has an earliest start, from its chain alone. The sessions of all tasks that start at some moment or later
 * take people's time from then on: for each kind at least the tasks and setting up for as many sessions as it
 * needs, rounded up once; but whoever is in the middle of a session at that moment may have set up before. No session lies
 * across a closing, so at an opening nobody is. So much work ends no earlier than it does when nobody ever waits.
 *
 * That is head and body of the bound for one machine (Carlier, "The one-machine sequencing problem", 1982) with the
 * set-ups of families of jobs; a plan that keeps people busy from there on is proven by it.
 */
import { onceFor } from "../../once.ts";
import { endAfterWork, lastOpening, nextOpening, workingTimeBefore } from "../calendar.ts";
import { waitEnd } from "../chain-timing.ts";
import { earliestStart } from "../task-placement.ts";
import {
  ceilToGrid,
  floorToGrid,
  type Group,
  gridMs,
  type Kind,
  type SessionProblem,
} from "./session-problem.ts";

/** Moments that are looked at. */
const mostMoments = 40;

/** The tasks of one kind at one place in chains that are alike. */
interface Tasks {
  readonly group: Group;
  readonly index: number;
  readonly kind: Kind;
  /** Milliseconds of each of them, and how many there are. */
  readonly work: number;
  readonly count: number;
  /** Before which none of them starts. */
  readonly head: number;
}

/** How many sessions tasks of one kind need at least, of so much work in all. */
export type LeastSessions = (
  kind: Kind,
  work: number,
  tasks: readonly Pick<Tasks, "group" | "index" | "count">[],
) => number;

/** Moments of the problem; its start where some task is longer than every opening, and where nothing is to be done. */
export interface OccupancyBound {
  readonly lastWork: number;
  /** Before which some chain's last wait has not ended. */
  readonly end: number;
}

export function boundByOccupancy(problem: SessionProblem, leastSessions: LeastSessions): OccupancyBound {
  const tasks: Tasks[] = [];
  let bound = problem.start;
  let end = problem.start;
  for (const group of problem.groups)
    for (const [chain, count] of classesOf(problem, group)) {
      const heads = headsOf(problem, group, chain);
      if (heads === undefined) return { lastWork: problem.start, end: problem.start };
      bound = Math.max(bound, ceilToGrid(heads.lastWork));
      end = Math.max(end, heads.end);
      for (const index of group.pattern.hands)
        tasks.push({
          group,
          index,
          kind: group.kinds[index]!,
          work: problem.works[chain]![index]!,
          count,
          head: heads.starts[index]!,
        });
    }
  const { shop, crew } = problem;
  for (const from of momentsOf(problem, tasks)) {
    const occupied = occupiedFrom(problem, tasks, from, leastSessions);
    bound = Math.max(
      bound,
      ceilToGrid(Math.floor(endAfterWork(shop, workingTimeBefore(shop, from) + occupied / crew))),
    );
  }
  return { lastWork: bound, end };
}

/** One chain of each that are alike in their lengths as well, and how many there are. */
function classesOf({ chains }: SessionProblem, { members }: Group): readonly (readonly [number, number])[] {
  const classes = new Map<number, [chain: number, count: number]>();
  for (const member of members) {
    const known = classes.get(chains[member]!.chainClass);
    if (known === undefined) classes.set(chains[member]!.chainClass, [member, 1]);
    else known[1]++;
  }
  return [...classes.values()];
}

/** When the tasks of a chain start at the earliest; undefined where one fits no opening. */
function headsOf(
  problem: SessionProblem,
  group: Group,
  chain: number,
): { readonly starts: readonly number[]; readonly lastWork: number; readonly end: number } | undefined {
  const { shop, crew, jobs } = problem;
  const offsets = offsetsIn(problem);
  const starts: number[] = [];
  const ends: number[] = [];
  const begin = jobs[group.job]!.start;
  let previous = begin;
  let lastWork = begin;
  for (const [index, step] of problem.chains[chain]!.steps.entries()) {
    if (step.kind === "hands") {
      const { fixed } = group.kinds[index]!;
      const length = fixed + step.work;
      if (ceilToGrid(length) > shop.longest) return undefined;
      const before = group.kinds[index - 1];
      // One person ends a session, on the grid, before setting up for another.
      const isAfterOther = crew === 1 && before !== undefined && before !== group.kinds[index];
      const setUp = isAfterOther ? ceilToGrid(previous) : Math.max(previous - fixed, problem.start);
      starts[index] = startInSession(shop, setUp, { fixed, length }, offsets(chain, index));
      lastWork = starts[index]! + step.work;
      ends[index] = lastWork;
    } else {
      const ready = ceilToGrid(previous);
      const counted = step.kind === "wait" && step.of >= 0 ? ceilToGrid(ends[step.of]!) : begin;
      starts[index] = ready;
      ends[index] = Math.max(ready, ceilToGrid(waitEnd(problem, step, ready, counted)));
    }
    previous = ends[index]!;
    if (!Number.isFinite(previous)) return undefined;
  }
  return { starts, lastWork, end: previous };
}

/** A session, its set-up included, lies in one opening and begins on the grid; the task so far into it. */
function startInSession(
  shop: SessionProblem["shop"],
  from: number,
  { fixed, length }: { readonly fixed: number; readonly length: number },
  offsets: readonly number[] | undefined,
): number {
  for (let setUp = from; ; ) {
    const start = earliestStart(shop, setUp, length, true) + fixed;
    if (offsets === undefined || !Number.isFinite(start)) return start;
    const onGrid = offsets.reduce(
      (first, offset) => Math.min(first, ceilToGrid(start - offset) + offset),
      Number.POSITIVE_INFINITY,
    );
    if (onGrid === start) return start;
    setUp = onGrid - fixed;
  }
}

/** Where a session is to be met with so many offsets, it is taken to be met at any. */
const mostOffsets = 30;

type OffsetsOf = (chain: number, index: number) => readonly number[] | undefined;

/**
 * How far from the grid a task of a chain can start: after setting up and any tasks of the same kind of other chains.
 * Undefined: anywhere.
 */
const offsetsIn = onceFor((problem: SessionProblem): OffsetsOf => {
  const byKind = new Map<Kind, { readonly chain: number; readonly work: number }[]>();
  for (const { kinds, members } of problem.groups)
    for (const chain of members)
      for (const [index, kind] of kinds.entries()) {
        const work = kind === undefined ? 0 : problem.works[chain]![index]! % gridMs;
        if (kind === undefined || work === 0) continue;
        const others = byKind.get(kind);
        if (others === undefined) byKind.set(kind, [{ chain, work }]);
        else others.push({ chain, work });
      }
  return (chain, index) => {
    const kind = problem.groups[problem.groupOf[chain]!]!.kinds[index]!;
    const offsets = new Set([kind.fixed % gridMs]);
    // More tasks of such a length lead to no new offset.
    const spent = new Set<number>();
    for (const other of kind.isApart ? [] : (byKind.get(kind) ?? [])) {
      if (other.chain === chain || spent.has(other.work)) continue;
      const before = offsets.size;
      for (const offset of [...offsets]) offsets.add((offset + other.work) % gridMs);
      if (offsets.size > mostOffsets) return undefined;
      if (offsets.size === before) spent.add(other.work);
    }
    return [...offsets];
  };
});

/** The moments from which on it is looked at what is left to do: the starts of tasks, and the openings before them. */
function momentsOf({ shop, start }: SessionProblem, tasks: readonly Tasks[]): readonly number[] {
  const moments = new Set<number>();
  for (const { head } of tasks) {
    moments.add(Math.max(start, floorToGrid(head)));
    moments.add(Math.max(start, lastOpening(shop, head) ?? start));
  }
  const sorted = [...moments].sort((a, b) => b - a);
  const stride = Math.max(1, (sorted.length - 1) / (mostMoments - 1));
  return Array.from(
    { length: Math.min(mostMoments, sorted.length) },
    (_, place) => sorted[Math.round(place * stride)]!,
  );
}

/** People's time that the sessions take after this moment of all tasks that start no earlier, milliseconds. */
function occupiedFrom(
  { shop, start, crew }: SessionProblem,
  tasks: readonly Tasks[],
  from: number,
  leastSessions: LeastSessions,
): number {
  const byKind = new Map<Kind, Tasks[]>();
  for (const each of tasks) {
    if (each.head < from) continue;
    const others = byKind.get(each.kind);
    if (others === undefined) byKind.set(each.kind, [each]);
    else others.push(each);
  }
  let occupied = 0;
  /** What each person may have set up for before, kind by kind. */
  const spared: number[] = [];
  for (const [kind, those] of byKind) {
    const work = those.reduce((sum, each) => sum + each.work * each.count, 0);
    const sessions = leastSessions(kind, work, those);
    const timeOf = (setUps: number): number => ceilToGrid(kind.fixed * setUps + work);
    occupied += timeOf(sessions);
    for (let setUps = sessions; setUps > Math.max(0, sessions - crew); setUps--)
      spared.push(timeOf(setUps) - timeOf(setUps - 1));
  }
  // Nobody is in the middle of a session when the shop opens, nor at the start.
  if (from === start || nextOpening(shop, from - 1) === from) return occupied;
  const most = spared.sort((a, b) => b - a).slice(0, crew);
  return occupied - most.reduce((sum, time) => sum + time, 0);
}
