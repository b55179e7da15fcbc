/** When an hour of a plan is, by the calendar. */
import { momentAfter } from "../measure/iso-dates.ts";
import type { Schedule } from "./types.ts";

/** So many hours after the start of a plan, as a local ISO date-time to the minute; undefined where it has no dates. */
export function isoAfter({ startAt }: Pick<Schedule, "startAt">, hours: number): string | undefined {
  if (startAt === undefined) return undefined;
  return momentAfter(startAt, Math.round(hours * 60) * 60, "minute");
}
