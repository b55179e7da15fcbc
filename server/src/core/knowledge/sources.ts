/**
 * The names of the sources that the knowledge tables cite, written once so that a row and a test name them alike.
 *
 * A figure comes from a published source, from common practice, or from memory with a confidence; each row says
 * which. Nothing here certifies a product: the label, the safety data sheet and local codes decide.
 */

/** What the notation itself lays down, so that no book can say otherwise. */
export const BY_DEFINITION = "by definition, no outside source";
export const PRACTICE = "common practice, no source";
export const MASS_BALANCE =
  "mass balance: Michigan Department of Environmental Quality, Emission Calculation Fact Sheet, coating operations";
export const MEMORY_HIGH = "from memory, confidence high";
export const MEMORY_MEDIUM = "from memory, confidence medium";

export const LABEL_TIMES = "typical label times at 21 to 23 °C and 50 % RH, from memory, confidence medium";
export const STAIN_72_H = "common practice: an oil or oil gel stain waits 72 h before a waterborne clear";

export const HANDBOOK_16 = "Wood Handbook FPL-GTR-190 chapter 16";
export const HANDBOOK_TABLE_16_1 = "Wood Handbook FPL-GTR-190 table 16-1";
export const HANDBOOK_LATEX_10_C = "Wood Handbook FPL-GTR-190 chapter 16: latex paint at 10 °C or above";
export const HANDBOOK_ALKYD_4_C = "Wood Handbook FPL-GTR-190 chapter 16: oil-alkyd paint at 4 °C or above";
export const HANDBOOK_TANNIN =
  "Wood Handbook FPL-GTR-190 chapter 16: stain-blocking primer against extractives";

export const EPA_AIM = "40 CFR 59 subpart D table 1 (limits from memory, confidence high)";
export const EPA_VOC_DEFINITION = "40 CFR 51.100(s): acetone is exempt (from memory, confidence high)";
export const EU_PAINTS =
  "Directive 2004/42/EC annex II, phase II, ready to use with its water (from memory, confidence medium)";
export const SCAQMD_1113 =
  "SCAQMD Rule 1113, less water and exempt compounds (from memory, confidence medium)";
export const VOLATILE_PART = "arithmetic: volatile share by volume × density of the carrier";

export const OSHA_FLAMMABLE = "29 CFR 1910.106(a)(19)";
export const OSHA_RAGS =
  "29 CFR 1910.106(e)(9)(iii), which covers furniture shops by (e)(2)(i): waste in covered metal receptacles, disposed of daily (OSHA letter of interpretation, 23 May 2000)";
export const OSHA_AIR = "29 CFR 1910.1000 tables Z-1 and Z-2";
export const NIOSH_GUIDE = "NIOSH Pocket Guide to Chemical Hazards (from memory, confidence high)";

export const VENTILATION_SOURCE =
  "29 CFR 1910.94 and 1910.1000: solvent vapour is kept under its limit; the safety data sheet decides";

export const COMPATIBILITY_LIST =
  "Compatibility in wood finishes, furnituremaking.us (web page, undated; average behaviour, by its own words)";
export const UFC_PAINTING = "UFC 3-190-06 (MIL-HDBK-1110) section 2.4";
export const TEXTBOOK = "finishing textbooks, from memory, confidence high";
