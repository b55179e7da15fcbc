/**
 * The air that a room needs at its worst: of all stretches of 8 hours, of 15 minutes, and of all moments, those in which
 * most is given off by all jobs in it together, measured against the limit for such a stretch.
 *
 * No stretch for breathing begins while the shop is closed: nobody is there. One that begins at an opening has what the
 * coats of the evening before still give off. Fire does not ask who is there.
 */
import type { Solvent, StandIn } from "../knowledge/solvents.ts";
import type { Release } from "./job-fumes.ts";
import {
  airChangesPerH,
  airNeededM3PerH,
  airToLimitM3,
  LIMIT_KINDS,
  type LimitKind,
  SHIFT_H,
  SHORT_H,
} from "./room-air.ts";

/** A need for fresh air, with the stretch of hours that makes it. */
export interface AirNeed {
  readonly m3PerH: number;
  readonly airChangesPerH: number;
  /** Which limit asks for it; undefined where nothing does. */
  readonly limit?: LimitKind;
  readonly fromH: number;
  /** Length of the stretch, h. */
  readonly hours: number;
}

export interface RoomAir {
  /** The greatest need among the stretches that have any part of these hours in them. */
  needBetween(fromH: number, toH: number): AirNeed;
}

/** Which solvent stands for one that is not named. */
export type Stance = keyof Pick<StandIn, "cautious" | "usual">;

export interface RoomInput {
  readonly releases: readonly Release[];
  readonly roomM3: number;
  readonly stance: Stance;
  /** The first hour at or after this one in which the shop is open; Infinity if it never opens. */
  readonly opening: (hour: number) => number;
}

/** Hours of the stretch that a limit is an average of; a moment is a minute. */
const STRETCH_H: Readonly<Record<LimitKind, number>> = { shift: SHIFT_H, short: SHORT_H, fire: 1 / 60 };

export function roomAir({ releases, roomM3, stance, opening }: RoomInput): RoomAir {
  const kinds = LIMIT_KINDS.map((kind) => worstOf(kind, releases, stance, opening));
  return {
    needBetween: (fromH, toH) => {
      const needs = kinds.flatMap(({ kind, worst }): readonly AirNeed[] => {
        const hours = STRETCH_H[kind];
        const found = worst(fromH - hours, toH);
        if (!found || found.m3 <= 0) return [];
        const m3PerH = airNeededM3PerH(found.m3, hours, kind);
        return [
          { m3PerH, airChangesPerH: airChangesPerH(m3PerH, roomM3), limit: kind, fromH: found.from, hours },
        ];
      });
      const none: AirNeed = { m3PerH: 0, airChangesPerH: 0, fromH, hours: 0 };
      return needs.reduce((most, need) => (need.m3PerH > most.m3PerH * (1 + 1e-9) ? need : most), none);
    },
  };
}

/** The solvent of a release, by either stance. */
export const solventOf = ({ standIn }: Release, stance: Stance): Solvent | undefined => standIn?.[stance];

interface Stretch {
  readonly from: number;
  readonly m3: number;
}

interface WorstOf {
  readonly kind: LimitKind;
  /** The stretch with the most m3 that begins after one hour and before another. */
  worst(after: number, before: number): Stretch | undefined;
}

/**
 * Stretches that begin with a release, or end with one, hold the most. What has left by an hour is a line that bends
 * where releases begin and end, so every stretch costs two look-ups, and thousands of pieces cost little more than their
 * number.
 */
function worstOf(
  kind: LimitKind,
  releases: readonly Release[],
  stance: Stance,
  opening: (hour: number) => number,
): WorstOf {
  const hours = STRETCH_H[kind];
  const weighed = releases.flatMap((release) => {
    const solvent = solventOf(release, stance);
    const m3 = solvent ? airToLimitM3(solvent, release.grams, kind) : 0;
    return m3 > 0 ? [{ from: release.from, to: release.to, m3 }] : [];
  });
  const left = leftBy(weighed);
  const starts = weighed.flatMap(({ from, to }) => {
    const ending = kind === "fire" ? to - hours : opening(to - hours);
    return [from, ...(Number.isFinite(ending) && ending < to ? [Math.max(ending, to - hours)] : [])];
  });
  const stretches = [...new Set(starts)]
    .sort((a, b) => a - b)
    .map((from): Stretch => ({ from, m3: left(from + hours) - left(from) }));
  const most = greatest(stretches);
  return {
    kind,
    worst: (after, before) =>
      most(
        firstIndex(stretches, ({ from }) => from > after + 1e-9),
        firstIndex(stretches, ({ from }) => from >= before - 1e-9),
      ),
  };
}

/** How many m3 have been asked for by an hour. */
function leftBy(
  releases: readonly { readonly from: number; readonly to: number; readonly m3: number }[],
): (hour: number) => number {
  const changes = releases
    .flatMap(({ from, to, m3 }) => {
      const perH = m3 / (to - from);
      return [
        { at: from, perH },
        { at: to, perH: -perH },
      ];
    })
    .sort((a, b) => a.at - b.at);
  const bends: { at: number; left: number; perH: number }[] = [];
  for (const { at, perH } of changes) {
    const last = bends.at(-1);
    bends.push({
      at,
      left: last ? last.left + last.perH * (at - last.at) : 0,
      perH: (last?.perH ?? 0) + perH,
    });
  }
  return (hour) => {
    const index = firstIndex(bends, ({ at }) => at > hour) - 1;
    const bend = bends[index];
    return bend ? bend.left + bend.perH * (hour - bend.at) : 0;
  };
}

/** Index of the first that fulfils what all after it fulfil as well; their number if none does. */
function firstIndex<T>(sorted: readonly T[], test: (item: T) => boolean): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (test(sorted[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Answers which stretch of a range, end excluded, is the greatest, from tables of ranges of doubling length. */
function greatest(stretches: readonly Stretch[]): (from: number, end: number) => Stretch | undefined {
  const greater = (a: Stretch, b: Stretch): Stretch => (b.m3 > a.m3 * (1 + 1e-9) ? b : a);
  const tables: (readonly Stretch[])[] = [stretches];
  for (let length = 1; length * 2 <= stretches.length; length *= 2) {
    const half = tables.at(-1)!;
    tables.push(
      Array.from({ length: stretches.length - 2 * length + 1 }, (_, at) =>
        greater(half[at]!, half[at + length]!),
      ),
    );
  }
  return (from, end) => {
    if (end <= from) return undefined;
    const level = Math.floor(Math.log2(end - from));
    const table = tables[level]!;
    return greater(table[from]!, table[end - 2 ** level]!);
  };
}
