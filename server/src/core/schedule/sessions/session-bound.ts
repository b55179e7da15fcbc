/**
 * A moment before which no plan's last work ends, whatever its sessions are.
 *
 * The bounds of single tasks hold for sessions as well, once the waits after the last task are left out: tasks in sessions
 * are non-preemptive tasks, with more rules. What is fixed is added as tasks of nobody's chain, for as many sessions of a
 * kind as its work needs at least. First energetic reasoning, and what closings leave for coats in short windows
 * (`window-bound.ts`) and what sessions take beyond their tasks (`occupancy-bound.ts`), then, up to the plan at hand, column generation, which
 * knows which openings the windows tie to which.
 */
import { earliestByClass } from "../bounds/chain-bounds.ts";
import { energeticBound } from "../bounds/energetic-bound.ts";
import { hourMs } from "../calendar.ts";
import type { Times } from "../chain-timing.ts";
import { boundByColumns } from "../optimise/improve-plan.ts";
import { makeProblem, type Problem } from "../problem.ts";
import type { Chain, ChainItem, ScheduleInput } from "../types.ts";
import { boundByOccupancy, type LeastSessions } from "./occupancy-bound.ts";
import { ceilToGrid, type Group, gridMs, type Kind, type SessionProblem } from "./session-problem.ts";
import { boundByWindows } from "./window-bound.ts";

export interface SessionBound {
  /** By energetic reasoning, at once. */
  readonly lastWork: number;
  /** Of plans with the earliest last work none ends its last wait before; Infinity: each of them does at the same time. */
  readonly end: number;
  /** Raised by column generation, no further than `planned`, the last work of a plan. */
  readonly raisedTo: (planned: number) => number;
}

export function boundSessions(problem: SessionProblem, input: ScheduleInput): SessionBound {
  const relaxed = relax(problem, input);
  const alone = relaxed && earliestByClass(relaxed);
  const byOccupancy = boundByOccupancy(problem, sessionsNeeded(problem));
  const bySessions = Math.max(boundByWindows(problem), byOccupancy.lastWork);
  const end = endsWithWork(problem) ? Number.POSITIVE_INFINITY : byOccupancy.end;
  if (relaxed === undefined || alone === undefined || !areTimed(relaxed, alone))
    return { lastWork: bySessions, end, raisedTo: () => bySessions };
  const lastWork = Math.max(bySessions, ceilToGrid(energeticBound(relaxed, alone)));
  return {
    lastWork,
    end,
    raisedTo: (planned) =>
      lastWork >= planned ? lastWork : ceilToGrid(boundByColumns(relaxed, alone, lastWork, planned)),
  };
}

/** Whether the same waits follow the last work of every chain, so that all ends when the last work says. */
function endsWithWork({ groups }: SessionProblem): boolean {
  const after = groups.map(({ pattern: { steps, hands } }) => {
    const last = hands.at(-1) ?? -1;
    const waits = steps.slice(last + 1);
    const countsFromBefore = waits.some((step) => step.kind === "wait" && step.of < last);
    return countsFromBefore
      ? undefined
      : JSON.stringify(waits.map((step) => (step.kind === "wait" ? [step.time, step.of - last] : step.kind)));
  });
  return after[0] !== undefined && after.every((each) => each === after[0]);
}

const areTimed = ({ chains }: Problem, alone: ReadonlyMap<number, Times>): boolean =>
  chains.every(({ chainClass }) => alone.has(chainClass));

/** No plan has fewer sessions. */
export const fewestSessions = (problem: SessionProblem): number =>
  leastOfKinds(problem).reduce((sum, { count }) => sum + count, 0);

interface KindLeast {
  readonly kind: Kind;
  /** How many sessions it needs at least. */
  readonly count: number;
  /** What each of them takes beyond the tasks' own time. */
  readonly fixed: number;
}

