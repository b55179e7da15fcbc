/**
 * The plan of a job that is still being made, for planners that answer later: the editor shows first what needs no plan.
 * Nothing is known of it, neither dates nor whether there is one, so nothing may be said that depends on it.
 */
import type { Schedule } from "./types.ts";

export const BEING_PLANNED: Schedule = {
  status: "being planned",
  items: [],
  elapsedHours: 0,
  lowerBound: 0,
  exact: false,
  gap: 0,
  conflicts: [],
};

export const isBeingPlanned = ({ status }: Schedule): boolean => status === "being planned";
