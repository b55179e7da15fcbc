/**
 * Dilution air as ACGIH, Industrial Ventilation, chapter on general ventilation, has it, to hold the metric form of the
 * program against: Q = 403·10^6·SG·ER·K / (MW·C) in cfm, ER in US pints a minute, C in ppm; 403 ft3 of vapour come from a
 * pint of liquid of gravity 1 and weight 1 at 70 F. K, from 1 to 10, allows for air that mixes badly.
 */
import {
  DEFAULT_MIXING_FACTOR,
  LEL_SAFETY_FACTOR,
  type MetricDilution,
  vapourM3PerH,
} from "../../server/src/core/fumes/dilution-air.ts";

/** ft3 of vapour at 70 F from a US pint of liquid of specific gravity 1 and molecular weight 1. */
const FT3_PER_PINT = 403;

export interface UsDilution {
  readonly specificGravity: number;
  readonly molecularWeight: number;
  /** US pints of liquid that evaporate in a minute. */
  readonly pintsPerMin: number;
}

/** Air in cfm that keeps vapour below an exposure limit in ppm; `mixingFactor` K from 1 to 10. */
export function healthDilutionCfm(input: UsDilution, limitPpm: number, mixingFactor: number): number {
  return (1e6 * vapourCfm(input) * mixingFactor) / limitPpm;
}

/**
 * Air in cfm at 70 F that keeps vapour below 1 / `safetyFactor` of the explosive limit (percent of the air by volume).
 * `heated`: the room or oven is above 250 F, where the explosive limit is taken at 0.7 of its value (from memory).
 */
export function fireDilutionCfm(
  input: UsDilution,
  lelPercent: number,
  safetyFactor: number = LEL_SAFETY_FACTOR,
  heated = false,
): number {
  return (100 * vapourCfm(input) * safetyFactor) / (lelPercent * (heated ? 0.7 : 1));
}

/** A flow at 70 F as it is at another temperature in F, at the same pressure. */
export function cfmAtTemperature(cfmAt70F: number, temperatureF: number): number {
  return (cfmAt70F * (460 + temperatureF)) / (460 + 70);
}

/**
 * Dilution air in ft3 for a US gallon evaporated, 4 (100 − LEL) · vapour / LEL, from the vapour of a gallon in ft3 and
 * the LEL in percent (29 CFR 1910.94(c)(6)(ii); formula from memory, its table read in WAC 296-62-11019).
 */
export function dilutionFt3PerGallon(vapourFt3PerGallon: number, lelPercent: number): number {
  return (4 * (100 - lelPercent) * vapourFt3PerGallon) / lelPercent;
}

/** Air in m3/h that keeps vapour below an exposure limit in ppm; `mixingFactor` from 1 to 10. */
export function healthDilutionM3PerH(
  input: MetricDilution,
  limitPpm: number,
  mixingFactor: number = DEFAULT_MIXING_FACTOR,
): number {
  return (1e6 * vapourM3PerH(input) * mixingFactor) / limitPpm;
}

function vapourCfm({ specificGravity, molecularWeight, pintsPerMin }: UsDilution): number {
  return (FT3_PER_PINT * specificGravity * pintsPerMin) / molecularWeight;
}

/** Σ C / L of vapours that act alike, in ppm both; above 1 the mixture is over its limit. */
export function mixtureExposure(
  vapours: readonly { readonly concentration: number; readonly limit: number }[],
): number {
  return vapours.reduce((sum, vapour) => sum + vapour.concentration / vapour.limit, 0);
}
