/**
 * Plans as lists of tasks in the order in which they start: the ground on which the searches move.
 *
 * Serial schedule generation task by task: given the list, no task starts before the one listed before it, nor before
 * one of the crew is free; a window that would be missed holds back the task it counts from, and the list is gone
 * through again. Whatever a list can reach, its earliest times reach, so searching lists is searching plans. How the
 * lists are chosen is for the searches; what is worked out here is counted in items, the searches' only clock.
 */
import { leastTails, reachOf, runOut } from "../bounds/chain-bounds.ts";
import { endAfterWork, workingTimeBefore } from "../calendar.ts";
import { emptyTimes, endAt, placeWait, pushEarliestStart, type Times } from "../chain-timing.ts";
import type { Plan } from "../priority-rules.ts";
import type { Problem, ProblemChain } from "../problem.ts";
import { earliestStart, endOf } from "../task-placement.ts";

/** A list of tasks as far as it goes, with its earliest times. Copied, not changed, once it is done. */
export interface PartialSchedule {
  times: Times[];
  /** By chain, how many tasks are in the list. */
  readonly position: number[];
  /** When each of the crew is free, earliest first. */
  readonly free: number[];
  /** Start of the task listed last. */
  latest: number;
  /** Chains in the order in which their tasks are listed. */
  readonly order: number[];
}

export interface Search {
  readonly problem: Problem;
  readonly tails: readonly (readonly number[])[];
  /** Tasks with the most to run after them first. */
  readonly byTail: readonly {
    readonly chain: number;
    readonly place: number;
    readonly work: number;
    readonly tail: number;
  }[];
  /** By chain and hands place: some window counts from this task. */
  readonly isHolder: readonly (readonly boolean[])[];
  best: Plan | undefined;
  /** Only what ends before this is of use. */
  bound: number;
  left: number;
}

/** `limit` is the number of items that may be worked out. */
export function makeSearch(problem: Problem, plan: Plan | undefined, limit: number): Search {
  const tails = problem.chains.map((chain) => leastTails(problem, chain));
  const byTail = problem.chains.flatMap((chain, place) =>
    chain.hands.map((index, hand) => ({
      chain: place,
      place: hand,
      work: workOf(chain, index),
      tail: tails[place]![index]!,
    })),
  );
  const isHolder = problem.chains.map((chain) => {
    const holders = new Set(windowsOf(chain).map((window) => window.holder));
    return chain.hands.map((index) => holders.has(index));
  });
  // Without a plan, so late that all chains could have been done one after the other.
  const reach = problem.chains.reduce((sum, chain) => sum + reachOf(problem, chain), 0);
  return {
    problem,
    tails,
    byTail: byTail.sort((a, b) => b.tail - a.tail),
    isHolder,
    best: plan,
    bound: plan?.finish ?? Math.max(problem.start, problem.shop.settledFrom) + reach + 1,
    left: limit,
  };
}

/** The list with nothing in it yet. */
export function emptySchedule(problem: Problem): PartialSchedule {
  const times = problem.chains.map(emptyTimes);
  for (const [place, chain] of problem.chains.entries()) carryOn(problem, chain, times[place]!, 0);
  return {
    times,
    position: problem.chains.map(() => 0),
    free: Array.from({ length: problem.crew }, () => problem.start),
    latest: problem.start,
    order: [],
  };
}

/** The end of a list that holds every task. */
export function finishOf(problem: Problem, partial: PartialSchedule): number {
  return Math.max(problem.start, ...partial.times.map(({ ends }) => ends.at(-1) ?? problem.start));
}

/** The chains whose next task may be listed next. A task without length takes nobody and goes first. */
export function nextChains(problem: Problem, { position }: PartialSchedule): readonly number[] {
  const chains: number[] = [];
  const leaders = new Map<number, number>();
  for (const [place, chain] of problem.chains.entries()) {
    const ahead = leaders.get(chain.chainClass);
    leaders.set(chain.chainClass, place);
    const index = chain.hands[position[place]!];
    if (index === undefined) continue;
    if (workOf(chain, index) === 0) return [place];
    // Of chains alike, the one named first begins first, and without windows stays ahead.
    const isBound = ahead !== undefined && (!chain.hasWindows || position[place] === 0);
    if (!isBound || position[ahead]! > position[place]!) chains.push(place);
  }
  return chains;
}

