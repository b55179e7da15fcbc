/**
 * Total float: how far each item of a plan can slip without delaying its finish.
 *
 * The backward pass of the critical path method (Kelley and Walker, "Critical-path planning and scheduling", 1959), on a
 * calendar and with the plan's own order of the crew kept: who does what after what, the order of each chain, opening
 * hours, drying and windows. The latest times are the greatest solution of these rules, found by letting everything fall
 * back from the finish until nothing moves. An item is critical when it cannot slip for the sake of the finish alone; one
 * that only a window holds has no float either, yet is not critical. In plans the float is called `slack`.
 */

import { latestBeforeNight } from "./chain-timing.ts";
import type { Plan } from "./priority-rules.ts";
import type { Problem, Step } from "./problem.ts";
import { endOf, latestStartAt, latestStartByEnd } from "./task-placement.ts";

export interface Floats {
  /** Milliseconds, by chain and item. */
  readonly slack: readonly (readonly number[])[];
  readonly critical: readonly (readonly boolean[])[];
}

interface Task {
  readonly chain: number;
  readonly index: number;
  readonly start: number;
  readonly work: number;
  readonly nonPreemptive: boolean;
  /** Place in the list of tasks of what its person does next. */
  following?: number;
}

export function floatOf(problem: Problem, plan: Plan): Floats {
  const tasks = tasksInOrder(problem, plan);
  const kept = latestEnds(problem, plan, tasks, true);
  const free = latestEnds(problem, plan, tasks, false);
  const workSlack = (latest: number[][]): number[][] => {
    const slack = latest.map((ends, chain) =>
      ends.map((end, index) => end - plan.times[chain]!.ends[index]!),
    );
    for (const { chain, index, work, nonPreemptive } of tasks) {
      const start = latestStartByEnd(problem.shop, latest[chain]![index]!, work, nonPreemptive);
      slack[chain]![index] = start - plan.times[chain]!.starts[index]!;
    }
    return slack;
  };
  return {
    slack: workSlack(kept),
    critical: workSlack(free).map((values) => values.map((value) => value <= 0)),
  };
}

/** The hands items by start, each with the next one of the same person. */
function tasksInOrder(problem: Problem, plan: Plan): readonly Task[] {
  const tasks: Task[] = [];
  for (const [place, chain] of problem.chains.entries()) {
    for (const index of chain.hands) {
      const step = chain.steps[index]!;
      if (step.kind !== "hands") continue;
      const start = plan.times[place]!.starts[index]!;
      tasks.push({ chain: place, index, start, work: step.work, nonPreemptive: step.nonPreemptive });
    }
  }
  tasks.sort((a, b) => a.start - b.start || a.chain - b.chain || a.index - b.index);
  const last: number[] = []; // by person, the task done last
  for (const [place, task] of tasks.entries()) {
    if (task.work === 0) continue;
    // Somebody who has done nothing yet, as long as there is anybody: without a shop that is for ever.
    const person = last.length < problem.crew ? last.length : longestFree(plan, tasks, last, task.start);
    if (last[person] !== undefined) tasks[last[person]!]!.following = place;
    last[person] = place;
  }
  return tasks;
}

/** Who of those that have worked is free at `start` and has been for longest; a new place where nobody is. */
function longestFree(plan: Plan, tasks: readonly Task[], last: readonly number[], start: number): number {
  let person = last.length;
  let freeSince = Number.POSITIVE_INFINITY;
  for (const [other, done] of last.entries()) {
    const { chain, index } = tasks[done]!;
    const end = plan.times[chain]!.ends[index]!;
    if (end <= start && end < freeSince) {
      person = other;
      freeSince = end;
    }
  }
  return person;
}

/** The latest end of every item, by chain. */
function latestEnds(problem: Problem, plan: Plan, tasks: readonly Task[], withWindows: boolean): number[][] {
  const latest = problem.chains.map((chain) => chain.steps.map(() => plan.finish));
  const latestStart = tasks.map(() => Number.POSITIVE_INFINITY);
  for (let moved = true; moved; ) {
    moved = false;
    for (let place = tasks.length - 1; place >= 0; place--) {
      const task = tasks[place]!;
      const steps = problem.chains[task.chain]!.steps;
      const ends = latest[task.chain]!;
      let last = task.index + 1;
      while (last < steps.length && steps[last]!.kind !== "hands") last++;
      if (carryBack(problem, steps, task.index, last, ends)) moved = true;
      const next = task.following === undefined ? undefined : latestStart[task.following];
      if (next !== undefined && next < ends[task.index]!) ends[task.index] = next;
      let start = latestStartByEnd(problem.shop, ends[task.index]!, task.work, task.nonPreemptive);
      const step = steps[task.index]!;
      if (withWindows && step.kind === "hands" && step.window !== undefined) {
        const end = step.window.of < 0 ? problem.start : ends[step.window.of]!;
        start = Math.min(
          start,
          latestStartAt(problem.shop, end + step.window.within, task.work, task.nonPreemptive),
        );
      }
      if (start >= latestStart[place]!) continue;
      latestStart[place] = start;
      ends[task.index] = endOf(problem.shop, start, task.work);
      if (task.index > 0 && start < ends[task.index - 1]!) ends[task.index - 1] = start;
      moved = true;
    }
    for (const [place, chain] of problem.chains.entries()) {
      const first = chain.hands[0] ?? chain.steps.length;
      if (carryBack(problem, chain.steps, -1, first, latest[place]!)) moved = true;
    }
  }
  return latest;
}

/** Carries latest ends back over the waits between the tasks `after` and `last`; says whether one moved. */
function carryBack(
  problem: Problem,
  steps: readonly Step[],
  after: number,
  last: number,
  ends: number[],
): boolean {
  let moved = false;
  const lower = (index: number, end: number): void => {
    if (index < 0 || end >= ends[index]!) return;
    ends[index] = end;
    moved = true;
  };
  for (let index = last - 1; index > after; index--) {
    const step = steps[index]!;
    if (step.kind === "wait") {
      lower(step.of, ends[index]! - step.time);
      lower(index - 1, ends[index]!);
    } else if (step.kind === "overnight") {
      lower(index - 1, latestBeforeNight(problem, ends[index]!));
    }
  }
  return moved;
}
