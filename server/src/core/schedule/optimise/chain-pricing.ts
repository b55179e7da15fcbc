/**
 * Pricing: the cheapest assignment of one chain's tasks to parts of openings, when work costs something in each part.
 *
 * Label setting with dominance by end and cost, as for shortest paths with time windows (Desrochers and Soumis, "A
 * generalized permanent labelling algorithm for the shortest path problem with time windows", 1988).
 *
 * Openings are cut into parts, half days for instance. An assignment says in which parts each task lies. Only what no plan
 * can do without is asked of it: the waits between tasks, openings long enough, the windows as far as whole parts tell, the
 * earliest starts and latest ends of the chain by itself; a task that lies in several parts is paid for in the cheapest of
 * them. So every plan has its assignments, and none is cheaper than the cheapest; that is what makes prices a proof.
 */

import { firstIndex } from "../../../../../grammar/src/binary-search.ts";
import type { ChainClass } from "../bounds/energetic-bound.ts";
import { touchOpening } from "../calendar.ts";
import { waitEnd } from "../chain-timing.ts";
import type { Problem, Step } from "../problem.ts";

/** A part of an opening. */
export interface Part {
  readonly opens: number;
  readonly closes: number;
  /** Number of its opening. */
  readonly opening: number;
}

/** What work costs. */
export interface Prices {
  /** By part: a millisecond of any work. */
  readonly work: Float64Array;
  /** By part: to be at work on the same task at its end and at the beginning of the next. */
  readonly across: Float64Array;
  /** By opening: a millisecond of work in one go, on top. */
  readonly nonPreemptive: Float64Array;
  /** By counted length and opening: a task in one go of that length or more, on top. */
  readonly counted: readonly Float64Array[];
}

/** Where a task lies, numbers of parts. */
export interface Interval {
  readonly first: number;
  readonly last: number;
  readonly paidAt: number;
}

export interface ChainAssignment {
  readonly cost: number;
  /** By task that is any work. */
  readonly intervals: readonly Interval[];
}

/** A task that is any work. */
export interface PricedTask {
  /** Index of its step. */
  readonly index: number;
  readonly work: number;
  readonly nonPreemptive: boolean;
  readonly head: number;
  readonly due: number;
  /** How many of the counted lengths it reaches, longest first: those from this rank on. */
  readonly rank: number;
  /** It begins within so long after the end of the task before; Infinity when no window holds it. */
  readonly tie: number;
}

export interface ChainPricing {
  readonly tasks: readonly PricedTask[];
  /** Undefined when there is none. */
  readonly cheapest: (prices: Prices) => ChainAssignment | undefined;
  /** Steps taken so far, the searches' clock. */
  readonly steps: () => number;
}

/** A task placed, with the earliest end that the assignment so far allows. */
interface Label extends Interval {
  readonly end: number;
  readonly cost: number;
  readonly before: Label | undefined;
}

/** Windows longer than this tie nothing that a search could feel. */
const longestTieMs = 30 * 86_400_000;

