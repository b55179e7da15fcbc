/**
 * A stripper is laid on, left alone and taken off: three parts of one step, each with its time.
 *
 * The plan has the hands of all of it first and the time for which it is left on behind them; that is as long as the parts in
 * their order. Laying it on takes its share of the hands as a brushed coat takes of a stripping in the table of task times
 * (common practice, no source), and half of them at most. Where the next step scrapes, that is what takes it off.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { shortMomentText, timeText } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { hoursBetween } from "../../core/measure/iso-dates.ts";
import { defaultTaskHours } from "../../core/quantities/abrasives.ts";
import type { StepAction } from "../../core/surface/actions.ts";
import { workedAreaM2 } from "../../core/surface/part-of-surface.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import { hoursAfter } from "./hours-after.ts";
import type { StripParts, StripStep } from "./model.ts";

/** Undefined for an action that lays no stripper on. */
export function stripAt(run: SurfaceRun, index: number): StripStep | undefined {
  const action = run.moments[index]?.action;
  if (action?.op !== "step" || action.verb !== "strip" || !action.use) return undefined;
  const following = run.moments.slice(index + 1, index + 3).map((moment) => moment.action);
  const [next] = following;
  const wait = next?.op === "wait" ? next : undefined;
  const after = wait ? following[1] : next;
  return {
    ...(wait?.hours === undefined ? {} : { hours: wait.hours }),
    takesOff: !(after?.op === "step" && after.verb === "scrape"),
    layShare: layShare(run, action),
  };
}

/** Whether an action is the time for which a stripper is left on, and so a part of the step before it. */
export function isPartOfStrip(run: SurfaceRun, index: number): boolean {
  if (run.moments[index]?.action.op !== "wait") return false;
  const strip = stripAt(run, index - 1);
  return strip?.takesOff === true && strip.hours !== undefined;
}

function layShare(run: SurfaceRun, { part }: StepAction): number {
  const areaM2 = workedAreaM2(run.surface, part);
  return Math.min(
    0.5,
    defaultTaskHours({ verb: "layer", areaM2 }) / defaultTaskHours({ verb: "strip", areaM2 }),
  );
}

/** With times where the plan has the step from `startAt` to `endAt`, and it is known how long it is left on. */
export function stripParts(strip: StripStep, time?: { startAt?: string; endAt?: string }): StripParts {
  const { hours, takesOff } = strip;
  const parts = { takesOff, ...(hours === undefined ? {} : { hours }) };
  const { startAt, endAt } = time ?? {};
  const times = startAt === undefined || endAt === undefined ? undefined : timesOf(strip, startAt, endAt);
  if (hours === undefined || startAt === undefined || endAt === undefined || times === undefined)
    return { ...parts, lines: linesWithoutTimes(strip) };
  const { laid, offFrom } = times;
  const day = startAt.slice(0, 10);
  const clock = (at: string): string => (at.slice(0, 10) === day ? timeText(at) : shortMomentText(at));
  return {
    ...parts,
    lines: [
      t`Lay it on: ${clock(startAt)} to ${clock(laid)}.`,
      t`Don’t touch it until ${clock(offFrom)} (${formatDuration(hours)}).`,
      t`Take it off: ${clock(offFrom)} to ${clock(endAt)}.`,
    ],
    offFrom,
  };
}

function linesWithoutTimes({ hours, takesOff }: StripStep): readonly string[] {
  return [
    t`Lay it on.`,
    hours === undefined
      ? t`Don’t touch it until __:__, as long as its label says.`
      : t`Don’t touch it for ${formatDuration(hours)}.`,
    takesOff ? t`Take it off.` : t`The next step takes it off.`,
  ];
}

/** Until when it is laid on, and from when it is taken off; undefined where another step does that, or nobody knows when. */
function timesOf(
  { hours, takesOff, layShare: share }: StripStep,
  startAt: string,
  endAt: string,
): { readonly laid: string; readonly offFrom: string } | undefined {
  if (!takesOff || hours === undefined) return undefined;
  const hands = Math.max(0, hoursBetween(startAt, endAt) - hours);
  // In steps of five minutes, as the plan is.
  const laid = hoursAfter(startAt, Math.ceil(hands * share * STEPS_PER_HOUR) / STEPS_PER_HOUR);
  const offFrom = laid === undefined ? undefined : hoursAfter(laid, hours);
  return laid === undefined || offFrom === undefined ? undefined : { laid, offFrom };
}

const STEPS_PER_HOUR = 12;
