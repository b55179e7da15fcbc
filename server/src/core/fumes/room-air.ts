/**
 * A room: how often its air must change, how long it takes to clear, and what several vapours do together.
 *
 * Air changes an hour = flow / volume. Vapours that act alike add up by the fraction that each is of its limit
 * (29 CFR 1910.1000(d)(2)(i)); the air that each needs is then added as well. Clearing follows the exponential decay of
 * a mixed room, t = (V / Q′) · ln(C1 / C2), with Q′ = Q / K.
 */
import { DEFAULT_MIXING_FACTOR, fireDilutionM3PerH, healthDilutionM3PerH } from "./dilution-air.ts";
import { type Solvent, strictestLimitPpm } from "./solvents.ts";

/** Air changes an hour of a flow in a room; any one unit of volume. */
export function airChangesPerH(flowPerH: number, roomVolume: number): number {
  return flowPerH / roomVolume;
}

export interface RoomVapour {
  readonly solvent: Solvent;
  /** Grams that evaporate. */
  readonly grams: number;
  /** Hours over which they do, above 0: for a coat, until it is dry to the touch. */
  readonly overH: number;
}

export interface AirNeeded {
  readonly m3PerH: number;
  readonly airChangesPerH: number;
  /** Which limit asks for more air. */
  readonly limit: "exposure" | "fire" | "none";
}

/**
 * Fresh air that keeps a room below the exposure limits (the stricter of OSHA's and NIOSH's) and below a quarter of the
 * explosive limit. Vapours are taken to act alike, so the air for each is added. Room in m3, above 0.
 */
export function airNeeded(
  vapours: readonly RoomVapour[],
  roomM3: number,
  mixingFactor: number = DEFAULT_MIXING_FACTOR,
): AirNeeded {
  let exposure = 0;
  let fire = 0;
  for (const { solvent, grams, overH } of vapours) {
    const evaporating = { gramsPerH: grams / overH, molecularWeight: solvent.molecularWeight };
    exposure += healthDilutionM3PerH(evaporating, strictestLimitPpm(solvent), mixingFactor);
    fire += fireDilutionM3PerH(evaporating, solvent.lelPercent);
  }
  const m3PerH = Math.max(exposure, fire);
  const limit = m3PerH === 0 ? "none" : exposure >= fire ? "exposure" : "fire";
  return { m3PerH, airChangesPerH: airChangesPerH(m3PerH, roomM3), limit };
}

/** Σ C / L of vapours that act alike, in ppm both; above 1 the mixture is over its limit. */
export function mixtureExposure(
  vapours: readonly { readonly concentration: number; readonly limit: number }[],
): number {
  return vapours.reduce((sum, vapour) => sum + vapour.concentration / vapour.limit, 0);
}

/** Hours until a room has cleared from one concentration to another; 0 if it is there already. */
export function clearingTimeH(
  roomM3: number,
  flowM3PerH: number,
  from: number,
  to: number,
  mixingFactor: number = DEFAULT_MIXING_FACTOR,
): number {
  return from <= to ? 0 : (roomM3 / (flowM3PerH / mixingFactor)) * Math.log(from / to);
}
