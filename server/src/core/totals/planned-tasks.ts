/**
 * From the plan of a job to its runs and back: an item of the plan is one action of one run, on one of its pieces. How
 * these are joined is known here alone.
 */
import { onceFor } from "../once.ts";
import type { PlannedItem, Schedule } from "../schedule/types.ts";
import type { Action } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";

/** An action of a run, on one of its pieces. */
export interface Task {
  readonly run: SurfaceRun;
  /** From 0. */
  readonly piece: number;
  /** Of the action in the run. */
  readonly index: number;
}

/** The chain of a piece's surface. */
export const chainKey = (run: SurfaceRun, piece: number): string => `${run.label}#${piece + 1}`;

/** Names a task for the planner, and for calendars. */
export const taskId = ({ run, piece, index }: Task): string => `${chainKey(run, piece)}:${index}`;

/** The item of a task in the plan of its job; undefined where there is none. */
export const itemOf = (
  schedule: Schedule,
  run: SurfaceRun,
  piece: number,
  index: number,
): PlannedItem | undefined => itemsById(schedule).get(taskId({ run, piece, index }));

/** Made once for a plan, since a job of many pieces has very many. */
const itemsById = onceFor(
  ({ items }: Schedule): ReadonlyMap<string, PlannedItem> => new Map(items.map((item) => [item.id, item])),
);

/** The tasks of a job that stand in its plan, each with its action, by what the planner calls them. */
export function tasksById(
  runs: readonly SurfaceRun[],
): ReadonlyMap<string, Task & { readonly action: Action }> {
  const tasks = new Map<string, Task & { readonly action: Action }>();
  for (const run of runs) {
    for (let piece = 0; piece < run.pieces; piece += 1) {
      for (const [index, { action }] of run.moments.entries()) {
        if (action.op === "note" || action.op === "open") continue;
        const task = { run, piece, index, action };
        tasks.set(taskId(task), task);
      }
    }
  }
  return tasks;
}
