/**
 * Volatile organic compounds: what a job gives off, and the two ways in which a label counts it.
 *
 * *Material* VOC is grams in a litre as it stands in the can; what a job emits is that times the litres used, thinner
 * and spare included. *Regulatory* VOC leaves water and exempt solvents out of the volume as well, and is for limits
 * only (40 CFR 59.406(a); EPA Method 24): times litres it means nothing. Masses in grams, volumes in litres unless a
 * name says otherwise; the formulas hold in any one pair of units.
 */

/** Density that 30 TAC 115.423 assumes of the solvents in a coating, lb a US gallon. */
export const ASSUMED_SOLVENT_LB_PER_GAL = 7.36;

/** What is in a volume of coating. Zero where a coating has none. */
export interface CoatingContents {
  readonly volume: number;
  /** Weight of all that evaporates, water and exempt solvents included. */
  readonly volatiles: number;
  readonly water: number;
  readonly waterVolume: number;
  readonly exempt: number;
  readonly exemptVolume: number;
}

/** Grams that evaporate from so many litres, their spare included, at a material VOC in g/L. */
export function vocGrams(litres: number, vocGPerL: number): number {
  return litres * vocGPerL;
}

/** Grams that evaporate from a mix: the sum over its liquids. */
export function mixVocGrams(
  liquids: readonly { readonly litres: number; readonly vocGPerL: number }[],
): number {
  return liquids.reduce((sum, liquid) => sum + vocGrams(liquid.litres, liquid.vocGPerL), 0);
}

/** (W volatiles − W water − W exempt) / V. */
export function materialVoc(contents: CoatingContents): number {
  return organicWeight(contents) / contents.volume;
}

/** (W volatiles − W water − W exempt) / (V − V water − V exempt); infinite for a coating of nothing but water. */
export function regulatoryVoc(contents: CoatingContents): number {
  return organicWeight(contents) / (contents.volume - contents.waterVolume - contents.exemptVolume);
}

/**
 * Weight of VOC by volume of solids, S = C / (1 − C / D), from the regulatory VOC C and the solvents' density D, all in
 * one unit (30 TAC 115.423(1): lb/gal, D = 7.36). C must be below D.
 */
export function vocPerSolids(
  regulatory: number,
  solventDensity: number = ASSUMED_SOLVENT_LB_PER_GAL,
): number {
  return regulatory / (1 - regulatory / solventDensity);
}

const organicWeight = (contents: CoatingContents): number =>
  contents.volatiles - contents.water - contents.exempt;
