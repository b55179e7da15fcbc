/**
 * The dates that people ask for, in the order in which they come: last work, light use, full use.
 *
 * Light use, setting things down with care, begins a day after the last coat and no earlier than its time to the next
 * coat (common practice, no source); full use when every last coat is cured. Whatever is done after a coat is cured, such
 * as refitting hardware, puts both off.
 */
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
  if (fullUse === undefined) return { lastWork: lastWorkAt };
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
  return { lastWork: lastWorkAt, lightUse: earliest(lightUse, fullUse), fullUse };
}

/** On a step of five minutes, rounded up. */
function atHours(startAt: string, hours: number): string {
  const step = HOUR_MS / 12;
  const time = Math.ceil((Date.parse(`${startAt}Z`) + hours * HOUR_MS) / step - 1e-6) * step;
  return new Date(time).toISOString().slice(0, 19);
}

const latest = (...times: readonly string[]): string => times.toSorted().at(-1)!;
const earliest = (...times: readonly string[]): string => times.toSorted()[0]!;
