/**
 * The plan of what is asked for: in sessions where a shop's people share the work, chain by chain where there is no shop
 * and nobody has to share.
 */
import { schedule } from "./schedule.ts";
import { type NearKept, type PlanOptions, planSessions } from "./sessions/plan-sessions.ts";
import type { Schedule, ScheduleInput } from "./types.ts";

/** Never throws; what cannot be planned comes back as `impossible` with its conflicts. */
export const planWork = (input: ScheduleInput): Schedule => planWith(input, {});

/**
 * The same with an eighth of the search, for plans of which many are compared: a valid plan, at times a little later than
 * the one that a whole search finds.
 */
export const planWorkRoughly = (input: ScheduleInput): Schedule => planWith(input, { effort: 1 / 8 });

/** The same near a plan that was kept, where the input has notes of one. */
export const planWorkNear = (input: ScheduleInput, nearKept: NearKept | undefined): Schedule =>
  planWith(input, { nearKept });

const planWith = (input: ScheduleInput, options: PlanOptions): Schedule =>
  planSessions(input, options) ?? (input.jobs === undefined ? schedule(input) : NOT_TOGETHER);

const NOT_TOGETHER: Schedule = {
  status: "impossible",
  items: [],
  elapsedHours: 0,
  lowerBound: 0,
  exact: false,
  gap: 0,
  conflicts: [{ items: [], reason: { why: "shop" } }],
};
