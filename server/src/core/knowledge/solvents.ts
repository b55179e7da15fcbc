/**
 * Solvents of the trade: weight, fire and exposure figures for the fumes calculation, and which solvent stands for
 * which carrier.
 *
 * PEL is the 8 h limit of 29 CFR 1910.1000, REL the recommendation of NIOSH for a working day; both in ppm, or in mg/m3
 * where the source has no ppm figure. The short limits are averages of 15 minutes: NIOSH's ST, its ceiling for mineral
 * spirits (stated as 15 minutes), and the STEL of 29 CFR 1910.1052. A room kept under a limit by this arithmetic is not
 * thereby safe: the label, the safety data sheet and local codes decide.
 */

import type { Material } from "../model/model.ts";
import { onceFor } from "../once.ts";
import { negates } from "./denials.ts";
import type { FamilyName } from "./family-names.ts";
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
  /** Average of 15 minutes that may not be passed, ppm or mg/m3. */
  readonly shortPpm?: number;
  readonly shortMgM3?: number;
  /** Other names, as safety data sheets write them, and the CAS number. */
  readonly words: readonly string[];
  readonly source: string;
}

/** Exposure limits in mg/m3 are stated for air of this temperature, C. */
export const LIMITS_AT_C = 25;

/**
 * Litres of a mole of an ideal gas at one atmosphere: 24.45 L at 25 C, as 29 CFR 1910.1000 and NIOSH convert their
 * limits, and at other temperatures in proportion to the absolute one.
 */
export function molarVolumeL(temperatureC: number = LIMITS_AT_C): number {
  return (24.45 * (273.15 + temperatureC)) / (273.15 + LIMITS_AT_C);
}

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
    words: ["67-64-1", "propanone"],
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
    shortPpm: 150,
    words: ["108-88-3", "toluol"],
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
    shortPpm: 150,
    words: ["1330-20-7", "xylol"],
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
    words: ["64-17-5", "ethyl alcohol"],
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
    shortPpm: 500,
    words: ["67-63-0", "isopropyl alcohol", "2-propanol"],
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
    shortPpm: 250,
    words: ["67-56-1", "methyl alcohol", "wood alcohol"],
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
    shortMgM3: 1800,
    words: ["8052-41-3", "Stoddard solvent", "white spirit"],
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
    words: ["8006-64-2"],
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
    shortPpm: 200,
    words: ["123-86-4"],
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
    shortPpm: 300,
    words: ["78-93-3", "MEK", "butanone"],
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
    shortPpm: 150,
    words: ["34590-94-8", "dipropylene glycol monomethyl ether", "DPM", "DPGME"],
    source: `${OSHA_AIR}, ${MEMORY_HIGH}; ${NIOSH_GUIDE}`,
  },
  {
    name: "2-butoxyethanol",
    molecularWeight: 118.2,
    specificGravity: 0.9,
    flashC: 62,
    boilsC: 171,
    lelPercent: 1.1,
    pelPpm: 50,
    relPpm: 5,
    words: [
      "111-76-2",
      "butoxyethanol",
      "butyl glycol",
      "ethylene glycol butyl ether",
      "ethylene glycol monobutyl ether",
      "EGBE",
    ],
    source: `${OSHA_AIR}, ${MEMORY_HIGH}; ${NIOSH_GUIDE}`,
  },
  {
    name: "methylene chloride",
    molecularWeight: 84.9,
    specificGravity: 1.33,
    boilsC: 40,
    lelPercent: 13,
    pelPpm: 25,
    shortPpm: 125,
    words: ["75-09-2", "dichloromethane"],
    source: `29 CFR 1910.1052 for its limit; ${NIOSH_GUIDE}; NIOSH counts it as a carcinogen without a REL`,
  },
  {
    name: "N-methylpyrrolidone",
    molecularWeight: 99.1,
    specificGravity: 1.03,
    flashC: 93,
    boilsC: 202,
    lelPercent: 1.3,
    words: ["872-50-4", "NMP"],
    source: MEMORY_MEDIUM,
  },
];

/** What stands for the vapour of a material whose solvent is not named. */
export interface StandIn {
  /** The one with the strictest limits that such products commonly hold. Sums go by it. */
  readonly cautious: Solvent;
  /** The one that they hold most of: where even this one is too much, there is no doubt. */
  readonly usual: Solvent;
  /** The material's own words or its family name it, so that nothing is assumed. */
  readonly isNamed: boolean;
}

/**
 * Waterborne coatings hold glycol ethers, of which 2-butoxyethanol has by far the lowest limit; denatured alcohol holds
 * methanol; lacquer thinner counts as toluene. Which solvents products hold: common practice, no source.
 */
