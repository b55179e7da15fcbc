/**
 * Total float of tasks in sessions: how far each can slip without delaying the end of its job or of another.
 *
 * As in `float.ts`, but whole sessions slip: who does which session after which is kept, and so are the order of each
 * chain, openings, waits and windows. The latest starts are the greatest solution of these rules. A session that cannot
 * slip for the sake of the end alone, windows left aside, is critical with all its tasks.
 */
import { latestBeforeNight } from "../chain-timing.ts";
import type { Floats } from "../float.ts";
import type { Step } from "../problem.ts";
import { latestStartAt, latestStartByEnd } from "../task-placement.ts";
import { ceilToGrid, floorToGrid, type SessionProblem } from "./session-problem.ts";
import type { Session, Workshop } from "./workshop.ts";

/** `people`: the sessions of each, in order; `finishes`: by job. */
export function floatOfSessions(
  shop: Workshop,
  people: readonly (readonly Session[])[],
  finishes: readonly number[],
): Floats {
  const kept = latestEnds(shop, people, finishes, true);
  const free = latestEnds(shop, people, finishes, false);
  const over = (ends: readonly (readonly number[])[]): number[][] =>
    ends.map((row, chain) => row.map((end, index) => Math.max(0, end - shop.times[chain]!.ends[index]!)));
  return {
    slack: over(kept),
    critical: over(free).map((row) => row.map((value) => value <= 0)),
  };
}

/** The latest end of every item, by chain. */
function latestEnds(
  shop: Workshop,
  people: readonly (readonly Session[])[],
  finishes: readonly number[],
  withWindows: boolean,
): readonly (readonly number[])[] {
  const { problem, times } = shop;
  const ends = problem.chains.map(({ steps }, chain) => steps.map(() => finishes[problem.jobOf[chain]!]!));
  const latestStart = new Map<Session, number>();
  const inOrder = people
    .flatMap((done) => done.map((session, place) => ({ session, next: done[place + 1] })))
    .sort((a, b) => b.session.start - a.session.start);
  for (let moved = true; moved; ) {
    moved = false;
    for (const [chain, { steps }] of problem.chains.entries())
      if (carryBack(problem, steps, ends[chain]!)) moved = true;
    for (const { session, next } of inOrder) {
      let shift = Number.POSITIVE_INFINITY;
      for (const { chain, index } of session.tasks)
        shift = Math.min(shift, ends[chain]![index]! - times[chain]!.ends[index]!);
      let start = latestSessionStart(problem, session, session.end + shift, next && latestStart.get(next));
      if (withWindows) start = Math.min(start, latestByWindows(shop, session, ends));
      start = Math.max(session.start, start);
      if (start >= (latestStart.get(session) ?? Number.POSITIVE_INFINITY)) continue;
      latestStart.set(session, start);
      moved = true;
      for (const { chain, index } of session.tasks) {
        const row = ends[chain]!;
        row[index] = Math.min(row[index]!, times[chain]!.ends[index]! + (start - session.start));
        const begin = times[chain]!.starts[index]! + (start - session.start);
        if (index > 0) row[index - 1] = Math.min(row[index - 1]!, begin);
        else limitJobBefore(shop, ends, chain, begin);
      }
    }
  }
  return ends;
}

/** The jobs that the chain's job waits for may not end after this one begins. */
function limitJobBefore(
  { problem }: Workshop,
  ends: readonly number[][],
  chain: number,
  begin: number,
): void {
  const before = problem.jobs[problem.jobOf[chain]!]!.after;
  if (before.length === 0) return;
  for (const [other, row] of ends.entries()) {
    const last = row.length - 1;
    if (last >= 0 && before.includes(problem.jobOf[other]!)) row[last] = Math.min(row[last]!, begin);
  }
}

function latestSessionStart(
  problem: SessionProblem,
  session: Session,
  end: number,
  nextStart = Number.POSITIVE_INFINITY,
): number {
  const length = ceilToGrid(session.kind.fixed + session.work);
  const isWhole = length <= problem.shop.longest;
  return floorToGrid(latestStartByEnd(problem.shop, Math.min(end, nextStart), length, isWhole));
}

/** The latest start with which all windows are kept, were the tasks they count from as late as may be. */
function latestByWindows({ problem, times }: Workshop, session: Session, ends: readonly number[][]): number {
  let latest = Number.POSITIVE_INFINITY;
  for (const { chain, index } of session.tasks) {
    const step = problem.chains[chain]!.steps[index]!;
    if (step.kind !== "hands" || step.window === undefined) continue;
    const closes = floorToGrid(ends[chain]![step.window.of]! + step.window.within);
    latest = Math.min(latest, session.start + closes - times[chain]!.starts[index]!);
  }
  if (!Number.isFinite(latest)) return latest;
  const length = ceilToGrid(session.kind.fixed + session.work);
  return floorToGrid(latestStartAt(problem.shop, latest, length, length <= problem.shop.longest));
}

/** Carries latest ends back over a chain's waits; says whether one moved. */
function carryBack(problem: SessionProblem, steps: readonly Step[], ends: number[]): boolean {
  let moved = false;
  const lower = (index: number, end: number): void => {
    if (index < 0 || end >= ends[index]!) return;
    ends[index] = end;
    moved = true;
  };
  for (let index = steps.length - 1; index >= 0; index--) {
    const step = steps[index]!;
    if (step.kind === "wait") {
      // Waits are rounded up to the grid.
      lower(step.of, floorToGrid(floorToGrid(ends[index]!) - step.time));
      lower(index - 1, ends[index]!);
    } else if (step.kind === "overnight")
      lower(index - 1, floorToGrid(latestBeforeNight(problem, ends[index]!)));
  }
  return moved;
}
