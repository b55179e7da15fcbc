/**
 * Drying where the air is worse while the shop is closed. Plain arithmetic on the opening hours of an ordinary week.
 */
import type { OpeningSpan } from "../model/model.ts";
import { hourMs, ordinaryWeek } from "./calendar.ts";

const weekMs = 168 * hourMs;

/** A pause as long as this is a night; a shorter one, such as for lunch, is part of the day. */
const LEAST_NIGHT_MS = 6 * hourMs;

/** One day of a week, in ms; `night` is how long the shop is closed after it. */
interface Day {
  readonly opens: number;
  readonly closes: number;
  readonly night: number;
}

/**
 * The longest that something takes to dry that is put on while the shop is open, where it takes `byDay` hours in the air
 * of the day alone and `byNight`, which is more, in that of the nights: in both it dries evenly. Hours. It is longest
 * begun at a closing. With `forWork` what is dry in the course of a night counts as dry in time, since nobody goes on
 * before the morning; then what dries in the shortest night alone takes `byDay`. Where no hours are stated, and where the
 * shop never opens, it is night throughout. A closed date counts like that day of any week.
 */
export function hoursThroughNights(
  byDay: number,
  byNight: number,
  hours: readonly OpeningSpan[] | undefined,
  forWork: boolean,
): number {
  const days = daysOf(hours);
  if (days.length === 0) return byNight;
  const perWeek = days.reduce((sum, day) => sum + dayPart(day, byDay) + day.night / byNight / hourMs, 0);
  const weeks = Math.floor(1 / perWeek);
  const left = Math.max(0, 1 - weeks * perWeek);
  const rests = days.map((_, index) => restFrom(days, index, left, { byDay, byNight, forWork }));
  return Math.max(byDay, (weeks * weekMs) / hourMs + Math.max(...rests));
}

const dayPart = ({ opens, closes }: Day, byDay: number): number => (closes - opens) / byDay / hourMs;

/** Hours of the last part of drying, of which `left` is missing at the closing of a day; less than 0 where no work waits for it. */
function restFrom(
  days: readonly Day[],
  begun: number,
  left: number,
  {
    byDay,
    byNight,
    forWork,
  }: { readonly byDay: number; readonly byNight: number; readonly forWork: boolean },
): number {
  let passed = 0;
  let missing = left;
  for (let index = begun; ; index = (index + 1) % days.length) {
    const night = days[index]!.night / hourMs;
    if (missing * byNight <= night) {
      if (!forWork) return passed + missing * byNight;
      // Begun so much earlier that it is dry at the closing before this night, if that is possible on that day.
      const isSoonEnough = missing <= dayPart(days[begun]!, byDay);
      return isSoonEnough ? passed + missing * byDay : 0;
    }
    passed += night;
    missing -= night / byNight;
    const day = days[(index + 1) % days.length]!;
    const open = (day.closes - day.opens) / hourMs;
    if (missing * byDay <= open) return passed + missing * byDay;
    passed += open;
    missing -= open / byDay;
  }
}

/** The days of an ordinary week, short pauses included; empty where the shop has no night, or never opens. */
function daysOf(hours: readonly OpeningSpan[] | undefined): readonly Day[] {
  const { week } = ordinaryWeek(hours);
  const from = week.findIndex(
    (_, index) => openingAfter(week, index) - week[index]!.closes >= LEAST_NIGHT_MS,
  );
  if (from < 0) return [];
  const days: { opens: number; closes: number }[] = [];
  for (let step = 1; step <= week.length; step++) {
    const index = (from + step) % week.length;
    const round = from + step >= week.length ? weekMs : 0;
    const { opens, closes } = week[index]!;
    const last = days.at(-1);
    if (last && opens + round - last.closes < LEAST_NIGHT_MS) last.closes = closes + round;
    else days.push({ opens: opens + round, closes: closes + round });
  }
  return days.map((day, index) => ({ ...day, night: openingAfter(days, index) - day.closes }));
}

/** When the span after this one of a week opens. */
const openingAfter = (week: readonly { readonly opens: number }[], index: number): number =>
  index + 1 < week.length ? week[index + 1]!.opens : week[0]!.opens + weekMs;