function leastOfKinds(problem: SessionProblem): readonly KindLeast[] {
  const byKind = new Map<Kind, { group: Group; index: number; count: number }[]>();
  const works = new Map<Kind, { work: number; isOnGrid: boolean }>();
  for (const group of problem.groups) {
    for (const [index, kind] of group.kinds.entries()) {
      if (kind === undefined) continue;
      const one = works.get(kind) ?? { work: 0, isOnGrid: true };
      works.set(kind, one);
      for (const chain of group.members) {
        const work = problem.works[chain]![index]!;
        one.work += work;
        one.isOnGrid &&= work % gridMs === 0;
      }
      const tasks = { group, index, count: group.members.length };
      const others = byKind.get(kind);
      if (others === undefined) byKind.set(kind, [tasks]);
      else others.push(tasks);
    }
  }
  const leastSessions = sessionsNeeded(problem);
  return [...works].map(([kind, { work, isOnGrid }]) => ({
    kind,
    count: leastSessions(kind, work, byKind.get(kind)!),
    // Sessions end on the grid; where their tasks do so already, what is fixed takes up whole steps of it.
    fixed: isOnGrid ? ceilToGrid(kind.fixed) : kind.fixed,
  }));
}

/**
 * As many as the work needs openings, and as many as some chain has tasks with more between than a session can last; one a
 * task of what is done apart.
 */
const sessionsNeeded =
  (problem: SessionProblem): LeastSessions =>
  (kind, work, tasks) => {
    if (kind.isApart) return tasks.reduce((sum, { count }) => sum + count, 0);
    const longest = Math.min(kind.most, problem.shop.longest - kind.fixed);
    let sessions = longest > 0 && Number.isFinite(longest) ? Math.ceil(work / longest) : 1;
    const firsts = new Map<Group, number>();
    for (const { group, index } of tasks) firsts.set(group, Math.min(index, firsts.get(group) ?? index));
    for (const [group, first] of firsts)
      sessions = Math.max(
        sessions,
        turnsOf(problem, group, kind, { longest: Math.min(longest, work), first }),
      );
    return sessions;
  };

/** In how many sessions of a kind, none longer than `longest`, each of a group's chains has a task from an item on. */
function turnsOf(
  { crew }: SessionProblem,
  { kinds, pattern }: Group,
  kind: Kind,
  { longest, first }: { readonly longest: number; readonly first: number },
): number {
  let turns = 0;
  let last = -1;
  for (let index = first; index < kinds.length; index++) {
    if (kinds[index] !== kind) continue;
    // A session has no break: what is in between takes too long for it, or keeps the one person from it.
    const isApart = pattern.steps.slice(last + 1, index).some((step) => {
      if (step.kind === "wait") return step.of >= last && step.time > longest;
      return step.kind === "overnight" || (crew === 1 && step.work > 0);
    });
    if (last < 0 || isApart) turns++;
    last = index;
  }
  return turns;
}

/** More than any shop needs for its bound. */
const mostFixedTasks = 300;

/** The chains without what comes after their last task, begun no earlier than their jobs, and the fixed work. */
function relax(problem: SessionProblem, input: ScheduleInput): Problem | undefined {
  // Nothing begins before somebody has set up for it.
  const firstFixed = new Map(
    problem.groups.flatMap(({ pattern, kinds, members }) => {
      const fixed = kinds[pattern.hands[0] ?? -1]?.fixed ?? 0;
      return members.map((chain) => [chain, fixed] as const);
    }),
  );
  const chains = input.chains.map(({ key, items }, place): Chain => {
    const last = items.findLastIndex(({ kind }) => kind === "hands");
    const late = problem.jobs[problem.jobOf[place]!]!.start - problem.start;
    const setUp = late > 0 ? 0 : (firstFixed.get(place) ?? 0);
    const lead: readonly ChainItem[] =
      late + setUp > 0 ? [{ kind: "wait", id: "job's start", hours: (late + setUp) / hourMs }] : [];
    const own = items
      .slice(0, last + 1)
      .map((item) => (item.kind === "hands" ? { ...item, nonPreemptive: true } : item));
    return { key, items: [...lead, ...own] };
  });
  return makeProblem({ ...input, chains: [...chains, ...fixedWork(problem)] });
}

function fixedWork(problem: SessionProblem): readonly Chain[] {
  const chains = leastOfKinds(problem).flatMap(({ kind, count, fixed }) =>
    fixed === 0
      ? []
      : Array.from({ length: Math.min(count, mostFixedTasks) }, (_, place): Chain => {
          const id = `fixed ${kind.name} ${place}`;
          return { key: id, items: [{ kind: "hands", id, hours: fixed / hourMs, nonPreemptive: false }] };
        }),
  );
  return chains.slice(0, mostFixedTasks);
}
