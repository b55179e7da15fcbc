/**
 * What a job takes beside materials and hours, in money: its `supplies`, and what its steps say that they cost.
 *
 * Arithmetic: supplies + Σ `costs` of a step · pieces of its surface.
 */
import type { Job } from "../model/model.ts";
import type { SurfaceRun } from "../surface/run.ts";

/** What the steps of these runs cost on all their pieces; 0 where none says. */
export const stepCosts = (runs: readonly SurfaceRun[]): number =>
  runs.reduce(
    (sum, run) =>
      sum +
      run.pieces *
        run.moments.reduce((cost, { action }) => cost + (action.op === "step" ? (action.costs ?? 0) : 0), 0),
    0,
  );

export const suppliesOf = (job: Job, runs: readonly SurfaceRun[]): number =>
  (job.supplies?.value ?? 0) + stepCosts(runs);
