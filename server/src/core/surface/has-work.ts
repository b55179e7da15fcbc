/** Whether there is anything to do in a job. */
import type { SurfaceRun } from "./run.ts";

/** False where no line of work comes to a surface: no `apply`, or one that leads to no recipe, no surface or an empty recipe. */
export const hasWork = (runs: readonly SurfaceRun[]): boolean =>
  runs.some(({ moments }) => moments.length > 0);
