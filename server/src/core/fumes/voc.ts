/**
 * Volatile organic compounds that a job gives off: *material* VOC, grams in a litre as it stands in the can (40 CFR
 * 59.406(a)), times the litres used: thinner, spare, overspray and what is wiped off included, since what stays in the
 * pot, drifts past the piece or leaves with the rags evaporates as well.
 */

/** Grams that evaporate from so many litres at a material VOC in g/L. */
export function vocGrams(litres: number, vocGPerL: number): number {
  return litres * vocGPerL;
}
