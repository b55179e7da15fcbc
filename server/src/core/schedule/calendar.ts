/**
 * A shop's opening hours as arithmetic: when is it open, and how much working time lies between two moments.
 *
 * Time is in whole milliseconds after the local midnight with which the calendar begins; there is no time zone, so
 * daylight saving does not matter. Days up to the last closed day are written out; from there the week repeats, so any
 * moment is found in logarithmic time. The working time before a moment turns opening hours into one unbroken axis on
 * which a task that pauses at closing is an interval. Nothing here knows of tasks or crew.
 */

import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import { dayIn, hourOf } from "../measure/iso-dates.ts";
import type { OpeningSpan } from "../model/model.ts";
import { NIGHT_H } from "./night.ts";

export const minuteMs = 60_000;
export const hourMs = 3_600_000;
export const dayMs = 86_400_000;
const weekMs = 7 * dayMs;

/** An unbroken stretch of opening hours. */
interface Span {
  readonly opens: number;
  readonly closes: number;
  /** Working time before it opens. */
  readonly before: number;
}

export interface ShopTime {
  /** Days since 1970-01-01 of the midnight that is 0 here. */
  readonly firstDay: number;
  /** Written out, in order; the last one never closes in a shop that is open day and night. */
  readonly spans: readonly Span[];
  /** What repeats every seven days after `spans`; empty when the shop is open day and night, or never. */
  readonly week: readonly Span[];
  readonly workPerWeek: number;
  /** The longest stretch of an ordinary week, Infinity when open day and night, 0 when it never opens. */
  readonly longest: number;
  /** End of the last closed day: from here on every week is the same. */
  readonly settledFrom: number;
}

/** Days since 1970-01-01, or undefined when the text is not an ISO date. */
export function dayNumber(date: string): number | undefined {
  try {
    return dayIn(date);
  } catch {
    return undefined;
  }
}

/** The opening hours from the midnight of `firstDay` on. Closed ranges that are no dates are left out. */
export function makeShopTime(
  calendar: {
    readonly hours?: readonly OpeningSpan[];
    readonly closed: readonly { readonly from: string; readonly to: string }[];
  },
  firstDay: number,
): ShopTime {
  const pattern = dayPatterns(calendar.hours);
  const closed = closedDays(calendar.closed, firstDay);
  const lastClosed = closed.at(-1);
  const firstOrdinaryDay = lastClosed === undefined ? firstDay : lastClosed.to + 1;
  const pieces: { opens: number; closes: number }[] = [];
  let range = 0;
  for (let day = firstDay; day < firstOrdinaryDay; day++) {
    const shut = closed[range];
    if (shut !== undefined && day >= shut.from) {
      day = shut.to;
      range++;
      continue;
    }
    addDay(pieces, pattern, day, firstDay);
  }
  const settledFrom = (firstOrdinaryDay - firstDay) * dayMs;
  return repeatWeek(pieces, pattern, firstDay, firstOrdinaryDay, settledFrom);
}

/** The first moment at or after `time` at which the shop is open; Infinity when it never opens. */
export function nextOpening(shop: ShopTime, time: number): number {
  const span = spanAt(shop, firstClosingAfter(shop, time));
  return span === undefined ? Number.POSITIVE_INFINITY : Math.max(time, span.opens);
}

/** Working time from the calendar's beginning to `time`. */
export function workingTimeBefore(shop: ShopTime, time: number): number {
  const span = spanAt(shop, firstClosingAfter(shop, time));
  return span === undefined ? 0 : span.before + Math.max(0, time - span.opens);
}

export function workingTimeBetween(shop: ShopTime, from: number, to: number): number {
  return workingTimeBefore(shop, to) - workingTimeBefore(shop, from);
}

/** The moment at which work begins that has `work` before it: at a closing, the next opening. */
export function startAfterWork(shop: ShopTime, work: number): number {
  const span = spanAt(shop, spanOfWork(shop, work, false));
  return span === undefined ? Number.POSITIVE_INFINITY : span.opens + (work - span.before);
}

/** The moment at which work has ended that brings the total to `work`: at a closing, that closing. */
export function endAfterWork(shop: ShopTime, work: number): number {
  const span = spanAt(shop, spanOfWork(shop, work, true));
  return span === undefined ? Number.POSITIVE_INFINITY : span.opens + (work - span.before);
}

/**
 * The end of a night after `time`: the first moment `rest` or more later at which the shop opens, or at which it has been
 * open since it opened on a later day, so that no night is skipped where the shop is closed for less than the rest.
 * While the shop is open day and night there is no opening to wait for, and the rest alone counts.
 */
