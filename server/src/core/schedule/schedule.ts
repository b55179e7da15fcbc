/**
 * Schedules a job: when each task, wait and night begins and ends, so that the job finishes as early as may be.
 *
 * Chains that need not share anybody are placed on their own, which is exact. Otherwise rules find a plan, prices bring
 * it and its bound together, and a search with a fixed number of nodes tries to prove or better it. A plan with fewer people is also a plan with more, so
 * smaller crews are tried as well as long as they could do better: one more pair of hands never makes a job later.
 * This module puts the parts together and turns milliseconds into hours and dates; it calculates nothing itself.
 */
import { growLists } from "./beam.ts";
import { settleAlone } from "./bounds.ts";
import { hourMs, pausesBetween } from "./calendar.ts";
import { conflictsOf } from "./conflicts.ts";
import { lowestFinish } from "./energy.ts";
import { searchPlan } from "./exact.ts";
import { type Plan, planByRules } from "./heuristic.ts";
import { improve } from "./improve.ts";
import { localDateTime, makeProblem, type Problem } from "./problem.ts";
import type { Times } from "./settle.ts";
import { slackOf } from "./slack.ts";
import type { Conflict, PlannedItem, Schedule, ScheduleInput } from "./types.ts";

/**
 * The plan for a job. Without a calendar or a start: day and night, every chain at once. Never throws; what cannot be
 * scheduled, an unreadable start among it, comes back as `impossible` with its conflicts.
 */
export function schedule(input: ScheduleInput): Schedule {
  const problem = makeProblem(input);
  if (problem === undefined) return impossible([{ items: [], message: "The start is not a date." }]);
  const startAt = localDateTime(problem, problem.start);
  const alone = new Map<number, Times>();
  const conflicts: Conflict[] = [];
  const failed = new Set<number>();
  for (const track of problem.tracks) {
    if (alone.has(track.sort) || failed.has(track.sort)) continue;
    const times = settleAlone(problem, track);
    if (typeof times !== "number") alone.set(track.sort, times);
    else {
      failed.add(track.sort);
      conflicts.push(...conflictsOf(problem, track));
    }
  }
  if (failed.size > 0) return impossible(conflicts, startAt);

  const { plan, lowest } = bestPlan(problem, alone);
  if (plan === undefined) {
    const windows = problem.tracks
      .filter((track) => track.hasWindows)
      .flatMap((track) => track.hands.map((index) => track.steps[index]!.id));
    return impossible([{ items: windows, message: "The crew cannot keep all windows." }], startAt);
  }
  const elapsed = (plan.finish - problem.start) / hourMs;
  const lowerBound = (lowest - problem.start) / hourMs;
  return {
    status: "planned",
    items: plannedItems(problem, plan),
    startAt,
    finishAt: localDateTime(problem, plan.finish),
    elapsedHours: elapsed,
    lowerBound,
    exact: lowest >= plan.finish,
    gap: lowerBound > 0 ? (elapsed - lowerBound) / lowerBound : 0,
    conflicts: [],
  };
}

interface Found {
  readonly plan: Plan | undefined;
  /** No plan finishes before. */
  readonly lowest: number;
}

function bestPlan(problem: Problem, alone: ReadonlyMap<number, Times>): Found {
  if (problem.crew >= problem.tracks.length) return planAlone(problem, alone);
  let found = planForCrew(problem, alone);
  const lowest = found.lowest;
  for (let crew = problem.crew - 1; crew > 0; crew--) {
    if (found.plan !== undefined && found.plan.finish <= found.lowest) break;
    const fewer = { ...problem, crew };
    if (found.plan !== undefined && lowestFinish(fewer, alone) >= found.plan.finish) break;
    const other = planForCrew(fewer, alone);
    if (other.plan === undefined) continue;
    if (found.plan === undefined || other.plan.finish < found.plan.finish)
      found = { plan: other.plan, lowest };
  }
  return { plan: found.plan, lowest };
}

/** Every chain as if it were alone: exact when there is somebody for each. */
function planAlone(problem: Problem, alone: ReadonlyMap<number, Times>): Found {
  const times = problem.tracks.map((track) => alone.get(track.sort)!);
  const finish = times.reduce((latest, { ends }) => Math.max(latest, ends.at(-1) ?? 0), problem.start);
  return { plan: { times, finish }, lowest: finish };
}

function planForCrew(problem: Problem, alone: ReadonlyMap<number, Times>): Found {
  const lowest = lowestFinish(problem, alone);
  const plan = planByRules(problem, lowest);
  if (plan !== undefined && plan.finish <= lowest) return { plan, lowest };
  const better = improve(problem, alone, plan, lowest);
  if (better.plan !== undefined && better.plan.finish <= better.lowest) return better;
  const isTied = problem.tracks.some((track) => track.hasWindows);
  const searched = searchPlan(problem, isTied ? growLists(problem, better.plan) : better.plan, better.lowest);
  return searched.isExact
    ? { plan: searched.plan, lowest: searched.plan?.finish ?? better.lowest }
    : { plan: searched.plan, lowest: better.lowest };
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
  const { slack, critical } = slackOf(problem, plan);
  const inHours = (time: number): number => (time - problem.start) / hourMs;
  return problem.tracks.flatMap((track, place) =>
    track.steps.map((step, index) => {
      const start = plan.times[place]!.starts[index]!;
      const end = plan.times[place]!.ends[index]!;
      const pauses = step.kind === "hands" ? pausesBetween(problem.shop, start, end) : [];
      return {
        id: step.id,
        chain: track.key,
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