/** The list with one more task; undefined when it cannot keep its windows or ends too late. */
export function extend(search: Search, partial: PartialSchedule, chain: number): PartialSchedule | undefined {
  const { problem } = search;
  const next: PartialSchedule = {
    times: partial.times.map((times, place) => (place === chain ? copyTimes(times) : times)),
    position: [...partial.position],
    free: [...partial.free],
    latest: partial.latest,
    order: [...partial.order, chain],
  };
  let held = listNext(search, next, chain);
  if (held === false) return next;
  const { order } = next;
  next.times = next.times.map((times, place) => (place === chain ? times : copyTimes(times)));
  while (held === true) {
    for (const [place, times] of next.times.entries()) carryOn(problem, problem.chains[place]!, times, 0);
    next.position.fill(0);
    next.free.fill(problem.start);
    next.latest = problem.start;
    for (const place of order) {
      held = listNext(search, next, place);
      if (held !== false) break;
    }
  }
  return held === undefined ? undefined : next;
}

/**
 * Gives the next task of a chain its earliest times. True: its window was missed and what it counts from is now held
 * back, so the list must be gone through again. Undefined: it is of no use.
 */
function listNext(search: Search, list: PartialSchedule, place: number): boolean | undefined {
  const { problem } = search;
  const chain = problem.chains[place]!;
  const times = list.times[place]!;
  const index = chain.hands[list.position[place]!]!;
  const step = chain.steps[index]!;
  if (step.kind !== "hands") return undefined;
  search.left--;
  const ready = Math.max(endAt(problem, times, index - 1), times.holds[index]!);
  const from = step.work === 0 ? ready : Math.max(ready, list.latest, list.free[0]!);
  const start = earliestStart(problem.shop, from, step.work, step.nonPreemptive);
  const end = endOf(problem.shop, start, step.work);
  if (end >= search.bound || search.left <= 0) return undefined;
  times.starts[index] = start;
  times.ends[index] = end;
  if (step.window !== undefined && start > endAt(problem, times, step.window.of) + step.window.within) {
    pushEarliestStart(problem, chain, times, step.window.of, start - step.window.within);
    return true;
  }
  if (step.work > 0) {
    list.latest = start;
    list.free[0] = end;
    list.free.sort((a, b) => a - b);
  }
  list.position[place]!++;
  carryOn(problem, chain, times, index + 1);
  return false;
}

/** Gives times to the waits from item `from` up to the next task. */
function carryOn(problem: Problem, chain: ProblemChain, times: Times, from: number): void {
  for (let index = from; index < chain.steps.length; index++) {
    const step = chain.steps[index]!;
    if (step.kind === "hands") return;
    placeWait(problem, times, index, step);
  }
}

/** A moment before which no plan with this partial schedule ends. */
export function leastFinish(search: Search, partial: PartialSchedule): number {
  const { problem } = search;
  search.left -= problem.nSteps;
  const floor = Math.max(partial.latest, partial.free[0]!);
  let bound = problem.start;
  for (const [place, chain] of problem.chains.entries()) {
    const { ends } = partial.times[place]!;
    const from = chain.hands[partial.position[place]!];
    const end = from === undefined ? ends.at(-1) : runOut(problem, chain, [...ends], from, floor);
    bound = Math.max(bound, end ?? problem.start);
  }
  const free = partial.free.map((time) => workingTimeBefore(problem.shop, Math.max(time, partial.latest)));
  let work = 0;
  for (const [rank, task] of search.byTail.entries()) {
    if (task.place < partial.position[task.chain]!) continue;
    work += task.work;
    if (work === 0 || search.byTail[rank + 1]?.tail === task.tail) continue;
    bound = Math.max(bound, endAfterWork(problem.shop, shareOut(free, work)) + task.tail);
  }
  return bound;
}

/** When people free at these moments, earliest first, can have done `work` together. */
function shareOut(free: readonly number[], work: number): number {
  let sum = 0;
  for (const [place, moment] of free.entries()) {
    sum += moment;
    const level = Math.ceil((work + sum) / (place + 1));
    if (level <= (free[place + 1] ?? Number.POSITIVE_INFINITY)) return level;
  }
  return sum;
}

export function windowsOf(
  chain: ProblemChain,
): readonly { readonly holder: number; readonly index: number }[] {
  if (!chain.hasWindows) return [];
  return chain.steps.flatMap((step, index) =>
    step.kind === "hands" && step.window !== undefined ? [{ holder: step.window.of, index }] : [],
  );
}

function workOf(chain: ProblemChain, index: number): number {
  const step = chain.steps[index]!;
  return step.kind === "hands" ? step.work : 0;
}

function copyTimes(times: Times): Times {
  return { starts: [...times.starts], ends: [...times.ends], holds: [...times.holds] };
}