export function nightEnd(shop: ShopTime, time: number, rest: number): number {
  const earliest = time + rest;
  const index = firstClosingAfter(shop, earliest);
  const span = spanAt(shop, index);
  if (span === undefined) return Number.POSITIVE_INFINITY;
  if (span.opens >= earliest || isDayAndNight(span) || span.opens >= nextMidnight(time))
    return Math.max(span.opens, earliest);
  return spanAt(shop, index + 1)?.opens ?? Number.POSITIVE_INFINITY;
}

/** The latest moment whose night has ended by `end`; undefined where none has. */
export function latestBeforeNightEnd(shop: ShopTime, end: number, rest: number): number | undefined {
  const opening = lastOpening(shop, end);
  if (opening === undefined) return undefined;
  const closes = closingAfter(shop, opening);
  // Open since an earlier day than that of its end; at the closing itself it is not open any more.
  const stillOpen = Math.min(end, closes - 1) - rest;
  return Math.max(opening - rest, Math.min(stillOpen, nextMidnight(opening) - dayMs - 1));
}

const nextMidnight = (time: number): number => (Math.floor(time / dayMs) + 1) * dayMs;

/** The last moment at or before `time` at which the shop opens, or is open day and night; undefined before the first. */
export function lastOpening(shop: ShopTime, time: number): number | undefined {
  const index = firstClosingAfter(shop, time);
  const span = spanAt(shop, index);
  if (span !== undefined && span.opens <= time) return isDayAndNight(span) ? time : span.opens;
  const before = index > 0 ? spanAt(shop, index - 1) : undefined;
  if (before === undefined) return undefined;
  return isDayAndNight(before) ? before.closes - 1 : before.opens;
}

/** Open for a day or longer: such a shop has no evening and no morning. */
const isDayAndNight = (span: Span): boolean => span.closes - span.opens >= dayMs;

/** Whether work of this length lies within one opening span of an ordinary week. */
export function fitsSomeSpan(shop: ShopTime, work: number): boolean {
  return work <= shop.longest;
}

/** `time` when the shop is open or just closing, else the next opening: where a task without length can stand. */
export function touchOpening(shop: ShopTime, time: number): number {
  const previous = spanAt(shop, firstClosingAfter(shop, time) - 1);
  return previous?.closes === time ? time : nextOpening(shop, time);
}

/** The span in which the working time `work` begins: where it opens and closes, as working time. */
export function spanAroundWork(
  shop: ShopTime,
  work: number,
): { readonly from: number; readonly to: number } | undefined {
  const span = spanAt(shop, spanOfWork(shop, work, false));
  return span === undefined ? undefined : { from: span.before, to: span.before + (span.closes - span.opens) };
}

/** The first closing after `time`. */
export function closingAfter(shop: ShopTime, time: number): number {
  return spanAt(shop, firstClosingAfter(shop, time))?.closes ?? Number.POSITIVE_INFINITY;
}

/** The last closing at or before `time`, undefined before the first. */
export function lastClosing(shop: ShopTime, time: number): number | undefined {
  return spanAt(shop, firstClosingAfter(shop, time) - 1)?.closes;
}

/** The lengths of the shop's openings, without those that never end. */
export function spanLengths(shop: ShopTime): readonly number[] {
  const lengths = [...shop.spans, ...shop.week].map(({ opens, closes }) => closes - opens);
  return [...new Set(lengths)].filter(Number.isFinite);
}

/** The opening hours between `from` and `to`, cut off there; undefined when there are more than `most` of them. */
export function openingsBetween(
  shop: ShopTime,
  from: number,
  to: number,
  most: number,
): readonly { readonly opens: number; readonly closes: number }[] | undefined {
  const openings: { opens: number; closes: number }[] = [];
  for (let index = firstClosingAfter(shop, from); ; index++) {
    const span = spanAt(shop, index);
    if (span === undefined || span.opens >= to) return openings;
    if (openings.length === most) return undefined;
    openings.push({ opens: Math.max(from, span.opens), closes: Math.min(to, span.closes) });
  }
}

/** The closed stretches between `from` and `to`. */
export function pausesBetween(
  shop: ShopTime,
  from: number,
  to: number,
): readonly { readonly start: number; readonly end: number }[] {
  const pauses: { start: number; end: number }[] = [];
  for (let index = firstClosingAfter(shop, from); ; index++) {
    const span = spanAt(shop, index);
    const next = spanAt(shop, index + 1);
    if (span === undefined || next === undefined || span.closes >= to) return pauses;
    pauses.push({ start: span.closes, end: next.opens });
  }
}

/**
 * The least hours of `wait overnight` begun `waited` hours after a task that may end at any time within opening hours;
 * without `waited`, begun at any time at all. No closed day makes it shorter. 12 when the shop is open day and night
 * (no hours stated), Infinity when it never opens.
 */
