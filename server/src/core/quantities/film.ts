/**
 * Film thickness: from spreading rate to wet film, from wet film to dry, and the solids of a mix.
 *
 * Wet film (µm) = 1000 / spreading rate (m2/L), because a litre on a square metre stands a millimetre high; dry film =
 * wet film × solids by volume (UFC 3-190-06, procedure 13). Transfer efficiency and spare never enter the film.
 * The US identity: a gallon of 231 in3 covers 231 / 0.001 / 144 = 1604.1666… square feet one mil thick; charts print
 * 1604 or 1604.17. A widely copied chart prints 527 for 72 % at 2 mil where the formula gives 577.
 */

/** Square feet that a US gallon covers a mil thick: 231 in3 / 0.001 in / 144 in2. */
export const FT2_MIL_PER_GALLON = 231_000 / 144;

/** Wet film in µm at a spreading rate in m2/L, above 0. */
export function wetFilmUm(coversM2PerL: number): number {
  return 1000 / coversM2PerL;
}

/** Spreading rate in m2/L at a wet film in µm, above 0. */
export function spreadingRateM2PerL(wetUm: number): number {
  return 1000 / wetUm;
}

/** Dry film in µm of a wet film; `solidsPercentOfMix` by volume, 0 to 100, of what was put on (thinned and tinted). */
export function dryFilmUm(wetUm: number, solidsPercentOfMix: number): number {
  return (wetUm * solidsPercentOfMix) / 100;
}

/** Wet film that dries to a given dry film; the same unit as `dry`. */
export function wetFilmForDry(dry: number, solidsPercentOfMix: number): number {
  return (dry * 100) / solidsPercentOfMix;
}

export interface MixSolidsInput {
  /** Of the material, percent by volume. */
  readonly solidsPercent: number;
  /** Parts of the material to parts of thinner; the thinner has no solids unless it says so. */
  readonly thinned?: { readonly a: number; readonly b: number; readonly solidsPercent?: number };
  /** Share of the tint in the mix, percent, and its solids. */
  readonly tint?: { readonly percent: number; readonly solidsPercent: number };
  /** Second part of a two-part material: parts of this to parts of hardener, with the hardener's solids. */
  readonly hardener?: { readonly a: number; readonly b: number; readonly solidsPercent: number };
}

/**
 * Solids of the mix, percent by volume: each liquid's solids in the share that it has of the mix. Volumes are taken to
 * add up. One part of paint with t parts of thinner has solids S / (1 + t).
 */
export function mixSolids(input: MixSolidsInput): number {
  const { thinned, tint, hardener } = input;
  let solids = input.solidsPercent;
  if (hardener !== undefined) solids = blend(solids, hardener.a, hardener.solidsPercent, hardener.b);
  if (thinned !== undefined) solids = blend(solids, thinned.a, thinned.solidsPercent ?? 0, thinned.b);
  if (tint !== undefined) solids = blend(solids, 100 - tint.percent, tint.solidsPercent, tint.percent);
  return solids;
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

const blend = (first: number, partsFirst: number, second: number, partsSecond: number): number =>
  (first * partsFirst + second * partsSecond) / (partsFirst + partsSecond);
