/**
 * When the last work of a job is done, when its pieces may be used with care, and when they may be used fully.
 *
 * Light use, setting things down with care, begins a day after the last coat and no earlier than its time to the next
 * coat, or when it is cured if that comes first (common practice, no source). Full use begins when the last coat of
 * every surface has had its full cure in the shop's air. Whatever is done after that, such as refitting hardware, puts
 * both off, so the three always come in this order. Dates are on a step of five minutes of the clock, rounded up.
 *
 * Coats that are decided at the bench, the third of `x 2 to 3`, are planned for. Where they are left out, the rest of the
 * plan stands, so that the work ends with the last that is sure to be done.
 */
import { onceFor } from "../once.ts";
import { hourMs } from "../schedule/calendar.ts";
import type { Schedule } from "../schedule/types.ts";
import type { Action } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { type Coat, stageHours } from "../surface/state.ts";
import { itemOf, type Task } from "./planned-tasks.ts";

export interface UseDates {
  /** Undefined in a job without anything to do by hand. */
  readonly lastWork?: UseDate;
  /** Undefined where a time of a last coat is not known. */
  readonly lightUse?: UseDate;
  readonly fullUse?: UseDate;
}

/** What a date of use waits for. */
export interface UseDate {
  /** Local ISO date-time. */
  readonly at: string;
  /** The task that it counts from: the last work, or the last coat that holds it up most. */
  readonly task?: Task;
  /** `work`: nothing but the last work; `day`, `recoat` and `cured`: so long after `task`. */
  readonly waitsFor: "work" | "day" | "recoat" | "cured";
  /** Hours after `task`. */
  readonly hours: number;
}

/** Hours after the last coat before anything is set down on it. */
const LIGHT_USE_H = 24;

/** Undefined without a start by the calendar, or without a plan. */
export const useDates = (runs: readonly SurfaceRun[], schedule: Schedule): UseDates | undefined =>
  datesByPlan(schedule)(runs);

/** Worked out once, since totals, their dates with and without coats that may be left out, and hovers ask for them. */
const datesByPlan = onceFor((schedule: Schedule) =>
  onceFor((runs: readonly SurfaceRun[]) => datesOf(runs.map(allDone), schedule)),
);

/** The same without the coats that may be left out; undefined where there are none, or where work ends no earlier. */
export function fewestCoatDates(runs: readonly SurfaceRun[], schedule: Schedule): UseDates | undefined {
  if (!runs.some(({ moments }) => moments.some(({ action }) => isExtraCoat(action)))) return undefined;
  const all = useDates(runs, schedule)?.lastWork;
  const few = datesOf(runs.map(fewestDone), schedule);
  return all && few?.lastWork && few.lastWork.at < all.at ? few : undefined;
}

/** What is done by hand in a run: the indices of its steps and coats. */
interface Done {
  readonly run: SurfaceRun;
  readonly indices: readonly number[];
}

const allDone = (run: SurfaceRun): Done => ({
  run,
  indices: run.moments.flatMap(({ action }, index) =>
    action.op === "step" || action.op === "layer" ? [index] : [],
  ),
});

function fewestDone(run: SurfaceRun): Done {
  const left = leftOut(run);
  return { run, indices: allDone(run).indices.filter((index) => !left.has(index)) };
}

const isExtraCoat = (action: Action): boolean => action.op === "layer" && action.ifNeeded === true;

/** By index, the coats of a run that may be left out, and what is done before each of them between the coats. */
function leftOut({ moments }: SurfaceRun): ReadonlySet<number> {
  const left = new Set<number>();
  for (const [index, { action }] of moments.entries()) {
    if (action.op !== "layer" || !isExtraCoat(action)) continue;
    left.add(index);
    const isBefore = (at: number): boolean => {
      const { between } = moments[at]!.action;
      return between?.afterCoat === action.coat - 1 && between.layer.span.start === action.place.span.start;
    };
    for (let at = index - 1; at >= 0 && isBefore(at); at -= 1) left.add(at);
  }
  return left;
}

