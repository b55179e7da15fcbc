/** Times as the page of a sheet says them, seen from now. Times are local, see `local-times.ts`. */
import { spokenLanguage, t } from "../../../../grammar/src/translate.ts";
import { clockOf, hoursFrom, isSameDay } from "./local-times.ts";

const dayText = (time: string): string => {
  const language = spokenLanguage();
  const form = { weekday: "short", day: "numeric", month: "short" } as const;
  return new Date(time)
    .toLocaleDateString(language === "en" ? "en-GB" : language, form)
    .replace(/^(\p{L}+)[.,]+/u, "$1");
};

/** A time is not broken over two lines. */
const together = (text: string): string => text.replaceAll(" ", "\u00a0");

/** `Tue 9 Mar 10:10` */
export const momentText = (time: string): string => together(`${dayText(time)} ${clockOf(time)}`);

/** `10:10`, with the day where it is not today. */
export const clockText = (time: string, now: string): string =>
  isSameDay(time, now) ? clockOf(time) : momentText(time);

/** `40 min`, `2 h`, `15 h 50 min`, `3 days` */
export function lastingText(minutes: number): string {
  if (minutes < 60) return together(`${minutes} min`);
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return together(`${hours} h ${minutes % 60 === 0 ? "" : `${minutes % 60} min`}`.trim());
  return together(t`${Math.round(hours / 24)} days`);
}

/** `2 h left` */
export function leftText(time: string, now: string): string {
  const minutes = Math.round(hoursFrom(now, time) * 60);
  return minutes < 1 ? t`less than a minute left` : t`${lastingText(minutes)} left`;
}
