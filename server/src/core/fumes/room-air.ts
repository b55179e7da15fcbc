/**
 * A room: how often its air must change, how long it takes to clear, and what several vapours do together.
 *
 * Air changes an hour = flow / volume. Vapours that act alike add up by the fraction that each is of its limit
 * (29 CFR 1910.1000(d)(2)(i)); the air that each needs is then added as well. Clearing follows the exponential decay of
 * a mixed room, t = (V / Q′) · ln(C1 / C2), with Q′ = Q / K.
 */
import { exposureLimitPpm, type Solvent } from "../knowledge/solvents.ts";
import {
  DEFAULT_MIXING_FACTOR,
  fireDilutionM3PerH,
  healthDilutionM3PerH,
  LEL_SAFETY_FACTOR,
} from "./dilution-air.ts";

/** Air changes an hour of a flow in a room; any one unit of volume. */
export function airChangesPerH(flowPerH: number, roomVolume: number): number {
  return flowPerH / roomVolume;
}

export interface RoomVapour {
  readonly solvent: Solvent;
  /** Grams that evaporate. */
  readonly grams: number;
  /** Hours over which they do, above 0. */
  readonly overH: number;
  /**
   * Hours, above 0, over which the exposure limit averages them, where that is longer: a limit for a shift of 8 h asks
   * for the air of the shift, a fire for that of the moment.
   */
  readonly averagedOverH?: number;
}

export interface AirRequest {
  /** K, from 1 (perfectly mixed) to 10; not for the explosive limit. */
  readonly mixingFactor?: number;
  /** The explosive limit is kept to 1 / this: 4 for a quarter of it. */
  readonly lelSafetyFactor?: number;
  /** Of the room, C. */
  readonly temperatureC?: number;
}

export interface AirNeeded {
  readonly m3PerH: number;
  readonly airChangesPerH: number;
  /** Which limit asks for more air. */
  readonly limit: "exposure" | "fire" | "none";
}

/**
 * Fresh air that keeps a room below the exposure limits (the stricter of OSHA's and NIOSH's; a solvent without either
 * asks for none) and below a part of the explosive limit, a quarter if not said. Vapours are taken to act alike, so the
 * air for each is added. Room in m3, above 0.
 */
export function airNeeded(
  vapours: readonly RoomVapour[],
  roomM3: number,
  request: AirRequest = {},
): AirNeeded {
  const { mixingFactor = DEFAULT_MIXING_FACTOR, lelSafetyFactor = LEL_SAFETY_FACTOR, temperatureC } = request;
  let exposure = 0;
  let fire = 0;
  for (const { solvent, grams, overH, averagedOverH = overH } of vapours) {
    const { molecularWeight } = solvent;
    const room = temperatureC === undefined ? {} : { temperatureC };
    const limitPpm = exposureLimitPpm(solvent);
    if (limitPpm !== undefined) {
      const inhaled = { gramsPerH: grams / Math.max(overH, averagedOverH), molecularWeight, ...room };
      exposure += healthDilutionM3PerH(inhaled, limitPpm, mixingFactor);
    }
    const burning = { gramsPerH: grams / overH, molecularWeight, ...room };
    fire += fireDilutionM3PerH(burning, solvent.lelPercent, lelSafetyFactor);
  }
  const m3PerH = Math.max(exposure, fire);
  const limit = m3PerH === 0 ? "none" : exposure >= fire ? "exposure" : "fire";
  return { m3PerH, airChangesPerH: airChangesPerH(m3PerH, roomM3), limit };
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
