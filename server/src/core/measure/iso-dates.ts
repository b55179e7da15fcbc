/**
 * Dates and local date-times in ISO 8601, as text and as what they mean. The functions of `temporal-polyfill` are taken one
 * by one, since its classes would bring all of it into every bundle.
 */
import { getBasic } from "temporal-polyfill/fns/Calendar";
import * as PlainDate from "temporal-polyfill/fns/PlainDate";
import * as PlainDateTime from "temporal-polyfill/fns/PlainDateTime";

/** The date of a text; throws a RangeError where it begins with none. */
export const dateIn = (text: string): PlainDate.Record => PlainDate.fromString(text, getBasic);

/** The date-time of a text, midnight where it has no time; throws a RangeError where it is none. */
export const dateTimeIn = (text: string): PlainDateTime.Record => PlainDateTime.fromString(text, getBasic);

/** Whether a text names a day that there is, as `2027-03-08`. */
export function isDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = match.slice(1).map(Number);
  const date = new Date(Date.UTC(year!, month! - 1, day));
  return date.getUTCMonth() === month! - 1 && date.getUTCDate() === day;
}

/** The day after that of a text, as text; throws a RangeError where that is no date. */
export const dayAfter = (text: string): string => PlainDate.toString(PlainDate.addDays(dateIn(text), 1));

/** So many seconds after the date-time of a text, to the second or the minute. */
export const momentAfter = (text: string, seconds: number, smallestUnit: "second" | "minute"): string =>
  PlainDateTime.toString(PlainDateTime.addSeconds(dateTimeIn(text), seconds), { smallestUnit });

/** Hours since 1970 of a local date-time, or of the beginning of a date, read as if it were UTC. */
export const hourOf = (text: string): number =>
  Date.parse(`${text.length === 10 ? `${text}T00:00` : text}Z`) / 3_600_000;

/** Hours from one local date-time to another; both are read as if they were UTC, which knows no summer time. */
export const hoursBetween = (from: string, to: string): number =>
  (Date.parse(`${to}Z`) - Date.parse(`${from}Z`)) / 3_600_000;

/** The last moment that still meets a date wanted, as an ISO date-time: the midnight that ends its day, or its time. */
export function endOfDateWanted(wanted: { readonly date: string; readonly time?: string }): string {
  if (wanted.time !== undefined && wanted.time !== "24:00") return `${wanted.date}T${wanted.time}:00`;
  return `${dayAfter(wanted.date)}T00:00:00`;
}
