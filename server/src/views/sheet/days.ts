/**
 * The days of a job: what is done when, surface by surface, so that one knows on a morning which steps are due.
 * Tasks of one piece's surface that follow each other without a wait stand on one line.
 */

import { t } from "../../../../grammar/src/translate.ts";
import { dayText, shortMomentText, timeText } from "../../core/measure/figures.ts";
import { andList } from "../../core/model/suggest.ts";
import type { Schedule } from "../../core/schedule/types.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import { itemOf } from "../../core/totals/planned-tasks.ts";
import { MOST_PIECES, type SheetDay } from "./model.ts";
import { stepNumbers } from "./procedure.ts";
import { isPartOfStrip } from "./strip-parts.ts";

interface Stretch {
  readonly startAt: string;
  endAt: string;
  readonly surface: string;
  /** Pieces that are at the same steps at the same time. */
  readonly pieces: readonly number[];
  /** How many there are of the piece. */
  readonly of: number;
  readonly first: number;
  last: number;
}

export function sheetDays(
  runs: readonly SurfaceRun[],
  plan: Schedule | undefined,
  titleOf: (run: SurfaceRun) => string,
): readonly SheetDay[] {
  if (!plan) return [];
  const stretches = runs.flatMap((run) => {
    const ofRun = Array.from({ length: run.pieces }, (_, piece) =>
      pieceStretches(plan, run, piece, titleOf(run)),
    ).flat();
    return run.pieces > MOST_PIECES ? dayOfMany(ofRun) : ofRun;
  });
  const days = new Map<string, Stretch[]>();
  for (const stretch of together(stretches).toSorted(byStart)) {
    const day = stretch.startAt.slice(0, 10);
    days.set(day, [...(days.get(day) ?? []), stretch]);
  }
  return [...days].map(([day, list]) => ({
    day: dayText(day),
    tasks: list.map(({ startAt, endAt, surface, pieces, of, first, last }) => ({
      time: timesText(startAt, endAt),
      where: of > 1 ? `${surface}, ${piecesText(pieces, of)}` : surface,
      steps: first === last ? `${first}` : t`${first} to ${last}`,
    })),
  }));
}

const byStart = (a: Stretch, b: Stretch): number =>
  a.startAt < b.startAt ? -1 : a.startAt > b.startAt ? 1 : a.endAt < b.endAt ? -1 : 1;

/** `09:00 to 11:35`, with the day where it goes on over night. */
const timesText = (startAt: string, endAt: string): string =>
  t`${timeText(startAt)} to ${dayText(startAt) === dayText(endAt) ? timeText(endAt) : shortMomentText(endAt)}`;

/** No numbers: some of many. */
const piecesText = (pieces: readonly number[], of: number): string =>
  pieces.length === 0
    ? t`${of} pieces`
    : pieces.length === 1
      ? t`piece ${pieces[0]!}`
      : t`pieces ${andList(pieces.map(String))}`;

/** Stretches of several pieces that differ in nothing else are one. */
function together(stretches: readonly Stretch[]): readonly Stretch[] {
  const merged = new Map<string, Stretch>();
  for (const stretch of stretches) {
    const { startAt, endAt, surface, first, last } = stretch;
    const key = [startAt, endAt, surface, first, last].join(" ");
    const before = merged.get(key);
    merged.set(key, before ? { ...before, pieces: [...before.pieces, ...stretch.pieces] } : stretch);
  }
  return [...merged.values()];
}

/** Of more pieces than anyone follows one by one a day has one line: from the first hand's turn to the last. */
function dayOfMany(stretches: readonly Stretch[]): readonly Stretch[] {
  const days = new Map<string, Stretch>();
  for (const stretch of stretches.toSorted(byStart)) {
    const day = stretch.startAt.slice(0, 10);
    const before = days.get(day) ?? { ...stretch, pieces: [] };
    days.set(day, {
      ...before,
      endAt: [before.endAt, stretch.endAt].toSorted()[1]!,
      first: Math.min(before.first, stretch.first),
      last: Math.max(before.last, stretch.last),
    });
  }
  return [...days.values()];
}

/** A wait, a night or a turn of another piece ends a stretch. */
function pieceStretches(plan: Schedule, run: SurfaceRun, piece: number, surface: string): readonly Stretch[] {
  const numbers = stepNumbers(run);
  const stretches: Stretch[] = [];
  run.moments.forEach((_, index) => {
    const number = numbers[index];
    const item = itemOf(plan, run, piece, index);
    if (!item?.startAt || !item.endAt) return;
    const open = stretches.at(-1);
    // A stripper that is left on is taken off before anything else is done.
    if (open && isPartOfStrip(run, index)) open.endAt = item.endAt;
    if (number === undefined) return;
    if (open?.last === number - 1 && open.endAt === item.startAt) {
      open.last = number;
      open.endAt = item.endAt;
      return;
    }
    stretches.push({
      startAt: item.startAt,
      endAt: item.endAt,
      surface,
      pieces: [piece + 1],
      of: run.pieces,
      first: number,
      last: number,
    });
  });
  return stretches;
}
