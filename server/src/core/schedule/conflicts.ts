/**
 * Why a chain cannot be scheduled: which waits and windows cannot go together.
 *
 * First the windows that no clock could meet, because the waits and work between take longer than they allow. Then,
 * if opening hours are to blame, a smallest set of windows that fails in this shop, by a deletion filter (Chinneck and
 * Dravnieks, "Locating minimal infeasible constraint sets in linear programs", 1991): as few in a row as fail, and of
 * these each is left out in turn and stays out if the chain still fails. They carry hours only; whoever knows the
 * items' names may add them.
 */
import { leastTails, timeAlone } from "./bounds/chain-bounds.ts";
import { hourMs } from "./calendar.ts";
import { makeChain, type Problem, type ProblemChain, type Step } from "./problem.ts";
import type { Conflict } from "./types.ts";

/** Of more windows in a row, none is tried to be left out. */
const mostLeftOut = 24;

interface Window {
  readonly of: number;
  readonly index: number;
  readonly within: number;
}

/** The conflicts of a chain that cannot be scheduled on its own; empty when it can. */
export function conflictsOf(problem: Problem, chain: ProblemChain): readonly Conflict[] {
  const windows = chain.steps.flatMap((step, index) =>
    step.kind === "hands" && step.window !== undefined ? [{ ...step.window, index }] : [],
  );
  const structural = windows.flatMap((window) => tooLong(problem, chain, window));
  if (structural.length > 0) return structural;
  const failed = timeAlone(problem, chain);
  if (typeof failed !== "number") return [];
  const kept = fewest(
    windows.filter(({ index }) => index <= failed),
    (some) => typeof timeAlone(problem, withWindows(chain, some, failed)) === "number",
  );
  if (kept.length === 0) {
    const ids = chain.hands.map((index) => chain.steps[index]!.id);
    return [{ items: ids, reason: { why: "never open" } }];
  }
  return kept.map((window) => ({
    items: idsBetween(chain, window),
    reason: { why: "hours", within: window.within / hourMs },
  }));
}

/** The conflict of a window with the least time that lies between, if that is longer. */
function tooLong(problem: Problem, chain: ProblemChain, window: Window): readonly Conflict[] {
  const between: ProblemChain = { ...chain, steps: chain.steps.slice(0, window.index) };
  const needed = leastBetween(problem, between, window.of);
  if (needed <= window.within) return [];
  return [
    {
      items: idsBetween(chain, window),
      reason: { why: "window", within: window.within / hourMs, needed: needed / hourMs },
    },
  ];
}

/** The least time from the end of item `of` to the end of the chain; −1 is the schedule's start. */
function leastBetween(problem: Problem, chain: ProblemChain, of: number): number {
  const lead: Step = { kind: "wait", id: "", time: 0, of: -1 };
  const steps = [
    lead,
    ...chain.steps.map((step) => (step.kind === "wait" ? { ...step, of: step.of + 1 } : step)),
  ];
  return leastTails(problem, { ...chain, steps })[of + 1] ?? 0;
}

/** Windows that fail together, as few as can be; with very many in a row, the row. */
function fewest(windows: readonly Window[], doFail: (some: readonly Window[]) => boolean): readonly Window[] {
  if (doFail([])) return [];
  let fails = 0;
  let holds = windows.length;
  while (holds - fails > 1) {
    const middle = (fails + holds) >> 1;
    if (doFail(windows.slice(middle))) fails = middle;
    else holds = middle;
  }
  let kept = windows.slice(fails);
  if (kept.length > mostLeftOut) return kept;
  for (const window of kept) {
    const fewer = kept.filter((other) => other !== window);
    if (doFail(fewer)) kept = fewer;
  }
  return kept;
}

/** The chain up to step `last` with these windows alone. */
function withWindows(chain: ProblemChain, windows: readonly Window[], last: number): ProblemChain {
  const kept = new Set(windows.map(({ index }) => index));
  const steps = chain.steps
    .slice(0, last + 1)
    .map((step, index) => (step.kind !== "hands" || kept.has(index) ? step : { ...step, window: undefined }));
  return makeChain(chain.key, chain.chainClass, steps);
}

/** What the window counts from, the waits between, and the task that comes too late. */
function idsBetween(chain: ProblemChain, window: Window): readonly string[] {
  const ids = window.of < 0 ? [] : [chain.steps[window.of]!.id];
  for (let index = window.of + 1; index < window.index; index++) {
    if (chain.steps[index]!.kind !== "hands") ids.push(chain.steps[index]!.id);
  }
  return [...ids, chain.steps[window.index]!.id];
}
