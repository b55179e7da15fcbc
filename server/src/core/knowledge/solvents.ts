/**
 * Solvents of the trade: weight, fire and exposure figures for the fumes calculation, and which solvent stands for
 * which carrier.
 *
 * PEL is the 8 h limit of 29 CFR 1910.1000, REL the recommendation of NIOSH; both in ppm, or in mg/m3 where the source
 * has no ppm figure. A room kept under a limit by this arithmetic is not thereby safe: the label, the safety data
 * sheet and local codes decide.
 */
import type { Carrier } from "./family-schema.ts";
import { MEMORY_HIGH, MEMORY_MEDIUM, NIOSH_GUIDE, OSHA_AIR } from "./sources.ts";

export interface Solvent {
  readonly name: string;
  /** Molecular weight, g/mol. */
  readonly molecularWeight: number;
  /** Specific gravity, kg/L. */
  readonly specificGravity: number;
  /** Flash point, °C, low end; absent where none is measured. */
  readonly flashC?: number;
  /** Boiling point, °C, low end. */
  readonly boilsC: number;
  /** Lower explosive limit, % by volume. */
  readonly lelPercent: number;
  readonly pelPpm?: number;
  readonly relPpm?: number;
  readonly relMgM3?: number;
  readonly source: string;
}

/** Molar volume of an ideal gas at 25 °C and one atmosphere, L. */
export const MOLAR_VOLUME_L = 24.45;

export const SOLVENTS: readonly Solvent[] = [
  {
    name: "acetone",
    molecularWeight: 58.08,
    specificGravity: 0.79,
    flashC: -18,
    boilsC: 56,
    lelPercent: 2.5,
    pelPpm: 1000,
    relPpm: 250,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "toluene",
    molecularWeight: 92.1,
    specificGravity: 0.87,
    flashC: 4,
    boilsC: 111,
    lelPercent: 1.1,
    pelPpm: 200,
    relPpm: 100,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "xylene",
    molecularWeight: 106.2,
    specificGravity: 0.86,
    flashC: 27,
    boilsC: 138,
    lelPercent: 0.9,
    pelPpm: 100,
    relPpm: 100,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "ethanol",
    molecularWeight: 46.1,
    specificGravity: 0.79,
    flashC: 13,
    boilsC: 78,
    lelPercent: 3.3,
    pelPpm: 1000,
    relPpm: 1000,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "isopropanol",
    molecularWeight: 60.1,
    specificGravity: 0.79,
    flashC: 12,
    boilsC: 83,
    lelPercent: 2.0,
    pelPpm: 400,
    relPpm: 400,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "methanol",
    molecularWeight: 32.1,
    specificGravity: 0.79,
    flashC: 11,
    boilsC: 64,
    lelPercent: 6.0,
    pelPpm: 200,
    relPpm: 200,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "mineral spirits",
    molecularWeight: 140,
    specificGravity: 0.78,
    flashC: 39,
    boilsC: 154,
    lelPercent: 0.8,
    pelPpm: 500,
    relMgM3: 350,
    source: `OSHA Chemical Sampling Information, CAS 8052-41-3, for both limits; ${NIOSH_GUIDE}`,
  },
  {
    name: "turpentine",
    molecularWeight: 136,
    specificGravity: 0.86,
    flashC: 35,
    boilsC: 154,
    lelPercent: 0.8,
    pelPpm: 100,
    relPpm: 100,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "butyl acetate",
    molecularWeight: 116.2,
    specificGravity: 0.88,
    flashC: 22,
    boilsC: 126,
    lelPercent: 1.7,
    pelPpm: 150,
    relPpm: 150,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "methyl ethyl ketone",
    molecularWeight: 72.1,
    specificGravity: 0.81,
    flashC: -9,
    boilsC: 79,
    lelPercent: 1.4,
    pelPpm: 200,
    relPpm: 200,
    source: `${OSHA_AIR}; ${NIOSH_GUIDE}`,
  },
  {
    name: "dipropylene glycol methyl ether",
    molecularWeight: 148.2,
    specificGravity: 0.95,
    flashC: 75,
    boilsC: 190,
    lelPercent: 1.1,
    pelPpm: 100,
    relPpm: 100,
    source: `${OSHA_AIR}, ${MEMORY_HIGH}; ${NIOSH_GUIDE}`,
  },
  {
    name: "methylene chloride",
    molecularWeight: 84.9,
    specificGravity: 1.33,
    boilsC: 40,
    lelPercent: 13,
    pelPpm: 25,
    source: `29 CFR 1910.1052 for its limit; ${NIOSH_GUIDE}; NIOSH counts it as a carcinogen without a REL`,
  },
  {
    name: "N-methylpyrrolidone",
    molecularWeight: 99.1,
    specificGravity: 1.03,
    flashC: 93,
    boilsC: 202,
    lelPercent: 1.3,
    source: MEMORY_MEDIUM,
  },
];

/**
 * The solvent whose figures stand for what evaporates from a carrier: for mixtures the one that needs the most air.
 * Lacquer thinner counts as toluene; the organic part of a waterborne material as a glycol ether.
 */
const REPRESENTATIVES: Readonly<Record<Carrier, string | undefined>> = {
  water: "dipropylene glycol methyl ether",
  "mineral spirits": "mineral spirits",
  alcohol: "ethanol",
  "lacquer thinner": "toluene",
  acetone: "acetone",
  none: undefined,
};

export function solventByName(name: string): Solvent | undefined {
  const key = name.trim().toLowerCase();
  return SOLVENTS.find((solvent) => solvent.name.toLowerCase() === key);
}

/** The solvent that stands for what evaporates from this carrier; undefined where nothing does. */
export function representativeSolvent(carrier: Carrier): Solvent | undefined {
  const name = REPRESENTATIVES[carrier];
  return name === undefined ? undefined : SOLVENTS.find((solvent) => solvent.name === name);
}

/** The lower of PEL and REL, ppm; undefined where neither is known. */
export function exposureLimitPpm(solvent: Solvent): number | undefined {
  const rel =
    solvent.relPpm ??
    (solvent.relMgM3 === undefined ? undefined : ppmFromMgM3(solvent.relMgM3, solvent.molecularWeight));
  if (rel === undefined) return solvent.pelPpm;
  return solvent.pelPpm === undefined ? rel : Math.min(solvent.pelPpm, rel);
}

/** The exposure limit as a concentration in air, mg/m3 at 25 °C. */
export function exposureLimitMgM3(solvent: Solvent): number | undefined {
  const ppm = exposureLimitPpm(solvent);
  return ppm === undefined ? undefined : mgM3FromPpm(ppm, solvent.molecularWeight);
}

export function mgM3FromPpm(ppm: number, molecularWeight: number): number {
  return (ppm * molecularWeight) / MOLAR_VOLUME_L;
}

export function ppmFromMgM3(mgM3: number, molecularWeight: number): number {
  return (mgM3 * MOLAR_VOLUME_L) / molecularWeight;
}
