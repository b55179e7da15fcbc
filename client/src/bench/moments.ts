/** The moments that the slider of the bench view stops at, and how moments are told. */
import type { Bench } from "../../../server/src/views/bench/model.ts";

/** What is looked at. `moment`: position in `momentsOf`. */
export interface Look {
  readonly moment: number;
  /** Of the page, px. */
  readonly width: number;
  /** The other jobs of the shop are drawn as well. */
  readonly isWholeShop: boolean;
  /** Cans that are bought, as `canKey` names them. */
  readonly ticked: ReadonlySet<string>;
}

/** Stops of the slider in order: hours of the plan, or without one the number of steps that are done on every surface. */
export function momentsOf({ plan, surfaces }: Bench<unknown>): readonly number[] {
  const stops =
    plan === "planned"
      ? surfaces.flatMap(({ bars }) => bars.flatMap(({ start, end }) => [start, end]))
      : surfaces.flatMap(({ steps }) => steps.flatMap(({ number = 0 }) => number));
  return [...new Set([0, ...stops])].toSorted((a, b) => a - b);
}

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const two = (figure: number): string => String(figure).padStart(2, "0");

/** To one place behind the point. */
export const one = (figure: number): string => String(Math.round(figure * 10) / 10);

/** Hours after the start as a date that is read as UTC, which knows no summer time. */
export const dateAt = (startAt: string, hours: number): Date =>
  new Date(Date.parse(`${startAt}Z`) + Math.round(hours * 60) * 60_000);

/** `Mon 8 Mar` */
export const dayText = (at: Date): string =>
  `${WEEKDAYS[at.getUTCDay()]} ${at.getUTCDate()} ${MONTHS[at.getUTCMonth()]}`;

/** `Mon 8 Mar 10:00`; without dates `3 h after the start`; without a plan `step 3`. */
export function momentText({ plan, startAt }: Bench<unknown>, moment: number): string {
  if (plan !== "planned") return moment === 0 ? "before the work" : `after step ${moment}`;
  if (startAt === undefined) return moment === 0 ? "the start" : `${one(moment)} h after the start`;
  const at = dateAt(startAt, moment);
  return `${dayText(at)} ${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;
}
