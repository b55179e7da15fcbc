/**
 * Plans by what they were asked for, because planning is the dearest thing that a keystroke could cost and most
 * keystrokes change no plan.
 */
import type { Owner } from "../memory/memory.ts";
import { planWork } from "./plan.ts";
import type { Schedule, ScheduleInput } from "./types.ts";

/** `owner` is the job that asks; a planner that answers later (`being-planned.ts`) gives up what the job asked before. */
export type Planner = (input: ScheduleInput, owner: Owner) => Schedule;

/** A planner that keeps its last `most` different answers. Equal questions get the same object. */
export function cachingPlanner(most: number): Planner {
  const known = new Map<string, Schedule>();
  return (input) => {
    const key = JSON.stringify(input);
    const before = known.get(key);
    const plan = before ?? planWork(input);
    // Put last what was asked last, so that the oldest question is the first to go.
    known.delete(key);
    known.set(key, plan);
    const oldest = known.keys().next();
    if (known.size > most && !oldest.done) known.delete(oldest.value);
    return plan;
  };
}
