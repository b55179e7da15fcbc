/** The moments that the slider of the bench view stops at, and how moments are told. */
import type { Bench } from "../../../server/src/views/bench/model.ts";
import type { L10n } from "./l10n.ts";

/** What is looked at. `moment`: position in `momentsOf`. */
export interface Look {
  readonly moment: number;
  /** Of the page, px. */
  readonly width: number;
  /** The other jobs of the shop are drawn as well. */
  readonly isWholeShop: boolean;
  /** Cans that are bought, as `canKey` names them. */
  readonly ticked: ReadonlySet<string>;
  readonly l10n: L10n;
}

/** Stops of the slider in order: hours of the plan, or without one the number of steps that are done on every surface. */
export function momentsOf({ plan, surfaces }: Bench<unknown>): readonly number[] {
  const stops =
    plan === "planned"
      ? surfaces.flatMap(({ bars }) => bars.flatMap(({ start, end }) => [start, end]))
      : surfaces.flatMap(({ steps }) => steps.flatMap(({ number = 0 }) => number));
  return [...new Set([0, ...stops])].toSorted((a, b) => a - b);
}

/**
 * The hour at which the view opens: of a job that has begun what is to be done next by its record, or where it has none the
 * present time; of any other the end, with all that will be on the piece. `now` as the clock of the shop shows it, read as
 * UTC as `dateAt` does. Undefined for the end.
 */
export function openingHour(bench: Bench<unknown>, now: Date): number | undefined {
  const { plan, lastDone, next, startAt, endHours } = bench;
  if (plan !== "planned") return undefined;
  if (lastDone !== undefined) return next[0]?.start;
  if (startAt === undefined) return undefined;
  const hours = (now.getTime() - dateAt(startAt, 0).getTime()) / 3_600_000;
  return hours >= 0 && hours < endHours ? hours : undefined;
}

/** What a clock on the wall shows, as `dateAt` has it. */
export const wallClock = (at: Date): Date => new Date(at.getTime() - at.getTimezoneOffset() * 60_000);

const two = (figure: number): string => String(figure).padStart(2, "0");

/** English dates are written as in Europe, as those of the server are, which stand beside them. */
const localeOf = ({ language = "en" }: L10n): string => {
  if (language === "en" || language.startsWith("en-")) return "en-GB";
  return Intl.DateTimeFormat.supportedLocalesOf([language]).length > 0 ? language : "en-GB";
};

/** To one place behind the point, for drawing. */
export const one = (figure: number): string => String(Math.round(figure * 10) / 10);

/** Hours after the start as a date that is read as UTC, which knows no summer time. */
export const dateAt = (startAt: string, hours: number): Date =>
  new Date(Date.parse(`${startAt}Z`) + Math.round(hours * 60) * 60_000);

/** A figure for a person, with one decimal at most. */
export const figureText = (figure: number, l10n: L10n): string =>
  new Intl.NumberFormat(localeOf(l10n), { maximumFractionDigits: 1, useGrouping: false }).format(figure);

/** `Top, Base and Legs` */
export const listText = (items: readonly string[], l10n: L10n): string =>
  new Intl.ListFormat(localeOf(l10n), { type: "conjunction" }).format(items);

/** `Mon 8 Mar` */
export const dayText = (at: Date, l10n: L10n): string =>
  new Intl.DateTimeFormat(localeOf(l10n), {
    weekday: "short",
    day: "numeric",
    month: "short",
    timeZone: "UTC",
  })
    .format(at)
    .replace(/^(\p{L}+), /u, "$1 ");

/** `09:00` */
export const clockText = (at: Date): string => `${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;

/** `45 min`, `2 h 30 min`, from two days on `3 days 4 h`. */
export function durationText(hours: number, l10n: L10n): string {
  const minutes = Math.round(hours * 60);
  const [whole, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (whole < 48) {
    return [whole === 0 ? "" : `${whole} h`, rest === 0 && whole > 0 ? "" : `${rest} min`]
      .filter(Boolean)
      .join(" ");
  }
  const [days, more] = [Math.floor(Math.round(hours) / 24), Math.round(hours) % 24];
  return more === 0 ? l10n.t("{0} days", days) : l10n.t("{0} days {1} h", days, more);
}

/** `Mon 8 Mar 10:00`; without dates `3 h after the start`; without a plan `step 3`. */
export function momentText({ plan, startAt }: Bench<unknown>, moment: number, l10n: L10n): string {
  if (plan !== "planned") return moment === 0 ? l10n.t("before the work") : l10n.t("after step {0}", moment);
  if (startAt === undefined)
    return moment === 0 ? l10n.t("the start") : l10n.t("{0} after the start", durationText(moment, l10n));
  const at = dateAt(startAt, moment);
  return `${dayText(at, l10n)} ${clockText(at)}`;
}

/** `Mon 8 Mar 10:00 to 11:30`: the day once where it is the same. */
export function stretchText(bench: Bench<unknown>, start: number, end: number, l10n: L10n): string {
  const { plan, startAt } = bench;
  const from = momentText(bench, start, l10n);
  if (plan === "planned" && startAt !== undefined) {
    const [a, b] = [dateAt(startAt, start), dateAt(startAt, end)];
    if (a.toISOString().slice(0, 10) === b.toISOString().slice(0, 10))
      return l10n.t("{0} to {1}", from, clockText(b));
  }
  return l10n.t("{0} to {1}", from, momentText(bench, end, l10n));
}
