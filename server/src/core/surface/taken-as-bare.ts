/**
 * Surfaces that are taken as bare because nothing says what is on them: no `existing`, and no earlier job that left
 * something. It is an assumption, so whatever shows such a surface says so.
 */
import type { Surface } from "../model/model.ts";
import type { SurfaceRun } from "./run.ts";

/** Whether its piece says nothing of what is on it; `existing bare` says that nothing is. */
export const isSilentOnFinish = ({ existingPlace, asLeftBy }: Surface): boolean =>
  existingPlace === undefined && asLeftBy === undefined;

/** Whether a run starts on a surface that is taken as bare. */
export const isTakenAsBare = ({ surface, job, initial }: SurfaceRun): boolean =>
  surface !== undefined &&
  isSilentOnFinish(surface) &&
  job?.after === undefined &&
  initial.layers.length === 0;
