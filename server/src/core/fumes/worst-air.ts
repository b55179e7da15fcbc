/**
 * The air that a room needs at its worst: of all stretches of 8 hours, of 15 minutes, and of all moments, those in which
 * most is given off by all jobs in it together, measured against the limit for such a stretch.
 *
 * No stretch for breathing begins while the shop is closed: nobody is there. One that begins at an opening has what the
 * coats of the evening before still give off. Fire does not ask who is there.
 */
import { firstIndex } from "../../../../grammar/src/binary-search.ts";
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
  /** What the explosive limit asks for in these hours, if another limit asks for more. */
  readonly fireM3PerH: number;
}

export const NO_NEED: AirNeed = { m3PerH: 0, airChangesPerH: 0, fromH: 0, hours: 0, fireM3PerH: 0 };

/** The greater of two needs, the first of equal ones, with the greater need for fire of both. */
export const greaterNeed = (a: AirNeed, b: AirNeed): AirNeed => ({
  ...(b.m3PerH > a.m3PerH * (1 + 1e-9) ? b : a),
  fireM3PerH: Math.max(a.fireM3PerH, b.fireM3PerH),
});

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
export const STRETCH_H: Readonly<Record<LimitKind, number>> = {
  shift: SHIFT_H,
  short: SHORT_H,
  fire: 1 / 60,
};

export function roomAir({ releases, roomM3, stance, opening }: RoomInput): RoomAir {
  const kinds = LIMIT_KINDS.map((kind) => worstOf(kind, releases, stance, opening));
  return {
    needBetween: (fromH, toH) => {
      const needs = kinds.flatMap(({ kind, worst }): readonly AirNeed[] => {
        const hours = STRETCH_H[kind];
        const found = worst(fromH - hours, toH);
        if (!found || found.m3 <= 0) return [];
        const m3PerH = airNeededM3PerH(found.m3, hours, kind);
        const perH = airChangesPerH(m3PerH, roomM3);
        return [{ m3PerH, airChangesPerH: perH, limit: kind, fromH: found.from, hours, fireM3PerH: 0 }];
      });
      const fireM3PerH = needs.find(({ limit }) => limit === "fire")?.m3PerH ?? 0;
      return { ...needs.reduce(greaterNeed, { ...NO_NEED, fromH }), fireM3PerH };
    },
  };
}

/** The solvent of a release, by either stance. */
export const solventOf = ({ standIn }: Release, stance: Stance): Solvent | undefined => standIn?.[stance];

/** m3 of air that bring what leaves in it to its limit. */
export interface Stretch {
  readonly from: number;
  readonly m3: number;
}

interface WorstOf {
  readonly kind: LimitKind;
  /** The stretch with the most m3 that begins after one hour and before another. */
  worst(after: number, before: number): Stretch | undefined;
}

function worstOf(
  kind: LimitKind,
  releases: readonly Release[],
  stance: Stance,
  opening: (hour: number) => number,
): WorstOf {
  const { stretches } = stretchesOf(kind, releases, stance, opening);
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

export interface Stretches {
  /** The stretches that may hold the most, in the order of time. */
  readonly stretches: readonly Stretch[];
  /** How many m3 have been asked for by an hour. */
  readonly left: (hour: number) => number;
}

/**
 * Stretches that begin with a release, or end with one, hold the most. What has left by an hour is a line that bends
 * where releases begin and end, so every stretch costs two look-ups, and thousands of pieces cost little more than their
 * number.
 */
export function stretchesOf(
  kind: LimitKind,
  releases: readonly Release[],
  stance: Stance,
  opening: (hour: number) => number,
): Stretches {
  const hours = STRETCH_H[kind];
  const weighed = releases.flatMap((release) => {
    const solvent = solventOf(release, stance);
    const m3 = solvent ? airToLimitM3(solvent, release.grams, kind) : 0;
    return m3 > 0 ? [{ from: release.from, to: release.to, m3 }] : [];
  });
  const { left, perH } = leftBy(weighed);
  const starts = weighed.flatMap(({ from, to }) => {
    const ending = kind === "fire" ? to - hours : opening(to - hours);
    // Where nothing leaves yet, the stretch that begins with the next release holds as much.
    return [from, ...(Number.isFinite(ending) && ending < to && perH(ending) > 0 ? [ending] : [])];
  });
  const stretches = [...new Set(starts)]
    .sort((a, b) => a - b)
    .map((from): Stretch => ({ from, m3: left(from + hours) - left(from) }));
  return { stretches, left };
}

/** How many m3 have been asked for by an hour, and how many are then in an hour. */
function leftBy(releases: readonly { readonly from: number; readonly to: number; readonly m3: number }[]): {
  readonly left: (hour: number) => number;
  readonly perH: (hour: number) => number;
} {
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
  const bendAt = (hour: number) => bends[firstIndex(bends, ({ at }) => at > hour) - 1];
  return {
    left: (hour) => {
      const bend = bendAt(hour);
      return bend ? bend.left + bend.perH * (hour - bend.at) : 0;
    },
    perH: (hour) => {
      const perH = bendAt(hour)?.perH ?? 0;
      // What is left of adding and taking away again is nothing.
      return perH > 1e-9 ? perH : 0;
    },
  };
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
