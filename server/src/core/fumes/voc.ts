/**
 * Volatile organic compounds that a job gives off: *material* VOC, grams in a litre as it stands in the can (40 CFR
 * 59.406(a)), times the litres used, thinner and spare included, since what stays in the pot evaporates as well.
 */

/** Grams that evaporate from so many litres at a material VOC in g/L. */
export function vocGrams(litres: number, vocGPerL: number): number {
  return litres * vocGPerL;
}
