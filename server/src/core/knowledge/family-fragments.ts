/**
 * Figures that many rows of the family table share, with the reasoning that goes with them.
 *
 * VOC of solvent-borne rows is the smaller of two figures: the limit of 40 CFR 59 subpart D where a category fits, and
 * what the volatile part can weigh at all, which is its share by volume times the density of the carrier (mineral
 * spirits 780, alcohol 790, lacquer thinner 860 g/L). VOC of waterborne rows is a figure per litre of the material with
 * its water, since that is what evaporates from a can.
 */
import type { Family } from "./family-schema.ts";
import { LABEL_TIMES, OSHA_FLAMMABLE, OSHA_RAGS, PRACTICE, VENTILATION_SOURCE } from "./sources.ts";

export const RATED = { temperature: 21, humidity: 50 } as const;

export const WATER_LIMITS = { low: 10, high: 32, humidity: 85 } as const;
export const OIL_LIMITS = { low: 10, high: 32, humidity: 85 } as const;
/** Lacquer blushes in damp air. */
export const LACQUER_LIMITS = { low: 10, high: 32, humidity: 70 } as const;
export const SHELLAC_LIMITS = { low: 10, high: 32, humidity: 75 } as const;

/** Flash point and initial boiling point, °C, of what evaporates; the low end of each range. */
export const SPIRITS_FIRE = { flash: 39, boils: 154 } as const;
export const ALCOHOL_FIRE = { flash: 13, boils: 78 } as const;
export const THINNER_FIRE = { flash: -18, boils: 56 } as const;
export const FLASH_SOURCE =
  "flash and boiling point of the carrier by the NIOSH Pocket Guide, low end, from memory, confidence high";
export const LACQUER_DUTY_SOURCE = `${VENTILATION_SOURCE}; 29 CFR 1910.134 and 1910.138 for respirator and gloves; ${OSHA_FLAMMABLE}`;
/**
 * Safety data sheets of varnishes, enamels and stains in mineral spirits tell to wear gloves: the spirits crack the skin
 * (EUH066 of Regulation (EC) 1272/2008), driers of cobalt and the ketoximes that keep a skin off can make it allergic (H317).
 */
const OIL_SKIN_SOURCE =
  "29 CFR 1910.138 for gloves; EUH066 and H317 of Regulation (EC) 1272/2008, as safety data sheets of coatings in mineral spirits state them, from memory, confidence high";
export const OIL_DUTY_SOURCE = `${VENTILATION_SOURCE}; ${OSHA_FLAMMABLE}; ${OSHA_RAGS}; ${OIL_SKIN_SOURCE}`;

export const ALL_SHEENS = ["dead flat", "matte", "eggshell", "satin", "semi-gloss", "gloss"];
export const CLEAR_SHEENS = ["matte", "satin", "semi-gloss", "gloss"];

/** Sources that most rows share; a row overrides what it knows better. */
export const COMMON_SOURCES: Readonly<Record<string, string>> = {
  covers: PRACTICE,
  solids: "typical of the family, from memory, confidence medium",
  touch: LABEL_TIMES,
  recoat: LABEL_TIMES,
  cure: LABEL_TIMES,
  rated: "laboratory air of ASTM D1640 is 23 °C and 50 % RH; labels state 21 °C (70 °F)",
  limits: PRACTICE,
  thinUpTo: PRACTICE,
  filmRangeUm: PRACTICE,
  unfitFor: `pigments, dyes and fillers are not made to meet food; ${PRACTICE}`,
  hardness: "ordinal, from memory, confidence medium",
};

/** What rows of water-carried families share. */
export const WATERBORNE = {
  carrier: "water",
  drying: "waterborne",
  rated: RATED,
  limits: WATER_LIMITS,
  thinners: ["water"],
  ragsSelfHeat: false,
  twoPart: false,
  duties: [],
  dissolvedUncuredBy: [],
} satisfies Partial<Family>;

/** What rows of oil-modified families in mineral spirits share. */
export const OILBORNE = {
  carrier: "mineral spirits",
  drying: "oxidising",
  rated: RATED,
  limits: OIL_LIMITS,
  ...SPIRITS_FIRE,
  thinners: ["mineral spirits"],
  ragsSelfHeat: true,
  twoPart: false,
  duties: ["gloves", "ventilate", "no_ignition", "wet_rags"],
} satisfies Partial<Family>;
