/**
 * A stripper is laid on, left alone and taken off: three parts of one step, each with its time.
 *
 * The plan has the hands of all of it first and the time for which it is left on behind them; that is as long as the parts in
 * their order. Laying it on takes its share of the hands as a brushed coat takes of a stripping in the table of task times
 * (common practice, no source), and half of them at most. Where the next step scrapes, that is what takes it off.
 */
import { shortMomentText, timeText } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { defaultTaskHours } from "../../core/quantities/abrasives.ts";
import type { StepAction } from "../../core/surface/actions.ts";
import { workedAreaM2 } from "../../core/surface/part-of-surface.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
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

const MINUTE_MS = 60_000;
const STEP_MS = 5 * MINUTE_MS;

/** With times where the plan has the step from `startAt` to `endAt`, and it is known how long it is left on. */
export function stripParts(strip: StripStep, time?: { startAt?: string; endAt?: string }): StripParts {
  const { hours, takesOff, layShare: share } = strip;
  const left = hours === undefined ? undefined : formatDuration(hours);
  const start = time?.startAt === undefined ? undefined : Date.parse(`${time.startAt}Z`);
  const end = time?.endAt === undefined ? undefined : Date.parse(`${time.endAt}Z`);
  if (!takesOff || hours === undefined || start === undefined || end === undefined) {
    return {
      lines: [
        "Lay it on.",
        left === undefined
          ? "Don’t touch it until __:__, as long as its label says."
          : `Don’t touch it for ${left}.`,
        takesOff ? "Take it off." : "The next step takes it off.",
      ],
      takesOff,
      ...(hours === undefined ? {} : { hours }),
    };
  }
  const hands = Math.max(0, end - hours * 60 * MINUTE_MS - start);
  const laid = start + Math.ceil((hands * share) / STEP_MS) * STEP_MS;
  const offFrom = iso(laid + hours * 60 * MINUTE_MS);
  const day = time!.startAt!.slice(0, 10);
  const clock = (at: string): string => (at.slice(0, 10) === day ? timeText(at) : shortMomentText(at));
  return {
    lines: [
      `Lay it on: ${clock(time!.startAt!)} to ${clock(iso(laid))}.`,
      `Don’t touch it until ${clock(offFrom)} (${left}).`,
      `Take it off: ${clock(offFrom)} to ${clock(time!.endAt!)}.`,
    ],
    takesOff,
    hours,
    offFrom,
  };
}

const iso = (ms: number): string => new Date(ms).toISOString().slice(0, 19);
