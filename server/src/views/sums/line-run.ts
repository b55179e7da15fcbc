/** A line of a recipe as one surface of one job does it, and the words for where and when that is. */
import type { Action } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { Moment } from "../../core/surface/state.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { itemId } from "../../core/totals/task-plan.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { momentText } from "../figures.ts";
import { itemsById } from "../schedule/job-plan.ts";

export interface LineRun {
  readonly result?: JobResult;
  readonly run: SurfaceRun;
  /** Every time that the line is done on this surface, in order. */
  readonly times: readonly (Moment<Action> & { readonly index: number })[];
}

/** `` `six_chairs`, `frame` `` */
export const whereText = ({ result, run }: LineRun): string =>
  result ? `${code(result.job.name)}, ${code(run.label)}: ` : "";

/** When the plan has the line, first and last, on the first piece: ` Planned Mon 2027-03-15 09:00 to 09:40.` */
export function plannedText({ result, run, times }: LineRun): string {
  if (!result?.job.start || !result.shop) return "";
  const planned = itemsById(result);
  const items = times.flatMap(({ index }) => planned.get(itemId(run, 0, index)) ?? []);
  const starts = items[0]?.startAt;
  const ends = items.at(-1)?.endAt;
  if (!starts || !ends) return "";
  const from = momentText(starts);
  const to = momentText(ends);
  const sameDay = from.slice(0, 14) === to.slice(0, 14);
  const which = run.pieces > 1 ? " (first piece)" : "";
  return ` Planned${which} ${from} to ${sameDay ? to.slice(15) : to}.`;
}
