/**
 * Proves a small job's earliest finish, or betters the plan of the rules, by branch and bound.
 *
 * The search goes through the lists of tasks in the order in which they start. It leaves out what cannot beat the best
 * plan, mirror images among chains that are alike, and, where no window is open, beginnings that another beginning has
 * overtaken and idling while a task would fit. Its limit is counted in items worked out, never in time, so that the same
 * job gives the same answer.
 */
import type { Plan } from "./heuristic.ts";
import {
  type Beginning,
  emptyBeginning,
  extend,
  finishOf,
  leastFinish,
  makeSearch,
  nextTracks,
  type Search,
  windowsOf,
} from "./listing.ts";
import type { Problem, Track } from "./problem.ts";

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

/** Betters `plan`, if the job is small enough to search. `lowest` is a finish that no plan beats. */
export function searchPlan(problem: Problem, plan: Plan | undefined, lowest: number): Searched {
  if (problem.nHands > mostTasks) return { plan, isExact: false };
  const search = makeSearch(problem, plan, searchLimit);
  explore(search, emptyBeginning(problem), lowest, { states: new Map(), count: 0 });
  return { plan: search.best, isExact: search.left > 0 };
}

/** Beginnings gone through, by how far each track has come. */
interface Memory {
  readonly states: Map<string, (readonly number[])[]>;
  count: number;
}

function explore(search: Search, beginning: Beginning, lowest: number, memory: Memory): void {
  const { problem } = search;
  if (search.left <= 0 || (search.best !== undefined && search.best.finish <= lowest)) return;
  const tracks = nextTracks(problem, beginning);
  if (tracks.length === 0) {
    const finish = finishOf(problem, beginning);
    if (finish < search.bound) {
      search.best = { times: beginning.times, finish };
      search.bound = finish;
    }
    return;
  }
  const isClear = problem.tracks.every((track, place) => !isWindowOpen(track, beginning.position[place]!));
  if (isClear && isOvertaken(problem, beginning, memory)) return;
  const children: { readonly next: Beginning; readonly start: number; readonly tail: number }[] = [];
  let firstEnd = Number.POSITIVE_INFINITY;
  for (const track of tracks) {
    const next = extend(search, beginning, track);
    if (next === undefined) continue;
    const hand = beginning.position[track]!;
    const index = problem.tracks[track]!.hands[hand]!;
    children.push({ next, start: next.times[track]!.starts[index]!, tail: search.tails[track]![index]! });
    const end = next.times[track]!.ends[index]!;
    if (isClear && !search.isHolder[track]![hand]) firstEnd = Math.min(firstEnd, end);
  }
  children.sort((a, b) => a.start - b.start || b.tail - a.tail);
  for (const child of children) {
    // Somebody idle could do a whole task before this one starts.
    if (child.start >= firstEnd) continue;
    if (leastFinish(search, child.next) < search.bound) explore(search, child.next, lowest, memory);
  }
}

/** Another beginning with the same tasks was in no respect later; otherwise this one is remembered. */
function isOvertaken(problem: Problem, beginning: Beginning, memory: Memory): boolean {
  const state = [beginning.latest, ...beginning.free];
  for (const [place, track] of problem.tracks.entries()) {
    const until = track.hands[beginning.position[place]!] ?? track.steps.length;
    const { ends } = beginning.times[place]!;
    for (let index = 0; index < until; index++) {
      if (index === until - 1 || isCountedLater(track, index, until)) state.push(ends[index]!);
    }
  }
  const key = beginning.position.join();
  const others = memory.states.get(key) ?? [];
  if (others.some((other) => other.every((time, place) => time <= state[place]!))) return true;
  if (memory.count < mostRemembered) {
    memory.count++;
    memory.states.set(key, [...others, state]);
  }
  return false;
}

/** Whether a wait at or after `until` counts from the item. */
function isCountedLater(track: Track, item: number, until: number): boolean {
  return track.steps.some((step, index) => index >= until && step.kind === "wait" && step.of === item);
}

/** Whether a task already listed can still be held back by the window of one that is not. */
function isWindowOpen(track: Track, position: number): boolean {
  const next = track.hands[position] ?? track.steps.length;
  return windowsOf(track).some(({ holder, index }) => holder < next && index >= next);
}
