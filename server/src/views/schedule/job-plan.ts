/** The plan of a job as a list in the order of time: every task and wait with its words, surface, piece and dates. */

import { t } from "../../../../grammar/src/translate.ts";
import { momentText } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { onceFor } from "../../core/once.ts";
import { isoAfter } from "../../core/schedule/iso-after.ts";
import type { Schedule } from "../../core/schedule/types.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { itemOf, type Task, tasksById } from "../../core/totals/planned-tasks.ts";
import { recoatWindow } from "../../core/totals/task-plan.ts";
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
  /** How far it can slip, hours, rounded down to the minute; 0 where it is critical. */
  readonly slack: number;
  readonly critical: boolean;
  /** Number of the session that it is done in, or of a wait, that it comes after; where the plan has sessions. */
  readonly session?: number;
  /** Hours after the start at which the coat must have begun, or it no longer bonds: the end of the recoat window. */
  readonly closes?: number;
  /** It waited for the item before it. */
  readonly waited: boolean;
  /** It is over already, by the record of the job. */
  readonly done?: true;
  /** Where it stands among the items of the plan, which are in the order of surfaces, pieces and lines. */
  readonly place: number;
}

/** What is done in one go, or waited for after it: surfaces and pieces together. */
export interface PlanRow extends PlanLine {
  /** In order; pieces from 1. */
  readonly surfaces: readonly {
    readonly surface: string;
    readonly which: readonly number[];
    readonly of: number;
  }[];
}

/** Whether the plan has dates and not only hours. */
export const isDated = ({ job, shop, voided }: JobResult): boolean =>
  job.start !== undefined && shop !== undefined && voided === undefined;

/** `the start`, `Mon 8 Mar 2027 10:00`, or without dates `3 h after the start`. */
export function momentAfterStart(result: JobResult, hours: number): string {
  if (hours < 1 / 120) return t`the start`;
  const at = isoAfter(result.schedule, hours);
  return at === undefined ? t`${formatDuration(hours)} after the start` : momentText(at);
}

export function planLines(result: JobResult): readonly PlanLine[] {
  const tasks = tasksById(result.runs);
  const dated = isDated(result);
  const sessions = sessionsOf(result.schedule);
  return result.schedule.items
    .flatMap(
      ({ id, start, end, startAt, endAt, slack, critical, done: isDone }, place): readonly PlanLine[] => {
        const task = tasks.get(id);
        const kind = task && kindOf(task.action);
        if (!task || !kind) return [];
        const { run, piece, action } = task;
        const what = { id, surface: run.label, piece: piece + 1, pieces: run.pieces, kind };
        const dates = dated && startAt && endAt ? { startAt, endAt } : {};
        const session = sessions.get(id);
        const closes = closingOf(result.schedule, task);
        const done = {
          ...(session === undefined ? {} : { session }),
          ...(closes === undefined ? {} : { closes }),
          waited: hasWaited(task),
          ...(isDone ? { done: isDone } : {}),
          place,
        };
        const slip = critical ? 0 : Math.floor(slack * 60 + 1e-6) / 60;
        const held = { slack: slip, critical: slip === 0 && !isDone };
        return [{ ...what, what: actionText(action), start, end, ...held, ...dates, ...done }];
      },
    )
    .toSorted((a, b) => a.start - b.start || a.end - b.end);
}

/** When the window of a coat closes, hours after the start; undefined where none holds it. */
function closingOf(schedule: Schedule, { run, piece, index, action }: Task & { readonly action: Action }) {
  if (action.op !== "layer") return undefined;
  const window = recoatWindow(run, run.moments[index]!.before, action);
  const of = window && itemOf(schedule, run, piece, window.index);
  return window && of ? of.end + window.hours : undefined;
}

/** Whether the action before, notes aside, is a wait. */
function hasWaited({ run, index }: Task): boolean {
  let before = index - 1;
  while (run.moments[before]?.action.op === "note") before -= 1;
  return run.moments[before]?.action.op === "wait";
}

/** By item, the number of its session; a wait has that of the task before. Empty where the plan has no sessions. */
export const sessionsOf = onceFor(({ sessions, items }: Schedule): ReadonlyMap<string, number> => {
  const numbers = new Map<string, number>();
  if (sessions === undefined) return numbers;
  for (const [number, session] of sessions.entries()) for (const id of session.items) numbers.set(id, number);
  let last: { readonly chain: string; readonly number: number } | undefined;
  for (const { id, chain } of items) {
    const number = numbers.get(id);
    if (number !== undefined) last = { chain, number };
    else if (last?.chain === chain) numbers.set(id, last.number);
  }
  return numbers;
});

