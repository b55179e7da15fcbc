/** When a job is done, with the sums: hands, the surface that takes longest, and the last cure. */

import { t } from "../../../../grammar/src/translate.ts";
import { factorText } from "../../core/measure/figures.ts";
import { formatDuration, formatNumber, formatWork } from "../../core/measure/format-amount.ts";
import type { PlannedItem, Schedule } from "../../core/schedule/types.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { itemOf } from "../../core/totals/planned-tasks.ts";
import { actionHours, hoursOnPiece, workInSessions } from "../../core/totals/task-plan.ts";
import { useDates } from "../../core/totals/use-dates.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { momentAfterStart } from "../schedule/job-plan.ts";

/** `top 1 h 35 min × 2 + base 30 min + 25 min of setting up and rounding up` */
export function handsOnSum({ runs, schedule, record, totals }: JobResult): string {
  if (record && totals.hands_on_h !== null) {
    const done = formatWork(record.doneHours);
    return t`${done} done + ${formatWork(totals.hands_on_h - record.doneHours)} still to do`;
  }
  const work = workInSessions(runs, schedule);
  const terms = runs.map((run) => {
    const hours = work
      ? hoursOnPiece(run)
      : run.moments.reduce((sum, { action }) => sum + actionHours(run, action), 0);
    return `${code(run.label)} ${formatWork(hours)}${run.pieces > 1 ? ` × ${run.pieces}` : ""}`;
  });
  return [
    ...terms,
    ...(work && work.more > 1e-9 ? [t`${formatWork(work.more)} of setting up and rounding up`] : []),
  ].join(" + ");
}

/**
 * The surface that is done last: its hands, its waits, and what is left of the time, in which the shop is closed or its
 * hands are busy. Undefined without a plan.
 */
export function elapsedSum(result: JobResult): string | undefined {
  const { totals, schedule } = result;
  if (totals.elapsed_h === null) return undefined;
  const chains = result.runs.flatMap((run) =>
    Array.from({ length: run.pieces }, (_, piece) => chainTimes(schedule, run, piece)),
  );
  const last = chains.reduce<ChainTimes | undefined>(
    (latest, chain) => (chain.end > (latest?.end ?? 0) + 1e-9 ? chain : latest),
    undefined,
  );
  if (!last) return undefined;
  const rest = schedule.elapsedHours - last.hands - last.waits;
  const which = result.runs.length > 1 || last.run.pieces > 1 ? t`: ${pieceName(last)} is done last` : "";
  const terms = [
    t`${hours(last.hands)} of hands`,
    ...(last.waits > 1e-6 ? [t`${hours(last.waits)} of waits`] : []),
    ...(rest > 1e-6 ? [t`${hours(rest)} closed or held up`] : []),
  ];
  return `${terms.join(" + ")} = ${hours(schedule.elapsedHours)}${which}`;
}

const hours = (value: number): string => `${formatNumber(value, 2)} h`;

interface ChainTimes {
  readonly run: SurfaceRun;
  readonly piece: number;
  readonly hands: number;
  readonly waits: number;
  readonly end: number;
}

const pieceName = ({ run, piece }: Pick<ChainTimes, "run" | "piece">): string =>
  run.pieces > 1 ? t`${code(run.label)} of piece ${piece + 1}` : code(run.label);

function chainTimes(schedule: Schedule, run: SurfaceRun, piece: number): ChainTimes {
  let hands = 0;
  let waits = 0;
  let end = 0;
  run.moments.forEach(({ action }, index) => {
    const item = itemOf(schedule, run, piece, index);
    if (!item) return;
    end = Math.max(end, item.end);
    if (action.op === "wait") waits += item.end - item.start;
    else hands += item.end - item.start - pausesOf(item);
  });
  return { run, piece, hands, waits, end };
}

const pausesOf = ({ pauses }: PlannedItem): number =>
  pauses.reduce((sum, { start, end }) => sum + end - start, 0);

/**
 * The last coat that is cured last, and its cure: what full use waits for. Undefined where it waits for something else,
 * or is not known.
 */
export function cureSum(result: JobResult): string | undefined {
  if (result.totals.full_use === null) return undefined;
  const { waitsFor, task } = useDates(result.runs, result.schedule)?.fullUse ?? {};
  if (waitsFor !== "cured" || task === undefined) return undefined;
  const { run, piece, index } = task;
  const { label, factor, hours: cureHours } = run.moments[index]!.after.layers.at(-1)!.drying.cured!;
  const end = itemOf(result.schedule, run, piece, index)!.end;
  const cured =
    factor === 1
      ? formatDuration(label)
      : `${formatDuration(label)} × ${factorText(factor)} = ${formatDuration(cureHours)}`;
  return t`the last coat of ${pieceName(task)} is on at ${momentAfterStart(result, end)}, + cure ${cured}`;
}
