/**
 * Why a chain cannot be scheduled: which waits and windows cannot go together.
 *
 * First the windows that no clock could meet, because the waits and work between take longer than they allow. Then,
 * if opening hours are to blame, the smallest set of windows that fails in this shop: each is left out in turn and
 * stays out if the chain still fails. Messages carry hours only; whoever knows the items' names may add them.
 */
import { leastTails, settleAlone } from "./bounds.ts";
import { hourMs } from "./calendar.ts";
import type { Problem, Step, Track } from "./problem.ts";
import type { Conflict } from "./types.ts";

interface Window {
  readonly of: number;
  readonly index: number;
  readonly within: number;
}

/** The conflicts of a chain that cannot be scheduled on its own; empty when it can. */
export function conflictsOf(problem: Problem, track: Track): readonly Conflict[] {
  const windows = track.steps.flatMap((step, index) =>
    step.kind === "hands" && step.window !== undefined ? [{ ...step.window, index }] : [],
  );
  const structural = windows.flatMap((window) => tooLong(problem, track, window));
  if (structural.length > 0) return structural;
  if (typeof settleAlone(problem, track) !== "number") return [];
  let kept = windows;
  for (const window of windows) {
    const fewer = kept.filter((other) => other !== window);
    if (typeof settleAlone(problem, withWindows(track, fewer)) === "number") kept = fewer;
  }
  if (kept.length === 0) {
    const ids = track.hands.map((index) => track.steps[index]!.id);
    return [{ items: ids, message: "The shop never opens." }];
  }
  return kept.map((window) => ({
    items: idsBetween(track, window),
    message: `No opening hours let the work begin within the ${hoursText(window.within)} of its window.`,
  }));
}

/** The conflict of a window with the least time that lies between, if that is longer. */
function tooLong(problem: Problem, track: Track, window: Window): readonly Conflict[] {
  const between: Track = { ...track, steps: track.steps.slice(0, window.index) };
  const needed = leastBetween(problem, between, window.of);
  if (needed <= window.within) return [];
  return [
    {
      items: idsBetween(track, window),
      message: `The window closes after ${hoursText(window.within)}, but ${hoursText(needed)} of waits and work lie between.`,
    },
  ];
}

/** The least time from the end of item `of` to the end of the chain; −1 is the schedule's start. */
function leastBetween(problem: Problem, track: Track, of: number): number {
  const lead: Step = { kind: "wait", id: "", time: 0, of: -1 };
  const steps = [
    lead,
    ...track.steps.map((step) => (step.kind === "wait" ? { ...step, of: step.of + 1 } : step)),
  ];
  return leastTails(problem, { ...track, steps })[of + 1] ?? 0;
}

function withWindows(track: Track, windows: readonly Window[]): Track {
  const steps = track.steps.map((step, index) => {
    if (step.kind !== "hands" || windows.some((window) => window.index === index)) return step;
    return { ...step, window: undefined };
  });
  return { ...track, steps };
}

/** What the window counts from, the waits between, and the task that comes too late. */
function idsBetween(track: Track, window: Window): readonly string[] {
  const ids = window.of < 0 ? [] : [track.steps[window.of]!.id];
  for (let index = window.of + 1; index < window.index; index++) {
    if (track.steps[index]!.kind !== "hands") ids.push(track.steps[index]!.id);
  }
  return [...ids, track.steps[window.index]!.id];
}

function hoursText(time: number): string {
  return `${Math.round((time / hourMs) * 100) / 100} h`;
}
