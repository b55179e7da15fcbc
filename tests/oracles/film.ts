/**
 * Films the other way round and in US measures, to hold the program's films against published charts.
 *
 * The US identity: a gallon of 231 in3 covers 231 / 0.001 / 144 = 1604.1666… square feet one mil thick; charts print
 * 1604 or 1604.17. A widely copied chart prints 527 for 72 % at 2 mil where the formula gives 577.
 */

/** Square feet that a US gallon covers a mil thick: 231 in3 / 0.001 in / 144 in2. */
export const FT2_MIL_PER_GALLON = 231_000 / 144;

/** Spreading rate in m2/L at a wet film in µm, above 0. */
export function spreadingRateM2PerL(wetUm: number): number {
  return 1000 / wetUm;
}

/** Wet film that dries to a given dry film; the same unit as `dry`. */
export function wetFilmForDry(dry: number, solidsPercentOfMix: number): number {
  return (dry * 100) / solidsPercentOfMix;
}

/** Theoretical coverage in ft2 a US gallon at a dry film in mil; solids by volume in percent. */
export function coverageFt2PerGallon(solidsPercent: number, dryMil: number): number {
  return (FT2_MIL_PER_GALLON * solidsPercent) / 100 / dryMil;
}

/** US gallons for an area in ft2 at a dry film in mil, with a transfer efficiency from 0 (excluded) to 1. */
export function gallonsForFilm(
  areaFt2: number,
  dryMil: number,
  solidsPercent: number,
  efficiency: number,
): number {
  return areaFt2 / (coverageFt2PerGallon(solidsPercent, dryMil) * efficiency);
}
