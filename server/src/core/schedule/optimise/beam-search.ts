/**
 * Beam search (Ow and Morton, "Filtered beam search in scheduling", 1988): betters a plan whose windows tie the chains
 * together, where the rules that place whole stretches do poorly.
 *
 * Lists grow task by task, and of each length only the most promising are kept: those whose least finish is earliest,
 * then those that have used up the least time. How many depends on the size of the job alone, so the same job gives
 * the same plan; for jobs too large to keep even one, nothing is tried. It proves nothing.
 */
import type { Plan } from "../priority-rules.ts";
import type { Problem } from "../problem.ts";
import {
  emptySchedule,
  extend,
  finishOf,
  leastFinish,
  makeSearch,
  nextChains,
  type PartialSchedule,
} from "./partial-schedule.ts";

/** Items that growing the lists may work out, roughly. */
const beamLimit = 600_000;
const mostKept = 40;

/** The better of `plan` and the best list found. */
export function beamSearch(problem: Problem, plan: Plan | undefined): Plan | undefined {
  const nChoices = problem.nHands * problem.chains.length * (problem.nSteps + problem.nHands);
  const width = Math.min(mostKept, Math.floor(beamLimit / Math.max(1, nChoices)));
  if (width < 1) return plan;
  const search = makeSearch(problem, plan, 4 * beamLimit);
  let kept: readonly PartialSchedule[] = [emptySchedule(problem)];
  for (let count = 0; count < problem.nHands; count++) {
    const grown = new Map<string, { readonly next: PartialSchedule; readonly least: number }>();
    for (const partial of kept) {
      for (const chain of nextChains(problem, partial)) {
        const next = extend(search, partial, chain);
        if (next === undefined) continue;
        const least = leastFinish(search, next);
        const state = next.times.map(({ ends }, place) => `${next.position[place]}:${ends.join()}`);
        if (least < search.bound) grown.set(state.join("|"), { next, least });
      }
    }
    kept = [...grown.values()]
      .sort((a, b) => a.least - b.least || a.next.latest - b.next.latest || a.next.free[0]! - b.next.free[0]!)
      .slice(0, width)
      .map(({ next }) => next);
  }
  const [best] = kept;
  if (best === undefined) return plan;
  const finish = finishOf(problem, best);
  return plan === undefined || finish < plan.finish ? { times: best.times, finish } : plan;
}