/** `due` are the latest ends of the chain's items, `counted` lengths from the longest down. */
export function makeChainPricing(
  problem: Problem,
  parts: readonly Part[],
  { chain, alone }: ChainClass,
  due: readonly number[],
  counted: readonly number[],
): ChainPricing {
  const tasks = tasksOf(chain.steps, alone, due, counted);
  let steps = 0;

  /** The earliest start of the task after `from` once that has ended at `end`. */
  const readyAfter = (from: number, to: number, end: number): number => {
    const ends: number[] = [end];
    let previous = end;
    for (let index = from + 1; index < to; index++) {
      const step = chain.steps[index]!;
      if (step.kind === "hands") previous = touchOpening(problem.shop, previous);
      else {
        const of = step.kind === "wait" ? step.of : -1;
        const counts = of >= from ? ends[of - from]! : of < 0 ? problem.start : alone.ends[of]!;
        previous = waitEnd(problem, step, previous, counts);
      }
      ends.push(previous);
    }
    return previous;
  };

  const cheapest = (prices: Prices): ChainAssignment | undefined => {
    if (tasks.length === 0) return { cost: 0, intervals: [] };
    let labels: readonly Label[] = [];
    for (const [place, task] of tasks.entries()) {
      const before = tasks[place - 1];
      const next = makeParetoFront(parts.length);
      const put = (part: number, ready: number, source: Label | undefined): void => {
        steps++;
        putTask(parts, prices, task, part, Math.max(ready, task.head), source, next.put);
      };
      if (before === undefined) {
        for (let part = firstAfter(parts, task.head); part < parts.length; part++) {
          if (parts[part]!.opens > task.due) break;
          put(part, parts[part]!.opens, undefined);
        }
      } else {
        const sources = labels.map((label) => ({
          label,
          ready: Math.max(task.head, readyAfter(before.index, task.index, label.end)),
        }));
        if (task.tie > longestTieMs) putUntied(parts, task, sources, put);
        else putTied(parts, before, task, sources, put);
      }
      labels = next.labels();
      if (labels.length === 0) return undefined;
    }
    return assignmentTo(labels);
  };
  return { tasks, cheapest, steps: () => steps };
}

function tasksOf(
  steps: readonly Step[],
  alone: ChainClass["alone"],
  due: readonly number[],
  counted: readonly number[],
): readonly PricedTask[] {
  const tasks: PricedTask[] = [];
  for (const [index, step] of steps.entries()) {
    if (step.kind !== "hands" || step.work === 0) continue;
    const rank = step.nonPreemptive ? counted.findIndex((length) => step.work >= length) : -1;
    tasks.push({
      index,
      work: step.work,
      nonPreemptive: step.nonPreemptive,
      head: alone.starts[index]!,
      due: due[index]!,
      rank: rank < 0 ? counted.length : rank,
      tie: Number.POSITIVE_INFINITY,
    });
  }
  // A window from one task to another holds everything between.
  const ties = tasks.map(() => Number.POSITIVE_INFINITY);
  for (const [index, step] of steps.entries()) {
    if (step.kind !== "hands" || step.window === undefined) continue;
    const { of, within } = step.window;
    for (let place = tasks.length - 1; place > 0; place--) {
      if (tasks[place - 1]!.index < of) break;
      if (tasks[place]!.index <= index) ties[place] = Math.min(ties[place]!, within);
    }
  }
  return tasks.map((task, place) => ({ ...task, tie: ties[place]! }));
}

type Put = (part: number, ready: number, source: Label | undefined) => void;

interface Source {
  readonly label: Label;
  readonly ready: number;
}

/** Into every part, from the cheapest of all that can begin with it, and from each that can begin within it. */
function putUntied(parts: readonly Part[], task: PricedTask, sources: readonly Source[], put: Put): void {
  const inOrder = [...sources].sort((a, b) => a.ready - b.ready);
  const first = inOrder[0];
  if (first === undefined) return;
  let best: Label | undefined;
  let next = 0;
  for (let part = firstAfter(parts, first.ready); part < parts.length; part++) {
    const { opens, closes } = parts[part]!;
    if (opens > task.due) return;
    for (; next < inOrder.length && inOrder[next]!.ready <= opens; next++) {
      const { label } = inOrder[next]!;
      if (best === undefined || label.cost < best.cost) best = label;
    }
    if (best !== undefined) put(part, opens, best);
    for (let place = next; place < inOrder.length && inOrder[place]!.ready < closes; place++)
      put(part, inOrder[place]!.ready, inOrder[place]!.label);
  }
}

/** Into the parts that the window reaches, from wherever the task before it may have ended. */
function putTied(
  parts: readonly Part[],
  before: PricedTask,
  task: PricedTask,
  sources: readonly Source[],
  put: Put,
): void {
  for (const { label, ready } of sources) {
    const latest = Math.min(parts[label.last]!.closes, before.due) + task.tie;
    for (let part = firstAfter(parts, ready); part < parts.length; part++) {
      const from = Math.max(parts[part]!.opens, ready);
      if (from > Math.min(latest, task.due)) break;
      put(part, from, label);
    }
  }
}

