/**
 * A plan as an iCalendar file (RFC 5545), to be read into anybody's calendar.
 *
 * Times are floating local times, because the notation has no time zone. Lines end in CRLF, are folded at 75 octets
 * between characters, and text is escaped as section 3.3.11 asks. The calendar's name is the property of RFC 7986,
 * section 5.1. The caller supplies the time stamp: nothing here reads a clock. Items without both times are left out.
 * Times are whole minutes. A moment from which on something holds is an event without an end and takes up no time
 * (`TRANSP`, section 3.8.2.7).
 */
import { icsLine, icsText } from "../escape/ics.ts";

export interface IcsItem {
  /** Unique and the same whenever the same item is written again. */
  readonly uid: string;
  readonly title: string;
  /** Local ISO date-times without offset. */
  readonly startAt?: string;
  readonly endAt?: string;
  /** A moment and no work: it has no end, and whoever looks for free time finds it. */
  readonly isMoment?: true;
  readonly description?: string;
  readonly alarms?: readonly IcsAlarm[];
}

/** A reminder (VALARM, section 3.6.6). */
export interface IcsAlarm {
  readonly text: string;
  /** Minutes after the item begins; before it where negative. */
  readonly afterMin: number;
}

export interface IcsPlan {
  readonly name: string;
  /** Of the calendar as a whole, RFC 7986, section 5.2. */
  readonly description?: string;
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
    `NAME:${icsText(plan.name)}`,
    ...(plan.description ? [`DESCRIPTION:${icsText(plan.description)}`] : []),
    ...plan.items.flatMap((item) => eventLines(item, plan.stamp)),
    "END:VCALENDAR",
  ];
  return lines.map(icsLine).join("");
}

function eventLines(item: IcsItem, stamp: string): readonly string[] {
  const { startAt, endAt, isMoment } = item;
  if (startAt === undefined || (endAt === undefined && !isMoment)) return [];
  return [
    "BEGIN:VEVENT",
    `UID:${icsText(item.uid)}`,
    `DTSTAMP:${basicDateTime(stamp)}Z`,
    `DTSTART:${wholeMinute(startAt)}`,
    ...(isMoment ? ["TRANSP:TRANSPARENT"] : [`DTEND:${wholeMinute(endAt!)}`]),
    `SUMMARY:${icsText(item.title)}`,
    ...(item.description ? [`DESCRIPTION:${icsText(item.description)}`] : []),
    ...(item.alarms ?? []).flatMap(alarmLines),
    "END:VEVENT",
  ];
}

function alarmLines({ text, afterMin }: IcsAlarm): readonly string[] {
  return [
    "BEGIN:VALARM",
    "ACTION:DISPLAY",
    `DESCRIPTION:${icsText(text)}`,
    `TRIGGER:${durationText(Math.round(afterMin))}`,
    "END:VALARM",
  ];
}

/** A duration as section 3.3.6 writes it: `PT0M`, `-PT1H30M`, `P1DT2H`. */
function durationText(minutes: number): string {
  const all = Math.abs(minutes);
  const days = Math.floor(all / 1440);
  const hours = Math.floor((all % 1440) / 60);
  const time = [hours > 0 ? `${hours}H` : "", all % 60 > 0 ? `${all % 60}M` : ""].join("");
  const whole = `${days > 0 ? `${days}D` : ""}${time === "" ? "" : `T${time}`}`;
  return `${minutes < 0 ? "-" : ""}P${whole === "" ? "T0M" : whole}`;
}

/** The minute that a local date-time is nearest to, as section 3.3.5 writes it. */
function wholeMinute(text: string): string {
  const ms = Date.parse(`${text}Z`);
  if (!Number.isFinite(ms)) return basicDateTime(text);
  return basicDateTime(new Date(Math.round(ms / 60_000) * 60_000).toISOString());
}

/** `2027-03-08T09:00` as `20270308T090000`; seconds are filled in, fractions left out. */
function basicDateTime(text: string): string {
  const [date = "", time = ""] = text.replace(/Z$/, "").split(/[T ]/);
  const digits = time.split(".")[0]!.replaceAll(":", "").padEnd(6, "0");
  return `${date.replaceAll("-", "")}T${digits}`;
}
