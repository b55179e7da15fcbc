/** When somebody may be in the shop, by its opening hours as the plan has them. Times are local, see `local-times.ts`. */
import { clockOf, dayOf, later } from "./local-times.ts";

export interface Opening {
  /** By weekday, 1 (Monday) to 7; times of day: `09:00`. */
  readonly spans: readonly { readonly weekday: number; readonly opens: string; readonly closes: string }[];
  /** Closed days, both ends included: `2027-03-26`. */
  readonly closed: readonly { readonly from: string; readonly to: string }[];
}

/** A shop that is closed for longer has no next opening here. */
const MOST_DAYS = 400;

/** A time, or the next opening where the shop is closed then; the time itself where there is none within a year. */
export function openAt({ spans, closed }: Opening, time: string): string {
  let day = dayOf(time);
  for (let i = 0; i < MOST_DAYS; i += 1) {
    const isClosed = closed.some(({ from, to }) => from <= day && day <= to);
    const found = isClosed ? undefined : openingOn(spans, day, i === 0 ? clockOf(time) : "00:00");
    if (found !== undefined) return `${day}T${found}`;
    day = dayOf(later(`${day}T12:00`, 24));
  }
  return time;
}

/** The first time of day, from `clock` on, at which it is open. */
function openingOn(spans: Opening["spans"], day: string, clock: string): string | undefined {
  const weekday = new Date(`${day}T12:00`).getDay() || 7;
  return spans
    .filter((span) => span.weekday === weekday && clock < span.closes)
    .map(({ opens }) => (opens > clock ? opens : clock))
    .toSorted()[0];
}
