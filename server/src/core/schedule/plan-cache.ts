/**
 * Plans by what they were asked for, because planning is the dearest thing that a keystroke could cost and most
 * keystrokes change no plan.
 */
import type { Owner } from "../memory/memory.ts";
import type { FileId } from "../place.ts";
import { planWork } from "./plan.ts";
import { planKey } from "./plan-key.ts";
import type { Schedule, ScheduleInput } from "./types.ts";

/** The job that asks, or one of several that ask for a plan of theirs. */
export interface PlanOwner extends Owner {
  /** Files of others for whom the plan is. */
  readonly alsoFor?: readonly FileId[];
}

/** A planner that answers later (`being-planned.ts`) gives up what the owner asked before. */
export type Planner = (input: ScheduleInput, owner: PlanOwner) => Schedule;

/** A planner that keeps its last `most` different answers. Equal questions get the same object. */
export function cachingPlanner(most: number, plan: (input: ScheduleInput) => Schedule = planWork): Planner {
  const known = new Map<string, Schedule>();
  return (input) => {
    const key = planKey(input);
    const before = known.get(key);
    const planned = before ?? plan(input);
    // Put last what was asked last, so that the oldest question is the first to go.
    known.delete(key);
    known.set(key, planned);
    const oldest = known.keys().next();
    if (known.size > most && !oldest.done) known.delete(oldest.value);
    return planned;
  };
}
