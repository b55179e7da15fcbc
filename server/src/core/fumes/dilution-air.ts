/**
 * Vapour of evaporating liquid, and fresh air that keeps it below a part of its explosive limit.
 *
 * From grams an hour and the molar volume of a gas (ACGIH, Industrial Ventilation, chapter on general ventilation). The
 * tests hold it against the US form of the same chapter, which agrees within half a percent. The allowance K, from 1 to
 * 10, is for air that mixes badly; 5 is a shop with an open window and a fan (our own choice, common practice, no
 * source). Not for poisons, and no substitute for exhaust at the place of work.
 */
import { molarVolumeL } from "../knowledge/solvents.ts";

/** Allowance for incomplete mixing where none is given. */
export const DEFAULT_MIXING_FACTOR = 5;
/** Fire dilution keeps vapour at or below this part of the lower explosive limit: 1 / 4. */
export const LEL_SAFETY_FACTOR = 4;

export interface MetricDilution {
  /** Grams of solvent that evaporate in an hour. */
  readonly gramsPerH: number;
  readonly molecularWeight: number;
  /** Of the room, C; 21.1 C (70 F) if not given. */
  readonly temperatureC?: number;
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
