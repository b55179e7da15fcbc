/**
 * Proves a small job's earliest finish, or betters the plan it is given, by branch and bound (Land and Doig, "An
 * automatic method of solving discrete programming problems", 1960).
 *
 * The search goes through the lists of tasks in the order in which they start. It leaves out what cannot beat the best
 * plan, mirror images among chains that are alike, and, where no window is open, partial schedules that another one
 * dominates (the cutset rule of Demeulemeester and Herroelen, "A branch-and-bound procedure for the multiple
 * resource-constrained project scheduling problem", 1992) and idling while a task would fit. Its limit is counted in items
 * worked out, never in time, so that the same job gives the same answer.
 */
import type { Plan } from "../priority-rules.ts";
import type { Problem, ProblemChain } from "../problem.ts";
import {
  emptySchedule,
  extend,
  finishOf,
  leastFinish,
  makeSearch,
  nextChains,
  type PartialSchedule,
  type Search,
  windowsOf,
} from "./partial-schedule.ts";

export interface Searched {
  readonly plan: Plan | undefined;
  /** The plan is the best there is, or there is none. */
  readonly isExact: boolean;
}

/** Items the search may work out. */
const searchLimit = 600_000;
/** Tasks above which a search could prove nothing within its limit. */
const mostTasks = 60;
const mostRemembered = 50_000;

/** Betters `plan`, if the job is small enough to search. `bound` is a finish that no plan beats. */
export function branchAndBound(problem: Problem, plan: Plan | undefined, bound: number): Searched {
  if (problem.nHands > mostTasks) return { plan, isExact: false };
  const search = makeSearch(problem, plan, searchLimit);
  explore(search, emptySchedule(problem), bound, { states: new Map(), count: 0 });
  return { plan: search.best, isExact: search.left > 0 };
}

/** Partial schedules gone through, by how far each chain has come. */
interface Memory {
  readonly states: Map<string, (readonly number[])[]>;
  count: number;
}

function explore(search: Search, partial: PartialSchedule, bound: number, memory: Memory): void {
  const { problem } = search;
  if (search.left <= 0 || (search.best !== undefined && search.best.finish <= bound)) return;
  const chains = nextChains(problem, partial);
  if (chains.length === 0) {
    const finish = finishOf(problem, partial);
    if (finish < search.bound) {
      search.best = { times: partial.times, finish };
      search.bound = finish;
    }
    return;
  }
  const isClear = problem.chains.every((chain, place) => !isWindowOpen(chain, partial.position[place]!));
  if (isClear && isDominated(problem, partial, memory)) return;
  const children: { readonly next: PartialSchedule; readonly start: number; readonly tail: number }[] = [];
  let firstEnd = Number.POSITIVE_INFINITY;
  for (const chain of chains) {
    const next = extend(search, partial, chain);
    if (next === undefined) continue;
    const hand = partial.position[chain]!;
    const index = problem.chains[chain]!.hands[hand]!;
    children.push({ next, start: next.times[chain]!.starts[index]!, tail: search.tails[chain]![index]! });
    const end = next.times[chain]!.ends[index]!;
    if (isClear && !search.isHolder[chain]![hand]) firstEnd = Math.min(firstEnd, end);
  }
  children.sort((a, b) => a.start - b.start || b.tail - a.tail);
  for (const child of children) {
    // Somebody idle could do a whole task before this one starts.
    if (child.start >= firstEnd) continue;
    if (leastFinish(search, child.next) < search.bound) explore(search, child.next, bound, memory);
  }
}

/** Another partial schedule with the same tasks was in no respect later; otherwise this one is remembered. */
function isDominated(problem: Problem, partial: PartialSchedule, memory: Memory): boolean {
  const state = [partial.latest, ...partial.free];
  for (const [place, chain] of problem.chains.entries()) {
    const until = chain.hands[partial.position[place]!] ?? chain.steps.length;
    const { ends } = partial.times[place]!;
    for (let index = 0; index < until; index++) {
      if (index === until - 1 || isCountedLater(chain, index, until)) state.push(ends[index]!);
    }
  }
  const key = partial.position.join();
  const others = memory.states.get(key) ?? [];
  if (others.some((other) => other.every((time, place) => time <= state[place]!))) return true;
  if (memory.count < mostRemembered) {
    memory.count++;
    memory.states.set(key, [...others, state]);
  }
  return false;
}

/** Whether a wait at or after `until` counts from the item. */
function isCountedLater(chain: ProblemChain, item: number, until: number): boolean {
  return chain.steps.some((step, index) => index >= until && step.kind === "wait" && step.of === item);
}

/** Whether a task already listed can still be held back by the window of one that is not. */
function isWindowOpen(chain: ProblemChain, position: number): boolean {
  const next = chain.hands[position] ?? chain.steps.length;
  return windowsOf(chain).some(({ holder, index }) => holder < next && index >= next);
}