/**
 * The plan as rows: one for each session and what is done in it, one for what is then waited for; without sessions, one
 * for what several pieces do at the same time.
 */
export function planRows(result: JobResult): readonly PlanRow[] {
  const rows = groupedBy(
    planLines(result),
    ({ start, end, kind, surface, what, slack, critical, session, done }) =>
      session === undefined
        ? [start, end, kind, surface, what, slack, critical, done]
        : [session, kind, what],
  );
  // What two people do side by side is one row as well.
  const together = groupedBy(rows, (lines) => {
    const { start, end, kind, what, done } = rowOf(lines);
    return [start, end, kind, what, done];
  });
  return together.map((group) => rowOf(group.flat())).toSorted((a, b) => a.start - b.start || a.end - b.end);
}

/** What is done in one go, which may be several things, together; each wait by itself. In the order of their beginning. */
export const inSessions = (rows: readonly PlanRow[]): readonly (readonly PlanRow[])[] =>
  groupedBy(rows, ({ kind, session, id }) => [kind === "wait" ? id : (session ?? id)]);

/** What is done in one go as rows, one for each thing that is done. */
export const rowsOf = (lines: readonly PlanLine[]): readonly PlanRow[] =>
  groupedBy(lines, ({ what }) => [what]).map(rowOf);

/** What is done in each session, in order: by its number. */
export function sessionRows(result: JobResult): ReadonlyMap<number, readonly PlanRow[]> {
  const tasks = planLines(result).filter(({ kind }) => kind !== "wait");
  const rows = new Map<number, PlanRow[]>();
  for (const row of groupedBy(tasks, ({ session, what }) => [session, what]).map(rowOf)) {
    if (row.session === undefined) continue;
    const others = rows.get(row.session);
    if (others) others.push(row);
    else rows.set(row.session, [row]);
  }
  return rows;
}

/** Those of one key together, in the order in which the keys come first. */
function groupedBy<T>(all: readonly T[], keyOf: (one: T) => readonly unknown[]): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const key = JSON.stringify(keyOf(one));
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()];
}

/** `top`; of several pieces `top, all 4`, `top 1 to 3 of 4` or `top 1, 3 of 4`; of several surfaces all of them. */
export const surfacesText = ({ surfaces }: PlanRow): string => surfaces.map(piecesText).join("; ");

function piecesText({ surface, which, of }: PlanRow["surfaces"][number]): string {
  if (of === 1) return surface;
  if (which.length === of) return of === 2 ? t`${surface}, both` : t`${surface}, all ${of}`;
  const first = which[0]!;
  const last = which.at(-1)!;
  const run = which.length > 2 && last - first === which.length - 1;
  return t`${surface} ${run ? t`${first} to ${last}` : which.join(", ")} of ${of}`;
}

/** What some lines, or rows, are together. */
export function rowOf(lines: readonly PlanLine[]): PlanRow {
  const { done: _, ...first } = lines.reduce((a, b) => (b.start < a.start ? b : a));
  const last = lines.reduce((a, b) => (b.end > a.end ? b : a));
  const surfaces = new Map<string, { surface: string; which: number[]; of: number }>();
  for (const { surface, piece, pieces } of lines) {
    const one = surfaces.get(surface) ?? { surface, which: [], of: pieces };
    one.which.push(piece);
    surfaces.set(surface, one);
  }
  const closes = Math.min(...lines.map((line) => line.closes ?? Number.POSITIVE_INFINITY));
  return {
    ...first,
    // However the plan changes, the first of what is done keeps the name.
    id: lines.reduce((a, b) => (b.place < a.place ? b : a)).id,
    end: last.end,
    waited: lines.some(({ waited }) => waited),
    ...(lines.every(({ done }) => done) ? { done: true } : {}),
    ...(Number.isFinite(closes) ? { closes } : {}),
    ...(last.endAt === undefined ? {} : { endAt: last.endAt }),
    slack: Math.min(...lines.map(({ slack }) => slack)),
    critical: lines.some(({ critical }) => critical),
    surfaces: [...surfaces.values()].map(({ which, ...rest }) => ({
      ...rest,
      which: which.toSorted((a, b) => a - b),
    })),
  };
}

function kindOf({ op }: Action): PlanLine["kind"] | undefined {
  return op === "step" || op === "layer" || op === "wait" ? op : undefined;
}
