/**
 * How far each item of a plan can slip without delaying its finish.
 *
 * The plan's own order is kept: who of the crew does what after what, the order of each chain, opening hours, drying
 * and windows. The latest times are the greatest solution of these rules, found by letting everything fall back from
 * the finish until nothing moves. An item is critical when it cannot slip for the sake of the finish alone; one that
 * only a window holds has no slack either, yet is not critical.
 */
import { endOf, latestStartAt, latestStartByEnd } from "./fit.ts";
import type { Plan } from "./heuristic.ts";
import type { Problem, Step } from "./problem.ts";
import { latestBeforeNight } from "./settle.ts";

export interface Slack {
  /** Milliseconds, by track and item. */
  readonly slack: readonly (readonly number[])[];
  readonly critical: readonly (readonly boolean[])[];
}

interface Task {
  readonly track: number;
  readonly index: number;
  readonly start: number;
  readonly work: number;
  readonly whole: boolean;
  /** Place in the list of tasks of what its person does next. */
  following?: number;
}

export function slackOf(problem: Problem, plan: Plan): Slack {
  const tasks = tasksInOrder(problem, plan);
  const kept = latestEnds(problem, plan, tasks, true);
  const free = latestEnds(problem, plan, tasks, false);
  const workSlack = (latest: number[][]): number[][] => {
    const slack = latest.map((ends, track) =>
      ends.map((end, index) => end - plan.times[track]!.ends[index]!),
    );
    for (const { track, index, work, whole } of tasks) {
      const start = latestStartByEnd(problem.shop, latest[track]![index]!, work, whole);
      slack[track]![index] = start - plan.times[track]!.starts[index]!;
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
  for (const [place, track] of problem.tracks.entries()) {
    for (const index of track.hands) {
      const step = track.steps[index]!;
      if (step.kind !== "hands") continue;
      const start = plan.times[place]!.starts[index]!;
      tasks.push({ track: place, index, start, work: step.work, whole: step.whole });
    }
  }
  tasks.sort((a, b) => a.start - b.start || a.track - b.track || a.index - b.index);
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
    const { track, index } = tasks[done]!;
    const end = plan.times[track]!.ends[index]!;
    if (end <= start && end < freeSince) {
      person = other;
      freeSince = end;
    }
  }
  return person;
}

/** The latest end of every item, by track. */
function latestEnds(problem: Problem, plan: Plan, tasks: readonly Task[], withWindows: boolean): number[][] {
  const latest = problem.tracks.map((track) => track.steps.map(() => plan.finish));
  const latestStart = tasks.map(() => Number.POSITIVE_INFINITY);
  for (let moved = true; moved; ) {
    moved = false;
    for (let place = tasks.length - 1; place >= 0; place--) {
      const task = tasks[place]!;
      const steps = problem.tracks[task.track]!.steps;
      const ends = latest[task.track]!;
      let last = task.index + 1;
      while (last < steps.length && steps[last]!.kind !== "hands") last++;
      if (carryBack(problem, steps, task.index, last, ends)) moved = true;
      const next = task.following === undefined ? undefined : latestStart[task.following];
      if (next !== undefined && next < ends[task.index]!) ends[task.index] = next;
      let start = latestStartByEnd(problem.shop, ends[task.index]!, task.work, task.whole);
      const step = steps[task.index]!;
      if (withWindows && step.kind === "hands" && step.window !== undefined) {
        const end = step.window.of < 0 ? problem.start : ends[step.window.of]!;
        start = Math.min(start, latestStartAt(problem.shop, end + step.window.within, task.work, task.whole));
      }
      if (start >= latestStart[place]!) continue;
      latestStart[place] = start;
      ends[task.index] = endOf(problem.shop, start, task.work);
      if (task.index > 0 && start < ends[task.index - 1]!) ends[task.index - 1] = start;
      moved = true;
    }
    for (const [place, track] of problem.tracks.entries()) {
      const first = track.hands[0] ?? track.steps.length;
      if (carryBack(problem, track.steps, -1, first, latest[place]!)) moved = true;
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
