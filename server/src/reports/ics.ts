/**
 * A plan as an iCalendar file (RFC 5545), to be read into anybody's calendar.
 *
 * Times are floating local times, because the notation has no time zone. Lines end in CRLF, are folded at 75 octets
 * between characters, and text is escaped as section 3.3.11 asks. The caller supplies the time stamp: nothing here
 * reads a clock. Items without both times are left out.
 */
import { icsLine, icsText } from "../escape/ics.ts";

export interface IcsItem {
  /** Unique and the same whenever the same item is written again. */
  readonly uid: string;
  readonly title: string;
  /** Local ISO date-times without offset. */
  readonly startAt?: string;
  readonly endAt?: string;
  readonly description?: string;
  /** Nobody is at work in it: it takes up no time in a calendar (TRANSP, section 3.8.2.7). */
  readonly isFree?: boolean;
}

export interface IcsPlan {
  readonly name: string;
  readonly items: readonly IcsItem[];
  /** When the plan was made, an ISO date-time in UTC, with or without `Z`. */
  readonly stamp: string;
}

/** The text of the `.ics` file. */
export function planToIcs(plan: IcsPlan): string {
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Finishwright//Finishwright//EN",
    "CALSCALE:GREGORIAN",
    `X-WR-CALNAME:${icsText(plan.name)}`,
    ...plan.items.flatMap((item) => eventLines(item, plan.stamp)),
    "END:VCALENDAR",
  ];
  return lines.map(icsLine).join("");
}

function eventLines(item: IcsItem, stamp: string): readonly string[] {
  if (item.startAt === undefined || item.endAt === undefined) return [];
  return [
    "BEGIN:VEVENT",
    `UID:${icsText(item.uid)}`,
    `DTSTAMP:${basicDateTime(stamp)}Z`,
    `DTSTART:${basicDateTime(item.startAt)}`,
    `DTEND:${basicDateTime(item.endAt)}`,
    `SUMMARY:${icsText(item.title)}`,
    ...(item.description ? [`DESCRIPTION:${icsText(item.description)}`] : []),
    ...(item.isFree ? ["TRANSP:TRANSPARENT"] : []),
    "END:VEVENT",
  ];
}

/** `2027-03-08T09:00` as `20270308T090000`; seconds are filled in, fractions left out. */
function basicDateTime(text: string): string {
  const [date = "", time = ""] = text.replace(/Z$/, "").split(/[T ]/);
  const digits = time.split(".")[0]!.replaceAll(":", "").padEnd(6, "0");
  return `${date.replaceAll("-", "")}T${digits}`;
}
