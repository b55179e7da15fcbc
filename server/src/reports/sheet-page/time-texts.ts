/** Times as the page of a sheet says them, seen from now. Times are local, see `local-times.ts`. */
import { clockOf, hoursFrom, isSameDay } from "./local-times.ts";

const DAY = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short" });

/** A time is not broken over two lines. */
const together = (text: string): string => text.replaceAll(" ", "\u00a0");

/** `Tue 9 Mar 10:10` */
export const momentText = (time: string): string =>
  together(`${DAY.format(new Date(time)).replace(",", "")} ${clockOf(time)}`);

/** `10:10`, with the day where it is not today. */
export const clockText = (time: string, now: string): string =>
  isSameDay(time, now) ? clockOf(time) : momentText(time);

/** `40 min`, `2 h`, `15 h 50 min`, `3 days` */
export function lastingText(minutes: number): string {
  if (minutes < 60) return together(`${minutes} min`);
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return together(`${hours} h ${minutes % 60 === 0 ? "" : `${minutes % 60} min`}`.trim());
  return together(`${Math.round(hours / 24)} days`);
}

/** `2 h left` */
export function leftText(time: string, now: string): string {
  const minutes = Math.round(hoursFrom(now, time) * 60);
  return minutes < 1 ? "less than a minute left" : `${lastingText(minutes)} left`;
}
