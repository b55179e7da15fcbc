/**
 * Fresh air that keeps solvent vapour below a limit: for breathing, and for fire.
 *
 * The US form is that of ACGIH, Industrial Ventilation, chapter on general ventilation: Q = 403·10^6·SG·ER·K / (MW·C) in
 * cfm, ER in US pints a minute, C in ppm; 403 ft3 of vapour come from a pint of liquid of gravity 1 and weight 1 at
 * 70 F. The metric form starts from grams an hour and the molar volume of a gas; the two agree within half a percent, a
 * test holds that. K, from 1 to 10, allows for air that mixes badly; 5 is a shop with an open window and a fan (our own
 * choice, common practice, no source). Not for poisons, and no substitute for exhaust at the place of work.
 */
import { molarVolumeL } from "../knowledge/solvents.ts";

/** Allowance for incomplete mixing where none is given. */
export const DEFAULT_MIXING_FACTOR = 5;
/** Fire dilution keeps vapour at or below this part of the lower explosive limit: 1 / 4. */
export const LEL_SAFETY_FACTOR = 4;

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

export interface MetricDilution {
  /** Grams of solvent that evaporate in an hour. */
  readonly gramsPerH: number;
  readonly molecularWeight: number;
  /** Of the room, C; 21.1 C (70 F) if not given. */
  readonly temperatureC?: number;
}

/** Air in m3/h that keeps vapour below an exposure limit in ppm; `mixingFactor` from 1 to 10. */
export function healthDilutionM3PerH(
  input: MetricDilution,
  limitPpm: number,
  mixingFactor: number = DEFAULT_MIXING_FACTOR,
): number {
  return (1e6 * vapourM3PerH(input) * mixingFactor) / limitPpm;
}

/** Air in m3/h that keeps vapour below 1 / `safetyFactor` of the explosive limit, percent of the air by volume. */
export function fireDilutionM3PerH(
  input: MetricDilution,
  lelPercent: number,
  safetyFactor: number = LEL_SAFETY_FACTOR,
): number {
  return (100 * vapourM3PerH(input) * safetyFactor) / lelPercent;
}

/** Vapour from evaporating liquid, m3/h, as an ideal gas. */
export function vapourM3PerH({ gramsPerH, molecularWeight, temperatureC = 21.1 }: MetricDilution): number {
  return ((gramsPerH / molecularWeight) * molarVolumeL(temperatureC)) / 1000;
}

function vapourCfm({ specificGravity, molecularWeight, pintsPerMin }: UsDilution): number {
  return (FT3_PER_PINT * specificGravity * pintsPerMin) / molecularWeight;
}
