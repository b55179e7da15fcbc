/**
 * Betters a plan and its bound: column generation, then branch and bound.
 *
 * The one entrance to this folder. Each stage stops as soon as the plan meets the bound, and each is limited by work
 * that it counts, never by time, so that the same job gets the same plan. What each stage is worth, job by job, is
 * printed by `npm run bench -- --only plans`.
 */
import { earliestByClass } from "../bounds/chain-bounds.ts";
import type { Plan } from "../priority-rules.ts";
import type { Problem } from "../problem.ts";
import { branchAndBound } from "./branch-and-bound.ts";
import { improveByColumns } from "./improve-plan.ts";

export interface Optimised {
  /** Undefined when no plan was found that keeps all windows. */
  readonly plan: Plan | undefined;
  /** Milliseconds of the shop's time before which no plan ends. */
  readonly bound: number;
}

/** `plan` or a better one; `bound` is a moment before which no plan ends, and so is the one returned. */
export function optimise(problem: Problem, plan: Plan | undefined, bound: number): Optimised {
  const isProven = (found: Optimised): boolean =>
    found.plan !== undefined && found.plan.finish <= found.bound;
  if (isProven({ plan, bound })) return { plan, bound };
  const priced = improveByColumns(problem, earliestByClass(problem), plan, bound);
  return isProven(priced) ? priced : search(problem, priced.plan, priced.bound);
}

/** The stages that grow plans task by task. */
export function search(problem: Problem, plan: Plan | undefined, bound: number): Optimised {
  const found = branchAndBound(problem, plan, bound);
  return { plan: found.plan, bound: found.isExact ? (found.plan?.finish ?? bound) : bound };
}
