/**
 * A plan as an iCalendar file (RFC 5545), to be read into anybody's calendar.
 *
 * Times are floating local times, because the notation has no time zone. Lines end in CRLF, are folded at 75 octets
 * between characters, and text is escaped as section 3.3.11 asks. The caller supplies the time stamp: nothing here
 * reads a clock. Items without both times are left out.
 */

export interface IcsItem {
  /** Unique and the same whenever the same item is written again. */
  readonly uid: string;
  readonly title: string;
  /** Local ISO date-times without offset. */
  readonly startAt?: string;
  readonly endAt?: string;
  readonly description?: string;
}

export interface IcsPlan {
  readonly name: string;
  readonly items: readonly IcsItem[];
  /** When the plan was made, an ISO date-time in UTC, with or without `Z`. */
  readonly stamp: string;
}

const octetsPerLine = 75;

/** The text of the `.ics` file. */
export function planToIcs(plan: IcsPlan): string {
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Finishwright//Finishwright//EN",
    "CALSCALE:GREGORIAN",
    `X-WR-CALNAME:${escapeText(plan.name)}`,
    ...plan.items.flatMap((item) => eventLines(item, plan.stamp)),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${foldLine(line)}\r\n`).join("");
}

function eventLines(item: IcsItem, stamp: string): readonly string[] {
  if (item.startAt === undefined || item.endAt === undefined) return [];
  return [
    "BEGIN:VEVENT",
    `UID:${escapeText(item.uid)}`,
    `DTSTAMP:${basicDateTime(stamp)}Z`,
    `DTSTART:${basicDateTime(item.startAt)}`,
    `DTEND:${basicDateTime(item.endAt)}`,
    `SUMMARY:${escapeText(item.title)}`,
    ...(item.description ? [`DESCRIPTION:${escapeText(item.description)}`] : []),
    "END:VEVENT",
  ];
}

/** `2027-03-08T09:00` as `20270308T090000`; seconds are filled in, fractions left out. */
function basicDateTime(text: string): string {
  const [date = "", time = ""] = text.replace(/Z$/, "").split(/[T ]/);
  const digits = time.replace(/\..*$/, "").replaceAll(":", "").padEnd(6, "0");
  return `${date.replaceAll("-", "")}T${digits}`;
}

function escapeText(text: string): string {
  return text
    .replace(/[\\;,]/g, "\\$&")
    .replace(/\r\n|\r|\n/g, "\\n")
    .replace(/\p{Cc}/gu, (control) => (control === "\t" ? control : ""));
}

/** Breaks a line so that none has more than 75 octets, the leading space of what goes on counted in. */
function foldLine(line: string): string {
  let folded = "";
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character.codePointAt(0)!);
    if (octets + size > octetsPerLine) {
      folded += "\r\n ";
      octets = 1;
    }
    folded += character;
    octets += size;
  }
  return folded;
}

function octetsOf(codePoint: number): number {
  if (codePoint < 0x80) return 1;
  if (codePoint < 0x800) return 2;
  return codePoint < 0x10000 ? 3 : 4;
}
