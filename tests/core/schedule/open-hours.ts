/**
 * Opening hours for the checks, minute by minute: deliberately slow and unlike the scheduler's own arithmetic.
 *
 * Local time is read as if it were UTC through `Date`, which has no part in the scheduler.
 */
import type { Calendar } from "../../../server/src/core/schedule/types.ts";

/** Minutes since 1970 of a local date or date-time. */
export function minuteOf(text: string): number {
  return Date.parse(text.length === 10 ? `${text}T00:00Z` : `${text.replace(" ", "T")}Z`) / 60_000;
}

/**
 * The end of `wait overnight` after a task that ends at `minute`: the first minute 720 or more away that is open with
 * a closed one before it, or in opening hours that began on a later day. A shop that states no hours is open day and night: the first minute that is open at all.
 */
export function morningAfter(
  calendar: Calendar,
  isOpen: (minute: number) => boolean,
  minute: number,
): number {
  let morning = minute + 720;
  const isMorning = (): boolean => {
    if (!isOpen(morning)) return false;
    let opened = morning;
    while (isOpen(opened - 1) && morning - opened < 1440) opened--;
    // Open for a day or longer, a shop has no morning.
    if (calendar.hours === undefined || morning - opened >= 1440) return true;
    return opened === morning || Math.floor(opened / 1440) > Math.floor(minute / 1440);
  };
  while (!isMorning()) morning++;
  return morning;
}

/** Says of every minute since 1970 whether the shop is open for the whole of it. */
export function makeOpenMinute(calendar: Calendar): (minute: number) => boolean {
  const days = new Map<number, boolean[]>();
  const minutesOf = (day: number): boolean[] => {
    const date = new Date(day * 86_400_000);
    const iso = date.toISOString().slice(0, 10);
    const weekday = date.getUTCDay() === 0 ? 7 : date.getUTCDay();
    const isClosed = calendar.closed.some(({ from, to }) => from <= iso && iso <= to);
    return Array.from({ length: 1440 }, (_, minute) => {
      if (isClosed) return false;
      if (calendar.hours === undefined) return true;
      return calendar.hours.some(
        (span) => span.weekday === weekday && span.opens <= minute && minute < span.closes,
      );
    });
  };
  return (minute) => {
    const day = Math.floor(minute / 1440);
    let minutes = days.get(day);
    if (minutes === undefined) {
      minutes = minutesOf(day);
      days.set(day, minutes);
    }
    return minutes[Math.floor(minute) - day * 1440]!;
  };
}
