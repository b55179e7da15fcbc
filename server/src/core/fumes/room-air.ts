/**
 * A room: how often its air must change, and what several vapours do together.
 *
 * Air changes an hour = flow / volume. Vapours that act alike add up by the fraction that each is of its limit
 * (29 CFR 1910.1000(d)(2)(i)); the air that each needs is then added as well.
 */
import { exposureLimitMgM3, LIMITS_AT_C, type Solvent, shortLimitMgM3 } from "../knowledge/solvents.ts";
import { DEFAULT_MIXING_FACTOR, fireDilutionM3PerH } from "./dilution-air.ts";

/** Air changes an hour of a flow in a room; any one unit of volume. */
export function airChangesPerH(flowPerH: number, roomVolume: number): number {
  return flowPerH / roomVolume;
}

/** Exposure limits of a working day are averages of 8 h (29 CFR 1910.1000). */
export const SHIFT_H = 8;
/** Short-term limits are averages of 15 minutes (NIOSH Pocket Guide; 29 CFR 1910.1052). */
export const SHORT_H = 0.25;
/** Vapour is kept to a tenth of the lower explosive limit (29 CFR 1910.146 calls more than that hazardous; from memory). */
export const LEL_PARTS = 10;

/** Which limit it is: of a working day, of 15 minutes, or the explosive one, which holds at every moment. */
export type LimitKind = "shift" | "short" | "fire";
export const LIMIT_KINDS: readonly LimitKind[] = ["shift", "short", "fire"];

/**
 * m3 of air that bring so many grams of a solvent's vapour to its limit: 1000 · g / (mg/m3) for breathing (the stricter
 * of OSHA's and NIOSH's), for fire the volume of the vapour at 25 C · 100 · 10 / LEL. 0 where no such limit is set.
 */
export function airToLimitM3(solvent: Solvent, grams: number, kind: LimitKind): number {
  if (kind === "fire") {
    const vapour = { gramsPerH: grams, molecularWeight: solvent.molecularWeight, temperatureC: LIMITS_AT_C };
    return fireDilutionM3PerH(vapour, solvent.lelPercent, LEL_PARTS);
  }
  const limit = kind === "shift" ? exposureLimitMgM3(solvent) : shortLimitMgM3(solvent);
  return limit === undefined ? 0 : (1000 * grams) / limit;
}

/**
 * Fresh air in m3/h for vapours that together ask for so many m3 within so many hours: their sum (vapours that act alike
 * add up) over the hours, times the allowance K for uneven mixing; the explosive limit has its own allowance of ten.
 */
export function airNeededM3PerH(
  m3: number,
  hours: number,
  kind: LimitKind,
  mixingFactor: number = DEFAULT_MIXING_FACTOR,
): number {
  return (m3 / hours) * (kind === "fire" ? 1 : mixingFactor);
}

/**
 * Grams of a vapour that may leave in an hour, on the mean of the limit's hours, for fresh air to keep it under its limit:
 * the exposure sum turned round. Air in m3/h, limit in mg/m3.
 */
export function gramsKeptPerH(
  flowM3PerH: number,
  limitMgM3: number,
  mixingFactor: number = DEFAULT_MIXING_FACTOR,
): number {
  return (flowM3PerH * limitMgM3) / mixingFactor / 1000;
}
