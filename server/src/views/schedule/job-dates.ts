/**
 * The dates that people ask for, in the order in which they come: last work, light use, full use.
 *
 * Light use, setting things down with care, begins a day after the last coat and no earlier than its time to the next
 * coat (common practice, no source); full use when every last coat is cured. Whatever is done after a coat is cured, such
 * as refitting hardware, puts both off.
 *
 * Coats that are decided at the bench, the third of `x 2 to 3`, are planned for. Where they are left out, the rest of the
 * plan stands, so that the work ends with the last that is sure to be done.
 */

import type { Action } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import { stageHours } from "../../core/surface/state.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { itemOf } from "../../core/totals/planned-tasks.ts";
import { isDated } from "./job-plan.ts";

export interface JobDates {
  /** Local ISO date-times. */
  readonly lastWork: string;
  /** Undefined where a time of a last coat is not known. */
  readonly lightUse?: string;
  readonly fullUse?: string;
  /** The same with the fewest coats, where some are decided at the bench and the work can end earlier without them. */
  readonly fewest?: { readonly lastWork: string; readonly fullUse?: string };
}

/** Hours after the last coat before anything is set down on it. */
const LIGHT_USE_H = 24;
const HOUR_MS = 3_600_000;

/** Undefined where the plan has no dates. */
export function jobDates(result: JobResult): JobDates | undefined {
  const { schedule, totals, runs } = result;
  const { startAt, lastWorkAt } = schedule;
  if (!isDated(result) || startAt === undefined || lastWorkAt === undefined) return undefined;
  const fullUse = totals.in_service === null ? undefined : latest(lastWorkAt, totals.in_service);
  const few = withFewestCoats(result, startAt);
  const fewest = few !== undefined && few.lastWork < lastWorkAt ? { fewest: few } : {};
  if (fullUse === undefined) return { lastWork: lastWorkAt, ...fewest };
  let light = 0;
  for (const run of runs) {
    const index = run.moments.findLastIndex(({ action }) => action.op === "layer");
    const coat = run.moments[index]?.after.layers.at(-1);
    if (coat === undefined) continue;
    const after = Math.max(LIGHT_USE_H, stageHours(coat, "recoat") ?? 0);
    for (let piece = 0; piece < run.pieces; piece += 1)
      light = Math.max(light, (itemOf(schedule, run, piece, index)?.end ?? 0) + after);
  }
  const lightUse = latest(lastWorkAt, atHours(startAt, light));
  // What is cured within a day may be used then.
  return { lastWork: lastWorkAt, lightUse: earliest(lightUse, fullUse), fullUse, ...fewest };
}

/** The end of the work, and of the last cure, without the coats that may be left out; undefined where there are none. */
function withFewestCoats({ runs, schedule }: JobResult, startAt: string): JobDates["fewest"] {
  if (!runs.some(({ moments }) => moments.some(({ action }) => isExtraCoat(action)))) return undefined;
  let work = 0;
  let cured: number | undefined = 0;
  for (const run of runs) {
    const left = leftOut(run);
    const indices = run.moments.flatMap(({ action }, index) =>
      action.op === "wait" || action.op === "note" || action.op === "open" || left.has(index) ? [] : [index],
    );
    const last = indices.findLast((index) => run.moments[index]!.action.op === "layer");
    const coat = last === undefined ? undefined : run.moments[last]!.after.layers.at(-1);
    const cure = coat === undefined ? 0 : coat.material && stageHours(coat, "cured");
    for (let piece = 0; piece < run.pieces; piece += 1) {
      const endOf = (index: number): number => itemOf(schedule, run, piece, index)?.end ?? 0;
      work = Math.max(work, ...indices.map(endOf));
      const from = last === undefined ? 0 : endOf(last);
      cured = cured === undefined || cure === undefined ? undefined : Math.max(cured, from + cure);
    }
  }
  const lastWork = atHours(startAt, work);
  return {
    lastWork,
    ...(cured === undefined ? {} : { fullUse: latest(lastWork, atHours(startAt, cured)) }),
  };
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

/** On a step of five minutes, rounded up. */
function atHours(startAt: string, hours: number): string {
  const step = HOUR_MS / 12;
  const time = Math.ceil((Date.parse(`${startAt}Z`) + hours * HOUR_MS) / step - 1e-6) * step;
  return new Date(time).toISOString().slice(0, 19);
}

const latest = (...times: readonly string[]): string => times.toSorted().at(-1)!;
const earliest = (...times: readonly string[]): string => times.toSorted()[0]!;
