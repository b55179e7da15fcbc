/**
 * Where a line of a recipe is done: in every job that leads there, surface by surface, or, while no job does, on the
 * assumed surface of the recipe by itself.
 */
import type { Statement } from "../../../../grammar/src/tree.ts";
import { isItsLine } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { LineRun } from "../../views/sums/line-run.ts";
import { allJobs, type HoverContext, isHere, recipeAround } from "./context.ts";

export function runsOfLine(ctx: HoverContext, statement: Statement): readonly LineRun[] {
  const ofRun = (run: SurfaceRun, result?: JobResult): readonly LineRun[] => {
    const times = run.moments.flatMap((moment, index) =>
      isItsLine(moment.action) && isHere(ctx, moment.action.place, statement.span)
        ? [{ ...moment, index }]
        : [],
    );
    return times.length > 0 ? [{ run, times, ...(result ? { result } : {}) }] : [];
  };
  const inJobs = allJobs(ctx.checker).flatMap((result) => result.runs.flatMap((run) => ofRun(run, result)));
  if (inJobs.length > 0) return inJobs;
  const recipe = recipeAround(ctx);
  return recipe ? ofRun(ctx.checker.assumed(recipe)) : [];
}
