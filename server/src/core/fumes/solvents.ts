/**
 * The solvents of the trade, as far as the air of a room is concerned.
 *
 * Limits are those of 29 CFR 1910.1000 (PEL) and the recommended ones of NIOSH (REL), 8-hour averages in ppm; the
 * mineral-spirits row follows OSHA's chemical sampling information for Stoddard solvent (CAS 8052-41-3). Molecular
 * weights, specific gravities and explosive limits marked so are from memory, high confidence. Not a safety data sheet:
 * where the can comes with one, that one counts.
 */
import type { Carrier } from "../knowledge/family-schema.ts";

export interface Solvent {
  readonly name: string;
  /** g/mol */
  readonly molecularWeight: number;
  /** Against water. */
  readonly specificGravity: number;
  /** OSHA's permissible limit, ppm, 8 h. */
  readonly pelPpm: number;
  /** NIOSH's recommended limit, ppm, 10 h. */
  readonly relPpm: number;
  /** Lower explosive limit, percent of the air by volume. */
  readonly lelPercent: number;
  readonly source: string;
}

/** Litres of a gas in a mole at 25 C and 101.325 kPa, as in the conversion of exposure limits. */
export const MOLAR_LITRES_25C = 24.45;

const FROM_MEMORY = "molecular weight, gravity and explosive limit from memory";

export const MINERAL_SPIRITS: Solvent = {
  name: "mineral spirits",
  molecularWeight: 140,
  specificGravity: 0.78,
  pelPpm: 500,
  relPpm: mgPerM3ToPpm(350, 140),
  lelPercent: 0.8,
  source: `29 CFR 1910.1000 Table Z-1 and NIOSH REL of 350 mg/m3, Stoddard solvent; ${FROM_MEMORY}`,
};
export const ETHANOL: Solvent = {
  name: "alcohol",
  molecularWeight: 46.1,
  specificGravity: 0.79,
  pelPpm: 1000,
  relPpm: 1000,
  lelPercent: 3.3,
  source: `29 CFR 1910.1000 Table Z-1, ethyl alcohol; limits from memory; ${FROM_MEMORY}`,
};
export const ACETONE: Solvent = {
  name: "acetone",
  molecularWeight: 58.08,
  specificGravity: 0.79,
  pelPpm: 1000,
  relPpm: 250,
  lelPercent: 2.5,
  source: "29 CFR 1910.1000 Table Z-1 and NIOSH REL, acetone",
};
export const TOLUENE: Solvent = {
  name: "lacquer thinner",
  molecularWeight: 92.1,
  specificGravity: 0.87,
  pelPpm: 200,
  relPpm: 100,
  lelPercent: 1.1,
  source: `29 CFR 1910.1000 Table Z-2 and NIOSH REL, toluene; ${FROM_MEMORY}. Lacquer thinner is a blend; it counts as toluene, its strictest common part`,
};

/** The solvent that leaves a material of this carrier; undefined for water and for materials without one. */
export function solventOf(carrier: Carrier): Solvent | undefined {
  switch (carrier) {
    case "mineral spirits":
      return MINERAL_SPIRITS;
    case "alcohol":
      return ETHANOL;
    case "acetone":
      return ACETONE;
    case "lacquer thinner":
      return TOLUENE;
    case "water":
    case "none":
      return undefined;
  }
}

/** The stricter of the permissible and the recommended limit, ppm. */
export function strictestLimitPpm(solvent: Solvent): number {
  return Math.min(solvent.pelPpm, solvent.relPpm);
}

/** mg/m3 = ppm · MW / 24.45 */
export function ppmToMgPerM3(ppm: number, molecularWeight: number): number {
  return (ppm * molecularWeight) / MOLAR_LITRES_25C;
}

/** ppm = mg/m3 · 24.45 / MW */
export function mgPerM3ToPpm(mgPerM3: number, molecularWeight: number): number {
  return (mgPerM3 * MOLAR_LITRES_25C) / molecularWeight;
}