/** Begins a task in a part at `start` or later, and shelves every part in which it can end. */
function putTask(
  parts: readonly Part[],
  prices: Prices,
  task: PricedTask,
  first: number,
  start: number,
  before: Label | undefined,
  keep: (label: Label) => void,
): void {
  const { opens, closes, opening } = parts[first]!;
  const from = Math.max(start, opens);
  if (from >= closes) return;
  let cost = before?.cost ?? 0;
  if (task.nonPreemptive) {
    cost += task.work * prices.nonPreemptive[opening]!;
    for (let rank = task.rank; rank < prices.counted.length; rank++) cost += prices.counted[rank]![opening]!;
  }
  const isOpenFor = (part: number): boolean =>
    part < parts.length && (!task.nonPreemptive || parts[part]!.opening === opening);
  const earliest = endIn(parts, first, from, task.work, isOpenFor);
  if (earliest === undefined) return;
  // Begun at the very end of this part it ends as if it began with the next one.
  const latest = isOpenFor(first + 1)
    ? endIn(parts, first + 1, parts[first + 1]!.opens, task.work, isOpenFor)
    : undefined;
  const most = latest?.part ?? (isOpenFor(first + 1) ? lastOpen(parts, first, isOpenFor) : earliest.part);
  let paidAt = first;
  for (let part = first; part <= most; part++) {
    if (part > first) cost += prices.across[part - 1]!;
    if (prices.work[part]! < prices.work[paidAt]!) paidAt = part;
    if (part < earliest.part) continue;
    const end = Math.max(earliest.end, parts[part]!.opens);
    if (end > task.due) return;
    keep({ first, last: part, paidAt, end, cost: cost + task.work * prices.work[paidAt]!, before });
  }
}

/** Where and when work ends that begins in a part at `from`; undefined where it finds no end. */
function endIn(
  parts: readonly Part[],
  first: number,
  from: number,
  work: number,
  isOpenFor: (part: number) => boolean,
): { readonly part: number; readonly end: number } | undefined {
  let left = work;
  let time = from;
  for (let part = first; ; part++) {
    if (!isOpenFor(part)) return undefined;
    time = Math.max(time, parts[part]!.opens);
    if (time + left <= parts[part]!.closes) return { part, end: time + left };
    left -= parts[part]!.closes - time;
  }
}

function lastOpen(parts: readonly Part[], from: number, isOpenFor: (part: number) => boolean): number {
  let last = from;
  while (isOpenFor(last + 1) && last < parts.length) last++;
  return last;
}

/** By part, the labels of which none is both earlier and cheaper than another. */
function makeParetoFront(nParts: number): {
  readonly put: (label: Label) => void;
  readonly labels: () => readonly Label[];
} {
  const front: (Label[] | undefined)[] = new Array(nParts);
  return {
    put: (label) => {
      const others = front[label.last];
      if (others === undefined) {
        front[label.last] = [label];
        return;
      }
      if (others.some(({ end, cost }) => end <= label.end && cost <= label.cost)) return;
      front[label.last] = [...others.filter(({ end, cost }) => end < label.end || cost < label.cost), label];
    },
    labels: () => front.flatMap((labels) => labels ?? []),
  };
}

function assignmentTo(labels: readonly Label[]): ChainAssignment {
  let best = labels[0]!;
  for (const label of labels) if (label.cost < best.cost) best = label;
  const intervals: Interval[] = [];
  for (let label: Label | undefined = best; label !== undefined; label = label.before) intervals.push(label);
  return { cost: best.cost, intervals: intervals.reverse() };
}

/** Index of the first part that closes after `time`. */
const firstAfter = (parts: readonly Part[], time: number): number =>
  firstIndex(parts, ({ closes }) => closes > time);