const STAND_INS: Readonly<Record<Carrier, readonly [cautious: string, usual: string] | undefined>> = {
  water: ["2-butoxyethanol", "dipropylene glycol methyl ether"],
  "mineral spirits": ["mineral spirits", "mineral spirits"],
  alcohol: ["methanol", "ethanol"],
  "lacquer thinner": ["toluene", "toluene"],
  acetone: ["acetone", "acetone"],
  none: undefined,
};

/** What stands for what evaporates from this carrier; undefined where nothing does. */
export function standInOf(carrier: Carrier): StandIn | undefined {
  const names = STAND_INS[carrier];
  const [cautious, usual] = (names ?? []).map((name) => SOLVENTS.find((solvent) => solvent.name === name));
  return cautious && usual && { cautious, usual, isNamed: cautious === usual };
}

/**
 * What stands for the vapour of a material: the solvent that its title or documentation names as such ("solvent:
 * dipropylene glycol methyl ether"), of several the one with the strictest limit, else that of its carrier.
 */
export const standInFor = (material: Told): StandIn | undefined => standIn(material);

/** Every coat asks. */
const standIn = onceFor((material: Told): StandIn | undefined => {
  if (!material.family || material.family.carrier === "none") return undefined;
  const named = SOLVENTS.filter((solvent) => namesAsSolvent(material, solvent)).toSorted(
    (a, b) => (exposureLimitMgM3(a) ?? Infinity) - (exposureLimitMgM3(b) ?? Infinity),
  );
  const [strictest] = named;
  return strictest
    ? { cautious: strictest, usual: strictest, isNamed: true }
    : (standInOfFamily(material.family.name) ?? standInOf(material.family.carrier));
});

/** A family that is one solvent. */
function standInOfFamily(name: FamilyName): StandIn | undefined {
  const solvent = name === "turpentine" ? SOLVENTS.find((each) => each.name === name) : undefined;
  return solvent && { cautious: solvent, usual: solvent, isNamed: true };
}

type Told = Pick<Material, "title" | "docs" | "family">;

const SPEAKS_OF_SOLVENT = /\b(?:co-?)?solvents?\b|\bvapou?rs?\b/iu;
/** Words beside denials that make of "its solvent is X" something else. */
const SOMETHING_ELSE = /\b(?:free|instead|thinners?|clean)\b/iu;

const isDenied = (clause: string): boolean => negates(clause) || SOMETHING_ELSE.test(clause);

/** Finds a solvent by any of its names. */
export function solventPattern(solvent: Solvent): RegExp {
  const names = [solvent.name, ...solvent.words].map((name) => name.replace(/[-\s]+/gu, "[-\\s]+"));
  return new RegExp(`(?<![\\w-])(?:${names.join("|")})(?![\\w-])`, "iu");
}

function namesAsSolvent({ title, docs }: Told, solvent: Solvent): boolean {
  const pattern = solventPattern(solvent);
  return `${title ?? ""}. ${docs}`
    .split(/[.;!?]/u)
    .some((clause) => SPEAKS_OF_SOLVENT.test(clause) && !isDenied(clause) && pattern.test(clause));
}

/** The lower of PEL and REL, ppm; undefined where neither is known. */
export function exposureLimitPpm(solvent: Solvent): number | undefined {
  const rel =
    solvent.relPpm ??
    (solvent.relMgM3 === undefined ? undefined : ppmFromMgM3(solvent.relMgM3, solvent.molecularWeight));
  if (rel === undefined) return solvent.pelPpm;
  return solvent.pelPpm === undefined ? rel : Math.min(solvent.pelPpm, rel);
}

/** The exposure limit of a working day as a concentration in air, mg/m3 at 25 °C. */
export function exposureLimitMgM3(solvent: Solvent): number | undefined {
  const ppm = exposureLimitPpm(solvent);
  return ppm === undefined ? undefined : mgM3FromPpm(ppm, solvent.molecularWeight);
}

/** The limit of 15 minutes, mg/m3 at 25 °C; undefined where none is set. */
export function shortLimitMgM3({ shortMgM3, shortPpm, molecularWeight }: Solvent): number | undefined {
  return shortMgM3 ?? (shortPpm === undefined ? undefined : mgM3FromPpm(shortPpm, molecularWeight));
}

export function mgM3FromPpm(ppm: number, molecularWeight: number): number {
  return (ppm * molecularWeight) / molarVolumeL();
}

export function ppmFromMgM3(mgM3: number, molecularWeight: number): number {
  return (mgM3 * molarVolumeL()) / molecularWeight;
}
