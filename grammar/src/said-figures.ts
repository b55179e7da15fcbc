/**
 * Dates, times and money as people write them. Each function looks at the beginning of a text and says how much of it is
 * one, and what that is plainly; where it could be two things, it gives both.
 */
import { t } from "./translate.ts";

/** What was written, and its plain form. */
export interface Said {
  readonly written: string;
  readonly plain: string;
  /** 0 Sunday … 6 Saturday, where a weekday was written in front. */
  readonly weekday?: number;
  /** The unit behind `per`, as it was written. */
  readonly per?: string;
  /** What else it could be; then `plain` is only the first. */
  readonly other?: string;
}

const WEEKDAY = "(?:sun|mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?)(?:day)?";
const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const DAYS = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];
const MONTH = "(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]{0,6}\\.?";
const IN_FRONT = `^(?:(${WEEKDAY})[.,]? ?)?(?:the )?`;

const ISO = new RegExp(`${IN_FRONT}(\\d{4})-(\\d{2})-(\\d{2})(?!\\d)`, "iu");
const POINTS = new RegExp(`${IN_FRONT}(\\d{1,2})\\. ?(\\d{1,2})\\. ?(\\d{4})(?!\\d)`, "iu");
const DAY_FIRST = new RegExp(
  `${IN_FRONT}(\\d{1,2})(?:st|nd|rd|th|\\.)? (?:of )?${MONTH} (\\d{4})(?!\\d)`,
  "iu",
);
const MONTH_FIRST = new RegExp(`${IN_FRONT}${MONTH} (\\d{1,2})(?:st|nd|rd|th)?,? (\\d{4})(?!\\d)`, "iu");
const STROKES = new RegExp(`${IN_FRONT}(\\d{1,2})/(\\d{1,2})/(\\d{4})(?!\\d)`, "iu");

/** A date with its year; `3/4/2027` could be two days. */
export function saidDate(text: string): Said | undefined {
  const iso = ISO.exec(text);
  if (iso) {
    return dated(iso, `${iso[2]}-${iso[3]}-${iso[4]}`);
  }
  const points = POINTS.exec(text);
  if (points) {
    return dated(points, isoOf(points[4]!, points[3]!, points[2]!));
  }
  const dayFirst = DAY_FIRST.exec(text);
  if (dayFirst) {
    return dated(dayFirst, isoOf(dayFirst[4]!, monthOf(dayFirst[3]!), dayFirst[2]!));
  }
  const monthFirst = MONTH_FIRST.exec(text);
  if (monthFirst) {
    return dated(monthFirst, isoOf(monthFirst[4]!, monthOf(monthFirst[2]!), monthFirst[3]!));
  }
  const strokes = STROKES.exec(text);
  return strokes ? strokedDate(strokes) : undefined;
}

function strokedDate(found: RegExpExecArray): Said {
  const [first, second, year] = [found[2]!, found[3]!, found[4]!];
  const [dayFirst, monthFirst] = [isoOf(year, second, first), isoOf(year, first, second)];
  if (Number(first) > 12 || first === second) {
    return dated(found, dayFirst);
  }
  return Number(second) > 12 ? dated(found, monthFirst) : { ...dated(found, dayFirst), other: monthFirst };
}

function dated(found: RegExpExecArray, plain: string): Said {
  const weekday = found[1]?.slice(0, 3).toLowerCase();
  return { written: found[0], plain, ...(weekday && { weekday: DAYS.indexOf(weekday) }) };
}

