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

const weekdays = (l10n: L10n): readonly string[] => [
  l10n.t("Sun"),
  l10n.t("Mon"),
  l10n.t("Tue"),
  l10n.t("Wed"),
  l10n.t("Thu"),
  l10n.t("Fri"),
  l10n.t("Sat"),
];
const months = (l10n: L10n): readonly string[] => [
  l10n.t("Jan"),
  l10n.t("Feb"),
  l10n.t("Mar"),
  l10n.t("Apr"),
  l10n.t("May"),
  l10n.t("Jun"),
  l10n.t("Jul"),
  l10n.t("Aug"),
  l10n.t("Sep"),
  l10n.t("Oct"),
  l10n.t("Nov"),
  l10n.t("Dec"),
];
const two = (figure: number): string => String(figure).padStart(2, "0");

/** To one place behind the point. */
export const one = (figure: number): string => String(Math.round(figure * 10) / 10);

/** Hours after the start as a date that is read as UTC, which knows no summer time. */
export const dateAt = (startAt: string, hours: number): Date =>
  new Date(Date.parse(`${startAt}Z`) + Math.round(hours * 60) * 60_000);

/** `Mon 8 Mar` */
export const dayText = (at: Date, l10n: L10n): string =>
  l10n.t("{0} {1} {2}", weekdays(l10n)[at.getUTCDay()]!, at.getUTCDate(), months(l10n)[at.getUTCMonth()]!);

/** `Mon 8 Mar 10:00`; without dates `3 h after the start`; without a plan `step 3`. */
export function momentText({ plan, startAt }: Bench<unknown>, moment: number, l10n: L10n): string {
  if (plan !== "planned") return moment === 0 ? l10n.t("before the work") : l10n.t("after step {0}", moment);
  if (startAt === undefined)
    return moment === 0 ? l10n.t("the start") : l10n.t("{0} h after the start", one(moment));
  const at = dateAt(startAt, moment);
  return `${dayText(at, l10n)} ${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;
}
