/**
 * Abrasive grades and their median particle size, and the thresholds of the grit rules.
 *
 * Grits of the notation are P grades (ISO 6344, the same as FEPA P). The US scale (CAMI, ANSI B74.18) agrees with it
 * only to about 220: "400" is 35 µm on one scale and about 23 µm on the other.
 * Bonded-abrasive F grades are a third scale and are not here.
 */
import { HANDBOOK_16, PRACTICE } from "./sources.ts";

export interface Grade {
  readonly grit: number;
  /** Median particle size, µm. */
  readonly um: number;
}

export const P_GRADES_SOURCE =
  "ISO 6344-2 (P12 to P220, by sieve) and ISO 6344-3 (P240 to P2500, by sedimentation), from memory, confidence high";

/** P grades, from coarse to fine. */
export const P_GRADES: readonly Grade[] = [
  { grit: 12, um: 1815 },
  { grit: 16, um: 1324 },
  { grit: 20, um: 1000 },
  { grit: 24, um: 764 },
  { grit: 30, um: 642 },
  { grit: 36, um: 538 },
  { grit: 40, um: 425 },
  { grit: 50, um: 336 },
  { grit: 60, um: 269 },
  { grit: 80, um: 201 },
  { grit: 100, um: 162 },
  { grit: 120, um: 125 },
  { grit: 150, um: 100 },
  { grit: 180, um: 82 },
  { grit: 220, um: 68 },
  { grit: 240, um: 58.5 },
  { grit: 280, um: 52.2 },
  { grit: 320, um: 46.2 },
  { grit: 360, um: 40.5 },
  { grit: 400, um: 35.0 },
  { grit: 500, um: 30.2 },
  { grit: 600, um: 25.8 },
  { grit: 800, um: 21.8 },
  { grit: 1000, um: 18.3 },
  { grit: 1200, um: 15.3 },
  { grit: 1500, um: 12.6 },
  { grit: 2000, um: 10.3 },
  { grit: 2500, um: 8.4 },
];

/** Ratio of median sizes from one grit to the next above which the old scratches hardly come out (a hint). */
export const GRIT_JUMP_HINT_RATIO = 2;
/** Ratio above which they stay (a warning): four grades left out. Both by common practice, no source. */
export const GRIT_JUMP_WARNING_RATIO = 2.5;
/** Coarsest last grit before a stain or a clear. */
export const COARSEST_BEFORE_FINISH = 120;
/** Coarsest last grit on end grain that takes a stain. Common practice, no source. */
export const COARSEST_ON_END_GRAIN = 150;
/** Coarsest grit between coats of clear, stain and glaze. */
export const COARSEST_BETWEEN_COATS = 180;

/** The last grit before one kind of layer. */
export interface GritLimit {
  /** From this grit on nothing is said. */
  readonly quietFrom: number;
  /** Coarser than this, the scratches are sure to show. */
  readonly sureBelow: number;
  /** Where it holds, as the middle of a sentence. */
  readonly where: string;
}

/**
 * The last grit by what goes on. Those for paint are of procedures published by public bodies, which sand with 80 and
 * coarser before a primer and with 100 to 150 between coats of paint; the others are common practice.
 */
export const LAST_GRITS = {
  beforeStain: { quietFrom: COARSEST_BEFORE_FINISH, sureBelow: 120, where: "before a stain" },
  beforeFinish: { quietFrom: COARSEST_BEFORE_FINISH, sureBelow: 100, where: "before a finish" },
  beforePrimer: { quietFrom: 80, sureBelow: 50, where: "before a primer" },
  beforePaint: { quietFrom: 100, sureBelow: 80, where: "before paint" },
  betweenPaints: { quietFrom: 100, sureBelow: 80, where: "between coats of paint" },
  betweenCoats: { quietFrom: COARSEST_BETWEEN_COATS, sureBelow: 120, where: "over another coat" },
} as const satisfies Readonly<Record<string, GritLimit>>;
export const PAINT_GRITS_SOURCE = `${HANDBOOK_16}: wood is scuffed with 50 to 80 grit before a primer; NAVEDTRA 14044 Builder 3 & 2, chapter 8: rough wood is sanded with No. 2, No. 1/2 and No. 2/0 paper before paint (about 36, 60 and 100, from memory)`;
/** Finest last grit before a penetrating stain. */
export const FINEST_BEFORE_STAIN = 240;
/** Finest last grit before paint or primer, which must find a hold: on bare wood and on a film. Common practice, no source. */
export const FINEST_BEFORE_PAINT_ON_WOOD = 320;
export const FINEST_BEFORE_PAINT_ON_FILM = 400;
/** Finest last grit on bare wood before a coat that has to hold or soak in. Common practice, no source. */
export const FINEST_ON_BARE_WOOD = 400;
/** From this grit on down, one pass over a thin veneer wants care. Common practice, no source. */
export const COARSE_ON_VENEER = 60;
/** Sanding that starts at this grit or coarser takes every old film. */
export const COARSEST_TAKES_FILM = 100;
/** Share of a veneer's thickness that may be sanded away. */
export const VENEER_SHARE = 0.8;
export const GRIT_THRESHOLDS_SOURCE = PRACTICE;

/** Median particle size of a P grade, µm; grits between two grades by a line on logarithmic axes. */
export function medianUm(grit: number): number | undefined {
  for (let index = 0; index < P_GRADES.length; index++) {
    const finer = P_GRADES[index]!;
    if (grit > finer.grit) continue;
    if (grit === finer.grit) return finer.um;
    const coarser = P_GRADES[index - 1];
    if (coarser === undefined) return undefined;
    const share = Math.log(grit / coarser.grit) / Math.log(finer.grit / coarser.grit);
    return coarser.um * (finer.um / coarser.um) ** share;
  }
  return undefined;
}

/** How many times larger the particles of grit `from` are than those of grit `to`; undefined off the scale. */
export function gritRatio(from: number, to: number): number | undefined {
  const fromUm = medianUm(from);
  const toUm = medianUm(to);
  return fromUm === undefined || toUm === undefined ? undefined : fromUm / toUm;
}

/** Wood taken by one pass of sanding with this grit, mm (the notation's rule, 10 divided by the grit). */
export function materialTakenMm(grit: number): number {
  return 10 / grit;
}

/** The P grades finer than `from` and coarser than `to`, for a message that names the missing grits. */
export function gradesBetween(from: number, to: number): readonly number[] {
  return P_GRADES.map((grade) => grade.grit).filter((grit) => grit > from && grit < to);
}

/** The fewest grades between two grits that leave no jump. */
export function gritsBetween(from: number, to: number): readonly number[] {
  const grits: number[] = [];
  let last = from;
  while (gritRatio(last, to)! > GRIT_JUMP_HINT_RATIO) {
    const next = gradesBetween(last, to).findLast((grit) => gritRatio(last, grit)! <= GRIT_JUMP_HINT_RATIO);
    if (next === undefined) break;
    grits.push(next);
    last = next;
  }
  return grits;
}
