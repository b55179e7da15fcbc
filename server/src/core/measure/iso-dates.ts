/**
 * Dates and local date-times in ISO 8601, as text and as what they mean. They are read as if they were UTC, which knows no
 * summer time, in the proleptic Gregorian calendar of ECMAScript; the tests hold them to an independent library.
 */

const SECOND_MS = 1000;
const DAY_MS = 86_400_000;

/** `2027-03-08`, or with a time `2027-03-08T09:00:30` */
const ISO = /^(\d{4}-\d{2}-\d{2})(?:[Tt ](\d{2}:\d{2}(?::\d{2}(?:\.\d{1,3})?)?))?$/;

/** Milliseconds since 1970 of a date-time, midnight where it has no time; throws a RangeError where it is none. */
function millisecondsOf(text: string): number {
  const [, day, time = "00:00"] = ISO.exec(text) ?? [];
  const value = day !== undefined && isDate(day) && time < "24" ? Date.parse(`${day}T${time}Z`) : Number.NaN;
  if (Number.isNaN(value)) throw new RangeError(`No date: ${text}`);
  return value;
}

/** Days since 1970-01-01 of the date of a text; throws a RangeError where it is none. */
export const dayIn = (text: string): number => Math.floor(millisecondsOf(text) / DAY_MS);

/** Milliseconds since the midnight of a date-time; throws a RangeError where it is none. */
export const timeIn = (text: string): number => millisecondsOf(text) - dayIn(text) * DAY_MS;

/** Whether a text names a day that there is, as `2027-03-08`. */
export function isDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, day] = match.slice(1).map(Number);
  const date = new Date(0);
  // `Date.UTC` takes the years before 100 for those of the twentieth century.
  date.setUTCFullYear(year!, month! - 1, day);
  return date.getUTCMonth() === month! - 1 && date.getUTCDate() === day;
}

/** A day, or a day and a time of it with a blank or a `T` between, as an ISO text; undefined where it is neither. */
export function readMoment(text: string): string | undefined {
  const [date = "", time, ...more] = text.trim().split(/[T ]/u);
  if (!isDate(date) || more.length > 0) return undefined;
  if (time === undefined) return date;
  return /^(?:[01]\d|2[0-3]):[0-5]\d$/u.test(time) ? `${date}T${time}` : undefined;
}

/** The day after that of a text, as text; throws a RangeError where that is no date. */
export const dayAfter = (text: string): string =>
  new Date((dayIn(text) + 1) * DAY_MS).toISOString().split("T")[0]!;

/** So many seconds after the date-time of a text, to the second or the minute. */
export const momentAfter = (text: string, seconds: number, smallestUnit: "second" | "minute"): string =>
  new Date(millisecondsOf(text) + seconds * SECOND_MS)
    .toISOString()
    .slice(0, smallestUnit === "second" ? -".000Z".length : -":00.000Z".length);

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
