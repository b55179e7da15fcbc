/**
 * Schedules a job: when each task, wait and night begins and ends, so that the job finishes as early as may be.
 *
 * The problem is resource-constrained project scheduling with one renewable resource, the crew; opening hours as a
 * calendar; and maximum time lags, the recoat windows (Brucker, Drexl, Möhring, Neumann and Pesch, "Resource-constrained
 * project scheduling: Notation, classification, models, and methods", 1999; with maximum lags Neumann, Schwindt and
 * Zimmermann, "Project Scheduling with Time Windows and Scarce Resources", 2003).
 *
 * Chains that need not share anybody are placed on their own, which is exact. Otherwise priority rules find a plan, the
 * energetic bound says how far from the best it may be, and `optimise` brings the two together. A plan with fewer people
 * is also a plan with more, so smaller crews are tried as well as long as they could do better: one more pair of hands
 * never makes a job later. This module puts the parts together and turns milliseconds into hours and dates.
 */

import { timeAlone } from "./bounds/chain-bounds.ts";
import { energeticBound } from "./bounds/energetic-bound.ts";
import { hourMs, pausesBetween } from "./calendar.ts";
import type { Times } from "./chain-timing.ts";
import { conflictsOf } from "./conflicts.ts";
import { floatOf } from "./float.ts";
import { type Optimised, optimise } from "./optimise/optimise.ts";
import { type Plan, scheduleByPriorityRules } from "./priority-rules.ts";
import { localDateTime, makeProblem, type Problem } from "./problem.ts";
import type { Conflict, PlannedItem, Schedule, ScheduleInput } from "./types.ts";

/**
 * The plan for a job. Without a calendar or a start: day and night, every chain at once. Never throws; what cannot be
 * scheduled, an unreadable start among it, comes back as `impossible` with its conflicts.
 */
export function schedule(input: ScheduleInput): Schedule {
  const problem = makeProblem(input);
  if (problem === undefined) return impossible([{ items: [], reason: { why: "no date" } }]);
  const startAt = localDateTime(problem, problem.start);
  const alone = new Map<number, Times>();
  const conflicts: Conflict[] = [];
  const failed = new Set<number>();
  for (const chain of problem.chains) {
    if (alone.has(chain.chainClass) || failed.has(chain.chainClass)) continue;
    const times = timeAlone(problem, chain);
    if (typeof times !== "number") alone.set(chain.chainClass, times);
    else {
      failed.add(chain.chainClass);
      conflicts.push(...conflictsOf(problem, chain));
    }
  }
  if (failed.size > 0) return impossible(conflicts, startAt);

  const { plan, bound } = bestPlan(problem, alone, planForCrew);
  if (plan === undefined) {
    const windows = problem.chains
      .filter((chain) => chain.hasWindows)
      .flatMap((chain) => chain.hands.map((index) => chain.steps[index]!.id));
    return impossible([{ items: windows, reason: { why: "crew" } }], startAt);
  }
  const elapsed = (plan.finish - problem.start) / hourMs;
  const lowerBound = (bound - problem.start) / hourMs;
  return {
    status: "planned",
    items: plannedItems(problem, plan),
    startAt,
    finishAt: localDateTime(problem, plan.finish),
    elapsedHours: elapsed,
    lowerBound,
    exact: bound >= plan.finish,
    gap: lowerBound > 0 ? (elapsed - lowerBound) / lowerBound : 0,
    conflicts: [],
  };
}

/** How a plan is made for a given number of people. `alone` are the chains' own earliest times, by class. */
export type CrewPlanner = (problem: Problem, alone: ReadonlyMap<number, Times>) => Optimised;

/** The best of the plans for the whole crew and for fewer people. */
export function bestPlan(
  problem: Problem,
  alone: ReadonlyMap<number, Times>,
  planForCrew: CrewPlanner,
): Optimised {
  if (problem.crew >= problem.chains.length) return planAlone(problem, alone);
  let found = planForCrew(problem, alone);
  const { bound } = found;
  for (let crew = problem.crew - 1; crew > 0; crew--) {
    if (found.plan !== undefined && found.plan.finish <= found.bound) break;
    const fewer = { ...problem, crew };
    if (found.plan !== undefined && energeticBound(fewer, alone) >= found.plan.finish) break;
    const other = planForCrew(fewer, alone);
    if (other.plan === undefined) continue;
    if (found.plan === undefined || other.plan.finish < found.plan.finish)
      found = { plan: other.plan, bound };
  }
  return { plan: found.plan, bound };
}

/** Every chain as if it were alone: exact when there is somebody for each. */
function planAlone(problem: Problem, alone: ReadonlyMap<number, Times>): Optimised {
  const times = problem.chains.map((chain) => alone.get(chain.chainClass)!);
  const finish = times.reduce((latest, { ends }) => Math.max(latest, ends.at(-1) ?? 0), problem.start);
  return { plan: { times, finish }, bound: finish };
}

function planForCrew(problem: Problem, alone: ReadonlyMap<number, Times>): Optimised {
  const bound = energeticBound(problem, alone);
  return optimise(problem, scheduleByPriorityRules(problem, bound), bound);
}

function impossible(conflicts: readonly Conflict[], startAt?: string): Schedule {
  return {
    status: "impossible",
    items: [],
    startAt,
    elapsedHours: 0,
    lowerBound: 0,
    exact: true,
    gap: 0,
    conflicts,
  };
}

function plannedItems(problem: Problem, plan: Plan): readonly PlannedItem[] {
  const { slack, critical } = floatOf(problem, plan);
  const inHours = (time: number): number => (time - problem.start) / hourMs;
  return problem.chains.flatMap((chain, place) =>
    chain.steps.map((step, index) => {
      const start = plan.times[place]!.starts[index]!;
      const end = plan.times[place]!.ends[index]!;
      const pauses = step.kind === "hands" ? pausesBetween(problem.shop, start, end) : [];
      return {
        id: step.id,
        chain: chain.key,
        start: inHours(start),
        end: inHours(end),
        startAt: localDateTime(problem, start),
        endAt: localDateTime(problem, end),
        slack: Math.round((slack[place]![index]! / hourMs) * 1e6) / 1e6,
        critical: critical[place]![index]!,
        pauses: pauses.map((pause) => ({ start: inHours(pause.start), end: inHours(pause.end) })),
      };
    }),
  );
}
