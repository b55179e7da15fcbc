/** The axis of time under which the rows of the timeline and the air of the room stand. */
import { firstIndex } from "../../../grammar/src/binary-search.ts";
import type { Bench } from "../../../server/src/views/bench/model.ts";
import { dateAt, dayText, type Look } from "./moments.ts";

/** Left of the axis, for what the rows are called, px. */
export const GUTTER = 108;
/** Nights that are drawn narrower are left out: in a stretch that is drawn short they would only be stripes. */
export const LEAST_SHUT = 4;
/** Right of it, px. */
const MARGIN = 8;

/** Against an hour of work. */
const MUCH_SHORTER = 0.6;

export interface TimeAxis {
  /** Of the whole drawing, px. */
  readonly width: number;
  /** Where an hour after the start stands, px. */
  readonly x: (hours: number) => number;
  readonly end: number;
  readonly days: readonly { readonly x: number; readonly name: string }[];
  /** The middles of the stretches that are drawn much shorter than the work beside them, px. */
  readonly breaks: readonly number[];
}

/** Hours in which nobody works for long are drawn short: the last drying of weeks would leave no room for the work. */
export function axisOf(bench: Bench<unknown>, look: Look): TimeAxis {
  const { l10n } = look;
  const width = Math.floor(Math.max(240, look.width - 24));
  const room = width - GUTTER - MARGIN;
  const own = bench.surfaces.flatMap(({ bars }) => bars.filter(({ kind }) => kind !== "wait"));
  const others = look.isWholeShop ? bench.others.flatMap(({ rows }) => rows.flatMap(({ bars }) => bars)) : [];
  const worked = [...own, ...others.filter(({ kind }) => kind === "work")];
  const ends = others.map(({ end }) => end);
  const stops = [
    ...new Set([
      0,
      ends.reduce((most, end) => Math.max(most, end), bench.endHours),
      ...worked.flatMap(({ start, end }) => [start, end]),
    ]),
  ].toSorted((a, b) => a - b);
  const firstHour = stops[0]!;
  const lastHour = stops.at(-1)!;
  const weights = stops.slice(1).map((stop, i) => {
    const length = stop - stops[i]!;
    return length <= 4 ? length : 4 + Math.log2(length / 4) * 1.5;
  });
  const sum = weights.reduce((all, each) => all + each, 0) || 1;
  const xs = [0];
  for (const weight of weights) xs.push(xs.at(-1)! + (weight / sum) * room);
  const breaks = weights.flatMap((weight, i) => {
    const length = stops[i + 1]! - stops[i]!;
    return weight < length * MUCH_SHORTER ? [GUTTER + (xs[i]! + xs[i + 1]!) / 2] : [];
  });
  const x = (hours: number): number => {
    const next = firstIndex(stops, (stop) => stop >= hours);
    if (next === stops.length) return GUTTER + room;
    if (next === 0) return GUTTER;
    const from = stops[next - 1]!;
    const part = (hours - from) / (stops[next]! - from || 1);
    return GUTTER + xs[next - 1]! + part * (xs[next]! - xs[next - 1]!);
  };
  const days: { x: number; name: string }[] = [];
  const { startAt } = bench;
  const begin = dateAt(startAt ?? "1970-01-01T00:00", firstHour);
  const first = startAt === undefined ? 0 : firstHour - begin.getUTCHours() - begin.getUTCMinutes() / 60;
  for (let day = 0; day < 400 && first + day * 24 < lastHour; day += 1) {
    const hour = Math.max(firstHour, first + day * 24);
    const at = x(hour);
    const name = startAt === undefined ? l10n.t("day {0}", day + 1) : dayText(dateAt(startAt, hour), l10n);
    const hasRoom = at < GUTTER + room - 56;
    if (days.length === 0 || (hasRoom && at - days.at(-1)!.x > 68)) days.push({ x: at, name });
  }
  return { width, x, end: GUTTER + room, days, breaks };
}
