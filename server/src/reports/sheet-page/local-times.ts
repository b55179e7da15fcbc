/** Local times of an HTML sheet, without a zone, as the plan has them: `2027-03-08T09:05`. They compare as texts. */

const MINUTE_MS = 60_000;

const pad = (value: number): string => String(value).padStart(2, "0");

export const localTime = (at: Date): string =>
  `${at.getFullYear()}-${pad(at.getMonth() + 1)}-${pad(at.getDate())}T${pad(at.getHours())}:${pad(at.getMinutes())}`;

/** `hours` after a time, rounded up to a minute. */
export const later = (time: string, hours: number): string =>
  localTime(new Date(Math.ceil((new Date(time).getTime() + hours * 60 * MINUTE_MS) / MINUTE_MS) * MINUTE_MS));

/** Hours from one time to another; negative where the second is the earlier one. */
export const hoursFrom = (start: string, end: string): number =>
  (new Date(end).getTime() - new Date(start).getTime()) / (60 * MINUTE_MS);

/** `2027-03-08` */
export const dayOf = (time: string): string => time.slice(0, 10);

/** `09:05` */
export const clockOf = (time: string): string => time.slice(11, 16);

export const isSameDay = (one: string, other: string): boolean => dayOf(one) === dayOf(other);
