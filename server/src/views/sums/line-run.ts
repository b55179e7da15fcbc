/** A line of a recipe as one surface of one job does it, and the words for where and when that is. */

import { t } from "../../../../grammar/src/translate.ts";
import { dayText, momentText, timeText } from "../../core/measure/figures.ts";
import { isBeingPlanned } from "../../core/schedule/being-planned.ts";
import { sentence } from "../../core/sentence.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { Moment } from "../../core/surface/state.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { itemOf } from "../../core/totals/planned-tasks.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { beingPlannedText, noDateText, unpromised } from "../missing-inputs.ts";

export interface LineRun {
  readonly result?: JobResult;
  readonly run: SurfaceRun;
  /** Every time that the line is done on this surface, in order. */
  readonly times: readonly (Moment<Action> & { readonly index: number })[];
}

/** `` `six_chairs`, `frame` `` */
export const whereText = ({ result, run }: LineRun): string =>
  result ? `${code(result.job.name)}, ${code(run.label)}: ` : "";

/** When the plan has the line, first and last, on the first piece: ` Planned Mon 15 Mar 2027 09:00 to 09:40.` */
export function plannedText({ result, run, times }: LineRun): string {
  if (!result?.job.start || !result.shop) return "";
  const kept = unpromised(result);
  if (kept) return ` ${sentence(noDateText())}: ${kept.reasons.join(", ")}.`;
  if (isBeingPlanned(result.schedule)) return ` ${sentence(beingPlannedText())}.`;
  const items = times.flatMap(({ index }) => itemOf(result.schedule, run, 0, index) ?? []);
  const starts = items[0]?.startAt;
  const ends = items.at(-1)?.endAt;
  if (!starts || !ends) return "";
  const to = dayText(starts) === dayText(ends) ? timeText(ends) : momentText(ends);
  return run.pieces > 1
    ? t` Planned (first piece) ${momentText(starts)} to ${to}.`
    : t` Planned ${momentText(starts)} to ${to}.`;
}