export function minimumOvernightHours(hours: readonly OpeningSpan[] | undefined, waited?: number): number {
  const shop = ordinaryWeek(hours);
  if (shop.week.length === 0) return nightEnd(shop, 0, NIGHT_H * hourMs) / hourMs;
  if (waited === undefined || !Number.isFinite(waited)) return NIGHT_H;
  return leastAfter(shop, waited, NIGHT_H * hourMs, (time) => nightEnd(shop, time, NIGHT_H * hourMs));
}

/**
 * The least hours for which the shop is still closed `waited` hours after a task that may end at any time within opening
 * hours, so that nobody can go on: 7 after `wait 9 h` in a shop open from 9 to 17. 0 where no hours are stated, and where
 * it never opens.
 */
export function minimumClosedHours(hours: readonly OpeningSpan[] | undefined, waited: number): number {
  const shop = ordinaryWeek(hours);
  if (shop.week.length === 0 || !Number.isFinite(waited)) return 0;
  return leastAfter(shop, waited, 0, (time) => nextOpening(shop, time));
}

/**
 * For how many hours a shop has been closed at a local date-time; 0 while it is open and at a closing, and where it has not
 * been open in the eight weeks before.
 */
export function hoursSinceOpen(calendar: Parameters<typeof makeShopTime>[0], at: string): number {
  const day = Math.floor(hourOf(at) / 24) - 56;
  const time = Math.round((hourOf(at) - day * 24) * hourMs);
  const shop = makeShopTime(calendar, day);
  const work = workingTimeBefore(shop, time);
  return work === 0 ? 0 : (time - endAfterWork(shop, work)) / hourMs;
}

/** For how many hours a shop is closed from a local date-time on; 0 while it is open, Infinity when it never opens again. */
export function closedHoursAt(calendar: Parameters<typeof makeShopTime>[0], at: string): number {
  const day = Math.floor(hourOf(at) / 24);
  const time = Math.round((hourOf(at) - day * 24) * hourMs);
  return (nextOpening(makeShopTime(calendar, day), time) - time) / hourMs;
}

/** The opening hours of a week without closed days; without hours, open day and night. */
export const ordinaryWeek = (hours: readonly OpeningSpan[] | undefined): ShopTime =>
  makeShopTime({ hours, closed: [] }, 4); // 1970-01-05, a Monday

/** The least hours to what `next` gives, a task having ended `waited` hours before at any time within opening hours. */
function leastAfter(
  { week }: ShopTime,
  waited: number,
  restMs: number,
  next: (time: number) => number,
): number {
  const passed = Math.round((waited % 168) * hourMs); // every week is the same
  // It shortens as the task ends later, but for a jump where the rest would end just past an opening.
  let least = Number.POSITIVE_INFINITY;
  for (const span of week) {
    const jumps = week.map((other) => other.opens - restMs - passed);
    for (const end of [span.opens, span.closes, ...jumps]) {
      const shifted = end + Math.ceil((span.opens - end) / weekMs) * weekMs;
      if (shifted > span.closes) continue;
      const begun = shifted + passed;
      least = Math.min(least, next(begun) - begun);
    }
  }
  return least / hourMs;
}

/** The span of that index, repeating the week without end. */
function spanAt(shop: ShopTime, index: number): Span | undefined {
  const written = shop.spans.length;
  if (index < written || shop.week.length === 0) return shop.spans[index];
  const round = Math.floor((index - written) / shop.week.length);
  const span = shop.week[(index - written) % shop.week.length]!;
  return {
    opens: span.opens + round * weekMs,
    closes: span.closes + round * weekMs,
    before: span.before + round * shop.workPerWeek,
  };
}

/** Index of the first span that closes after `time`. */
function firstClosingAfter(shop: ShopTime, time: number): number {
  const written = firstIndex(shop.spans, (span) => span.closes > time);
  if (written < shop.spans.length || shop.week.length === 0) return written;
  const round = Math.max(0, Math.floor((time - shop.week[0]!.opens) / weekMs));
  const index = firstIndex(shop.week, (span) => span.closes + round * weekMs > time);
  return written + round * shop.week.length + index;
}

/** Index of the span where the working time `work` stands; at a closing the later span, or the earlier one. */
function spanOfWork(shop: ShopTime, work: number, earlier: boolean): number {
  const isIn = (span: Span, done: number) => {
    const until = span.before + (span.closes - span.opens);
    return earlier ? until >= done : until > done;
  };
  const written = firstIndex(shop.spans, (span) => isIn(span, work));
  if (written < shop.spans.length || shop.week.length === 0) return written;
  const after = work - shop.week[0]!.before;
  let round = Math.max(0, Math.floor(after / shop.workPerWeek));
  if (earlier && round > 0 && after === round * shop.workPerWeek) round--;
  const index = firstIndex(shop.week, (span) => isIn(span, work - round * shop.workPerWeek));
  return written + round * shop.week.length + index;
}

