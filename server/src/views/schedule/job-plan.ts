/** The plan of a job as a list in the order of time: every task and wait with its words, surface, piece and dates. */

import { momentText } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { isoAfter } from "../../core/schedule/iso-after.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { tasksById } from "../../core/totals/planned-tasks.ts";
import { actionText } from "../action-text.ts";

export interface PlanLine {
  readonly id: string;
  readonly surface: string;
  /** 1 and up; of how many. */
  readonly piece: number;
  readonly pieces: number;
  readonly kind: "step" | "layer" | "wait";
  readonly what: string;
  /** Hours after the start. */
  readonly start: number;
  readonly end: number;
  /** Local ISO date-times, where the job has a start and a shop. */
  readonly startAt?: string;
  readonly endAt?: string;
  readonly slack: number;
  readonly critical: boolean;
}

/** Whether the plan has dates and not only hours. */
export const isDated = ({ job, shop }: JobResult): boolean => job.start !== undefined && shop !== undefined;

/** `the start`, `Mon 8 Mar 2027 10:00`, or without dates `3 h after the start`. */
export function momentAfterStart(result: JobResult, hours: number): string {
  if (hours < 1 / 120) return "the start";
  const at = isoAfter(result.schedule, hours);
  return at === undefined ? `${formatDuration(hours)} after the start` : momentText(at);
}

export function planLines(result: JobResult): readonly PlanLine[] {
  const tasks = tasksById(result.runs);
  const dated = isDated(result);
  return result.schedule.items
    .flatMap(({ id, start, end, startAt, endAt, slack, critical }): readonly PlanLine[] => {
      const task = tasks.get(id);
      const kind = task && kindOf(task.action);
      if (!task || !kind) return [];
      const { run, piece, action } = task;
      const what = { id, surface: run.label, piece: piece + 1, pieces: run.pieces, kind };
      const dates = dated && startAt && endAt ? { startAt, endAt } : {};
      return [{ ...what, what: actionText(action), start, end, slack, critical, ...dates }];
    })
    .toSorted((a, b) => a.start - b.start || a.end - b.end);
}

function kindOf({ op }: Action): PlanLine["kind"] | undefined {
  return op === "step" || op === "layer" || op === "wait" ? op : undefined;
}