function datesOf(done: readonly Done[], schedule: Schedule): UseDates | undefined {
  const { startAt, status } = schedule;
  if (startAt === undefined || status !== "planned") return undefined;
  const lastWork = latest(endsOfWork(done, schedule));
  const coats = lastCoats(done, schedule);
  const dated = ({ from, hours, ...rest }: Wait): UseDate => ({
    at: onFiveMinutes(startAt, from + hours),
    hours,
    ...rest,
  });
  const work: Wait = lastWork ?? { from: 0, hours: 0, waitsFor: "work" };
  const use = (waits: readonly (Wait | undefined)[]): UseDate | undefined =>
    waits.every((wait) => wait !== undefined) ? dated(latest([work, ...waits])!) : undefined;
  const lightUse = use(coats.map(lightWait));
  const fullUse = use(coats.map(fullWait));
  return {
    ...(lastWork ? { lastWork: dated(lastWork) } : {}),
    ...(lightUse ? { lightUse } : {}),
    ...(fullUse ? { fullUse } : {}),
  };
}

/** So many hours after an hour of the plan. */
interface Wait extends Omit<UseDate, "at"> {
  readonly from: number;
}

/** The first of those that end last. */
const latest = (waits: readonly Wait[]): Wait | undefined =>
  waits.reduce<Wait | undefined>(
    (last, wait) => (last && wait.from + wait.hours <= last.from + last.hours + 1e-9 ? last : wait),
    undefined,
  );

function endsOfWork(done: readonly Done[], schedule: Schedule): readonly Wait[] {
  return eachPiece(done).flatMap(({ run, piece, indices }) =>
    indices.flatMap((index): readonly Wait[] => {
      const from = itemOf(schedule, run, piece, index)?.end;
      return from === undefined ? [] : [{ from, hours: 0, waitsFor: "work", task: { run, piece, index } }];
    }),
  );
}

/** The last coat of a piece's surface, which a job that puts none on does not wait for. */
interface LastCoat {
  readonly coat: Coat;
  readonly task: Task;
  readonly from: number;
}

function lastCoats(done: readonly Done[], schedule: Schedule): readonly LastCoat[] {
  return eachPiece(done).flatMap(({ run, piece, indices }): readonly LastCoat[] => {
    // A coat more that other pieces got is none of this one.
    const index = indices.findLast(
      (at) => run.moments[at]!.action.op === "layer" && !run.record?.done[piece]?.get(at)?.leftOut,
    );
    if (index === undefined) return [];
    const coat = run.moments[index]!.after.layers.at(-1);
    const from = itemOf(schedule, run, piece, index)?.end;
    return coat && from !== undefined ? [{ coat, task: { run, piece, index }, from }] : [];
  });
}

const lightWait = ({ coat, task, from }: LastCoat): Wait | undefined =>
  waitFrom(lightUseAfter(coat), from, task);
const fullWait = ({ coat, task, from }: LastCoat): Wait | undefined =>
  waitFrom(fullUseAfter(coat), from, task);

const waitFrom = (after: UseAfter | undefined, from: number, task: Task): Wait | undefined =>
  after && { from, task, ...after };

/** So many hours after a last coat. */
export type UseAfter = Pick<UseDate, "waitsFor" | "hours">;

/** Undefined where the label's time to the next coat is not known, and the cure neither. */
export function lightUseAfter(coat: Coat): UseAfter | undefined {
  const cured = fullUseAfter(coat);
  const recoat = stageHours(coat, "recoat");
  if (coat.material === undefined || recoat === undefined) return cured;
  const careful: UseAfter =
    recoat > LIGHT_USE_H ? { waitsFor: "recoat", hours: recoat } : { waitsFor: "day", hours: LIGHT_USE_H };
  return cured && cured.hours < careful.hours ? cured : careful;
}

/** Undefined where the material of the coat or its cure is not known. */
export function fullUseAfter(coat: Coat): UseAfter | undefined {
  const hours = coat.material && stageHours(coat, "cured");
  return hours === undefined ? undefined : { waitsFor: "cured", hours };
}

const eachPiece = (done: readonly Done[]): readonly (Done & { readonly piece: number })[] =>
  done.flatMap(({ run, indices }) =>
    Array.from({ length: run.pieces }, (_, piece) => ({ run, indices, piece })),
  );

/** So many hours after a moment, on a step of five minutes, rounded up: nobody plans with less. */
export function onFiveMinutes(at: string, hours = 0): string {
  const time = Math.ceil((Date.parse(`${at}Z`) + hours * hourMs) / STEP_MS - 1e-6) * STEP_MS;
  return new Date(time).toISOString().slice(0, 19);
}

const STEP_MS = hourMs / 12;