const isoOf = (year: string, month: string, day: string): string =>
  `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;

const monthOf = (name: string): string => String(MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1);

/** The weekday of a date, 0 Sunday … 6 Saturday. */
export const weekdayOf = (iso: string): number => new Date(`${iso}T00:00:00Z`).getUTCDay();

/** `Thursday` */
export const weekdayName = (weekday: number): string =>
  [t`Sunday`, t`Monday`, t`Tuesday`, t`Wednesday`, t`Thursday`, t`Friday`, t`Saturday`][weekday] ?? "";

const VAGUE = new RegExp(
  `^(?:${WEEKDAY}|next|this|last|today|tomorrow|end of|beginning of|middle of|mid|kw|week|\\d{1,2}/\\d{1,2}|\\d{1,2}\\. ?\\d{1,2}\\.|(?:\\d{1,2}\\.? )?${MONTH})`,
  "iu",
);

/** Whether a text begins as a date does that only its writer could place: `Friday`, `KW 46`, `11/27`. */
export const isVagueDate = (text: string): boolean => VAGUE.test(text);

/** `before June`, `Fri 21st`, `week 38 Thu`; no date in figures, which could be one of two days or a slip. */
export const isDateInWords = (text: string): boolean =>
  !IN_FIGURES.test(text) && (VAGUE.test(text) || DATE_WORDS.test(text));

const IN_FIGURES = /\d{4}|\d[./]\d/u;
const DATE_WORDS =
  /^(?:before|by|until|after|around|about|early|late|soon|as soon|asap|when|whenever|no |not |none|open|spring|summer|autumn|fall|winter|christmas|easter|the \p{L}|\d{1,2}(?:st|nd|rd|th)\b|in (?:the |early |late |mid )?\p{L}|in \d+ (?:days|weeks)|first|second|third|sometime|some time|any)/iu;

const CLOCK = "(\\d{1,2})(?:[:.](\\d{2}))? ?(am|pm|a\\.m\\.|p\\.m\\.|h|uhr|o'clock)?(?![\\p{L}\\d])";
const TIME = new RegExp(`^(?:at )?${CLOCK}`, "iu");
const TIME_SPAN = new RegExp(`^(?:from )?${CLOCK} ?(?:to|-|–|—|until|till) ?${CLOCK}`, "iu");

/** A time of day: `8am`, `7.30`, `17 h`. */
export function saidTime(text: string): Said | undefined {
  const found = TIME.exec(text);
  const plain = found === null ? undefined : clock(found[1]!, found[2], found[3]);
  return found && plain ? { written: found[0], plain } : undefined;
}

/** `8-17`, `8am to 5 pm`; of `8-5` the end could be in the afternoon. */
export function saidHours(
  text: string,
):
  | { readonly written: string; readonly opens: string; readonly closes: string; readonly isUnsure: boolean }
  | undefined {
  const found = TIME_SPAN.exec(text);
  if (!found) {
    return undefined;
  }
  const [half, otherHalf] = [found[3], found[6]];
  const opens = clock(found[1]!, found[2], half);
  const closes = clock(found[4]!, found[5], otherHalf);
  if (opens === undefined || closes === undefined) {
    return undefined;
  }
  const isUnsure = closes <= opens && Number(found[4]) <= 12 && !isHalf(otherHalf);
  const later = isUnsure ? clock(found[4]!, found[5], "pm") : closes;
  return { written: found[0], opens, closes: later ?? closes, isUnsure };
}

const isHalf = (half: string | undefined): boolean => half !== undefined && /^[ap]/iu.test(half);

function clock(hour: string, minute: string | undefined, half: string | undefined): string | undefined {
  const isAfternoon = half !== undefined && /^p/iu.test(half);
  const isMorning = half !== undefined && /^a/iu.test(half);
  const hours = Number(hour);
  if ((isAfternoon || isMorning) && (hours < 1 || hours > 12)) {
    return undefined;
  }
  const of24 = isAfternoon ? (hours % 12) + 12 : isMorning ? hours % 12 : hours;
  return of24 > 24 ? undefined : `${String(of24).padStart(2, "0")}:${minute ?? "00"}`;
}

const CURRENCY = "(?:[$£€¥]|[A-Z]{3}(?![A-Za-z])|euros?|dollars?|pounds?)";
const AMOUNT =
  "(\\d{1,3}(?:[.,' ]\\d{3})+(?:[.,]\\d{2})?(?!\\d)|\\d+[.,]\\d{2}(?!\\d)|\\d+,-|\\d+(?:\\.\\d+)?)";
const MONEY = new RegExp(
  `^(${CURRENCY} ?)?${AMOUNT}( ?${CURRENCY})?(?: ?(?:/|per) ?(\\p{L}[\\p{L}\\d²³]*))?`,
  "u",
);
/** A size of a container that begins where the cents would stand: `28,50 mL for 3.00`. */
const NEXT_SIZE = /^ ?\p{L}[^,]*? for /u;

/** Money, with a sign or not: `$11.50`, `89,90`, `45,-`, `32 EUR/kg`. `1.480` could be two amounts. */
export function saidMoney(text: string): Said | undefined {
  const found = MONEY.exec(text);
  if (!found) {
    return undefined;
  }
  const amount = found[2]!;
  const hasComma = amount.includes(",");
  if (hasComma && NEXT_SIZE.test(text.slice(found[0].length))) {
    return undefined;
  }
  const read = amountOf(amount);
  return { written: found[0], ...read, ...(found[4] && { per: found[4] }) };
}

function amountOf(amount: string): Pick<Said, "plain" | "other"> {
  if (amount.endsWith(",-")) {
    return { plain: amount.slice(0, -2) };
  }
  const grouped = /^\d{1,3}(?:[.,' ]\d{3})+/u.exec(amount)?.[0];
  if (grouped === undefined) {
    return { plain: amount.replace(",", ".") };
  }
  const whole = grouped.replace(/[.,' ]/gu, "");
  const rest = amount.slice(grouped.length).replace(",", ".");
  const isOneGroup = /^\d{1,3}[.,]\d{3}$/u.test(amount);
  // Money has no third decimal, but a slip of the hand may have made one.
  return isOneGroup
    ? { plain: whole, other: amount.replace(",", ".").slice(0, -1) }
    : { plain: whole + rest };
}
