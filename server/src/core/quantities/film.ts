/**
 * Film thickness: from spreading rate to wet film, from wet film to dry, and the solids of a mix.
 *
 * Wet film (µm) = 1000 / spreading rate (m2/L), because a litre on a square metre stands a millimetre high; dry film =
 * wet film × solids by volume (UFC 3-190-06, procedure 13). Transfer efficiency and spare never enter the film.
 */

/** Wet film in µm at a spreading rate in m2/L, above 0. */
export function wetFilmUm(coversM2PerL: number): number {
  return 1000 / coversM2PerL;
}

/** Dry film in µm of a wet film; `solidsPercentOfMix` by volume, 0 to 100, of what was put on (thinned and tinted). */
export function dryFilmUm(wetUm: number, solidsPercentOfMix: number): number {
  return (wetUm * solidsPercentOfMix) / 100;
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

const blend = (first: number, partsFirst: number, second: number, partsSecond: number): number =>
  (first * partsFirst + second * partsSecond) / (partsFirst + partsSecond);