/** For each weekday 1…7 the minutes it is open, with what runs on from the day before; merged and in order. */
function dayPatterns(hours: readonly OpeningSpan[] | undefined): readonly (readonly [number, number][])[] {
  const days: [number, number][][] = Array.from({ length: 8 }, () => []);
  for (let weekday = 1; weekday <= 7; weekday++) {
    if (hours === undefined) days[weekday]!.push([0, 1440]);
  }
  for (const { weekday, opens, closes } of hours ?? []) {
    if (!(weekday >= 1 && weekday <= 7) || !(opens >= 0) || !(closes >= 0)) continue;
    const until = closes < opens ? closes + 1440 : closes; // past midnight
    if (Math.min(until, 1440) > opens) days[weekday]!.push([opens, Math.min(until, 1440)]);
    if (until > 1440) days[(weekday % 7) + 1]!.push([0, Math.min(until - 1440, 1440)]);
  }
  return days.map((day) => {
    const merged: [number, number][] = [];
    for (const [opens, closes] of day.sort((a, b) => a[0] - b[0])) {
      const last = merged.at(-1);
      if (last !== undefined && opens <= last[1]) last[1] = Math.max(last[1], closes);
      else merged.push([opens, closes]);
    }
    return merged;
  });
}

/** Closed ranges as day numbers from `firstDay` on, merged and in order. */
function closedDays(
  closed: readonly { readonly from: string; readonly to: string }[],
  firstDay: number,
): readonly { from: number; to: number }[] {
  const ranges: { from: number; to: number }[] = [];
  for (const range of closed) {
    const from = dayNumber(range.from);
    const to = dayNumber(range.to);
    if (from === undefined || to === undefined || to < from || to < firstDay) continue;
    ranges.push({ from: Math.max(from, firstDay), to });
  }
  const merged: { from: number; to: number }[] = [];
  for (const range of ranges.sort((a, b) => a.from - b.from)) {
    const last = merged.at(-1);
    if (last !== undefined && range.from <= last.to + 1) last.to = Math.max(last.to, range.to);
    else merged.push({ ...range });
  }
  return merged;
}

/** Adds one day's opening to the pieces, joined to the last one where they meet at midnight. */
function addDay(
  pieces: { opens: number; closes: number }[],
  pattern: readonly (readonly [number, number][])[],
  day: number,
  firstDay: number,
): void {
  const weekday = ((((day + 3) % 7) + 7) % 7) + 1; // 1970-01-01 was a Thursday
  const midnight = (day - firstDay) * dayMs;
  for (const [opens, closes] of pattern[weekday]!) {
    const last = pieces.at(-1);
    const from = midnight + opens * minuteMs;
    const to = midnight + closes * minuteMs;
    if (last?.closes === from) last.closes = to;
    else pieces.push({ opens: from, closes: to });
  }
}

/** Ends the written-out pieces with the ordinary week that repeats. */
function repeatWeek(
  pieces: { opens: number; closes: number }[],
  pattern: readonly (readonly [number, number][])[],
  firstDay: number,
  firstOrdinaryDay: number,
  settledFrom: number,
): ShopTime {
  const opened = pattern.reduce((sum, day) => sum + day.reduce((work, [a, b]) => work + (b - a), 0), 0);
  const shared = { firstDay, settledFrom };
  if (opened === 0) {
    return { ...shared, spans: totalled(pieces), week: [], workPerWeek: 0, longest: 0 };
  }
  if (opened === 7 * 1440) {
    const last = pieces.at(-1);
    if (last?.closes === settledFrom) last.closes = Number.POSITIVE_INFINITY;
    else pieces.push({ opens: settledFrom, closes: Number.POSITIVE_INFINITY });
    return {
      ...shared,
      spans: totalled(pieces),
      week: [],
      workPerWeek: weekMs,
      longest: Number.POSITIVE_INFINITY,
    };
  }
  // Three weeks more, so that the repeating week can be cut out at an opening and never within a span.
  for (let day = firstOrdinaryDay; day < firstOrdinaryDay + 22; day++) addDay(pieces, pattern, day, firstDay);
  const cut = pieces.findIndex((piece) => piece.opens > settledFrom);
  const spans = totalled(pieces);
  const from = spans[cut]!;
  const week = spans.slice(cut).filter((span) => span.opens < from.opens + weekMs);
  const longest = week.reduce((most, span) => Math.max(most, span.closes - span.opens), 0);
  return { ...shared, spans: spans.slice(0, cut), week, workPerWeek: opened * minuteMs, longest };
}

function totalled(pieces: readonly { opens: number; closes: number }[]): Span[] {
  let before = 0;
  return pieces.map(({ opens, closes }) => {
    const span = { opens, closes, before };
    before += closes - opens;
    return span;
  });
}
