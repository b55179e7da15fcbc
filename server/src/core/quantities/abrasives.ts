/**
 * What a task takes where the text does not say: hands-on time by verb and method, and abrasive paper by grit.
 *
 * The figures are common practice, no source: round ones for careful hand work on furniture, meant to be overruled by
 * `takes 40 min` or `takes 15 min/m2`. They are set so that a wooden chair of about 0.9 m2 (cleaned, sanded through
 * three grits, three brushed coats with a scuff and a dusting between) comes to about two hours of hands, which is what
 * refinishers count. Paper is counted by how much bare hardwood a sheet sands before it is dull; shops differ by a
 * factor of two either way, so it is rounded up to whole sheets and never enters a cost: the text's `supplies` does.
 */

import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t } from "../../../../grammar/src/translate.ts";
import type { Method } from "./litres.ts";

export interface TaskTime {
  /** Laying out, stirring, cleaning tools: minutes whatever the area. */
  readonly fixedMin: number;
  readonly minPerM2: number;
  readonly source: string;
}

export interface TaskHoursInput {
  /** A verb of the notation, or `layer`. */
  readonly verb: string;
  /** How a layer is put on; `brush` if not said. */
  readonly method?: Method;
  /** Of one piece's surface. */
  readonly areaM2: number;
  /** How many grits a `sand` or `scuff` goes through; 1 if not said. */
  readonly grits?: number;
  /** The layer is wiped off again. */
  readonly wiped?: boolean;
}

/** Hands-on hours of one task on one piece's surface; an unknown verb takes what a small repair takes. */
export function defaultTaskHours(input: TaskHoursInput): number {
  const { fixed, each } = defaultTaskParts(input);
  return fixed + each;
}

/**
 * The same in two parts, hours: what is done once for all pieces in one go, and what each piece takes. Where the area
 * makes no difference, as in masking or taking hardware off, all of it is work on the piece.
 */
export function defaultTaskParts(input: TaskHoursInput): { readonly fixed: number; readonly each: number } {
  const rounds = GRIT_VERBS.has(input.verb) ? Math.max(1, input.grits ?? 1) : 1;
  const time = taskTime(input.verb, input.method);
  const parts = input.verb === "layer" && input.wiped ? [time, WIPING] : [time];
  let fixed = 0;
  let each = 0;
  for (const { fixedMin, minPerM2 } of parts) {
    if (minPerM2 === 0) each += rounds * fixedMin;
    else {
      fixed += rounds * fixedMin;
      each += rounds * minPerM2 * input.areaM2;
    }
  }
  return { fixed: fixed / 60, each: each / 60 };
}

/** The row of the table that `defaultTaskHours` uses. */
export function taskTime(verb: string, method: Method = "brush"): TaskTime {
  if (verb === "layer") return LAYER_TIMES[method];
  return lookUp(STEP_TIMES, verb) ?? OTHER;
}

const PRACTICE = "common practice, no source";

/** Putting on one coat, by method. Sprayers are quick on the piece and slow to set up and to clean. */
export const LAYER_TIMES: Readonly<Record<Method, TaskTime>> = {
  brush: time(5, 10),
  roller: time(6, 5),
  pad: time(5, 6),
  foam: time(4, 8),
  cloth: time(4, 8),
  rubber: time(5, 12),
  // Of which kind is not said, so it takes what the slower one takes.
  spray: time(25, 3),
  hvlp: time(15, 3),
  airless: time(25, 2),
};

/** Wiping a stain or an oil off again. */
export const WIPING: TaskTime = time(2, 6);

/** By verb; `sand` and `scuff` for each grit. */
export const STEP_TIMES: Readonly<Record<string, TaskTime>> = {
  clean: time(5, 6),
  dewax: time(5, 10),
  strip: time(10, 40),
  scrape: time(5, 45),
  sand: time(3, 12),
  scuff: time(2, 6),
  dust: time(2, 2),
  dampen: time(2, 2),
  bleach: time(5, 8),
  fill: time(8, 6),
  mask: time(10, 0),
  unmask: time(3, 0),
  remove: time(10, 0),
  refit: time(10, 0),
  glue: time(10, 0),
  repair: time(30, 0),
  distress: time(5, 10),
  buff: time(3, 12),
  test: time(10, 0),
  inspect: time(5, 0),
  turn: time(5, 0),
};

const OTHER: TaskTime = time(10, 0);
const GRIT_VERBS: ReadonlySet<string> = new Set(["sand", "scuff"]);

function time(fixedMin: number, minPerM2: number): TaskTime {
  return { fixedMin, minPerM2, source: PRACTICE };
}

// ---------------------------------------------------------------------------------------------------------------
// Paper

export interface AbrasiveUse {
  readonly grit: number;
  /** Hand sheets of 230 mm × 280 mm, rounded up; or, instead of them, */
  readonly sheets: number;
  /** discs of 125 mm, rounded up. */
  readonly discs: number;
  readonly basis: string;
}

/** Paper for one pass of each grit over an area (all pieces together, and times coats for a scuff between coats). */
export function abrasiveUse(areaM2: number, grits: readonly number[]): readonly AbrasiveUse[] {
  return grits.map((grit) => {
    const perSheet = m2PerSheet(grit);
    const sheets = areaM2 / perSheet;
    return {
      grit,
      sheets: roundUp(sheets),
      discs: roundUp(sheets / DISC_OF_SHEET),
      basis: t`${perSheet} m2 a sheet at grit ${grit}: common practice, no source`,
    };
  });
}

/** Area in m2 that a sheet sands at a grit. Common practice, no source. */
export function m2PerSheet(grit: number): number {
  if (grit <= 60) return 0.6;
  if (grit <= 100) return 1;
  if (grit <= 180) return 1.5;
  if (grit <= 240) return 2;
  return 2.5;
}

/** Face of a 125 mm disc over that of a 230 mm × 280 mm sheet, π · 62.5² / (230 · 280). */
const DISC_OF_SHEET = (Math.PI * 62.5 ** 2) / (230 * 280);

const roundUp = (count: number): number => Math.max(0, Math.ceil(count - 1e-9));
