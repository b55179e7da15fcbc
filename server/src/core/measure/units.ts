/**
 * Every unit of the notation: what it measures and its exact size in the canonical unit of that dimension.
 *
 * Canonical units: mm, m2, L, h, degrees C, g, g/L, m2/L, g/m2, percent as 0…100, m3/h, air changes an hour, h/m2.
 * Sizes are kept as a ratio of two whole numbers, so that `946 mL` is 0.946 L to the last bit and not a rounding of it.
 * A temperature on the scale and a difference of temperatures are two dimensions with functions of their own, because
 * 3 C more is 5.4 F more, not 37.4. Spellings belong to the grammar; a test holds that no spelling is missing here.
 *
 * Sources: inch, foot, mil, pound, ounce and square foot as printed in 16 CFR 500.19 and NIST SP 811 appendix B.8;
 * the US gallon of 231 in3 and its parts, NIST Handbook 44 appendix C.
 */
import { UNIT_ALIASES } from "../../../../grammar/src/units.ts";

export type Dimension =
  | "length"
  | "area"
  | "volume"
  | "time"
  | "temperature"
  | "temperature difference"
  | "mass"
  | "density"
  | "spreading rate"
  | "weight by area"
  | "share"
  | "air flow"
  | "air change"
  | "time by area"
  | "number";

/** A measured amount; `value` is in the canonical unit of its dimension. */
export interface Amount<D extends Dimension> {
  readonly dimension: D;
  readonly value: number;
}

/** What a unit can measure. The differences of `C` and `F` are units of the same spelling. */
export type UnitDimension = Exclude<Dimension, "temperature difference" | "number">;

export interface UnitDefinition {
  readonly text: string;
  readonly dimension: UnitDimension;
  /** Canonical value = (n + offset) · multiply / divide; `inverse`: multiply / (n · divide). */
  readonly multiply: number;
  readonly divide: number;
  /** Added before scaling; only temperatures have one. */
  readonly offset?: number;
  /** The unit counts how much is used on an area, the canonical one how much area is covered. */
  readonly inverse?: true;
  /** Where the size of the unit is published. */
  readonly source: string;
}

const SI = "BIPM SI Brochure, 9th edition";
const SP811 = "NIST SP 811 appendix B.8";
const CFR500 = "16 CFR 500.19 (inch of 25.4 mm)";
const HB44 = "NIST Handbook 44 appendix C (US gallon of 231 in3)";
const POUND = "NIST SP 811 appendix B.8 (avoirdupois pound of 453.59237 g)";
const OWN = "our own definition";

const TABLE: readonly UnitDefinition[] = [
  unit("um", "length", 1, 1000, SI),
  unit("mm", "length", 1, 1, SI),
  unit("cm", "length", 10, 1, SI),
  unit("m", "length", 1000, 1, SI),
  unit("in", "length", 254, 10, CFR500),
  unit("ft", "length", 3048, 10, CFR500),
  unit("yd", "length", 9144, 10, SP811),
  unit("mil", "length", 254, 10_000, CFR500),

  unit("mm2", "area", 1, 1e6, SI),
  unit("cm2", "area", 1, 1e4, SI),
  unit("m2", "area", 1, 1, SI),
  unit("in2", "area", 64_516, 1e8, CFR500),
  unit("ft2", "area", 9_290_304, 1e8, CFR500),

  unit("mL", "volume", 1, 1000, SI),
  unit("L", "volume", 1, 1, SI),
  unit("m3", "volume", 1000, 1, SI),
  unit("floz", "volume", 295_735_295_625, 1e13, HB44),
  unit("pt", "volume", 473_176_473, 1e9, HB44),
  unit("qt", "volume", 946_352_946, 1e9, HB44),
  unit("gal", "volume", 3_785_411_784, 1e9, HB44),
  unit("ft3", "volume", 28_316_846_592, 1e9, CFR500),

  unit("s", "time", 1, 3600, SI),
  unit("min", "time", 1, 60, SI),
  unit("minutes", "time", 1, 60, SI),
  unit("h", "time", 1, 1, SI),
  unit("hours", "time", 1, 1, SI),
  unit("day", "time", 24, 1, SI),
  unit("days", "time", 24, 1, SI),
  unit("week", "time", 168, 1, "seven days"),
  unit("weeks", "time", 168, 1, "seven days"),
  unit("months", "time", 720, 1, `30 days, ${OWN}: labels that speak of a month mean about four weeks`),

  unit("C", "temperature", 1, 1, SI),
  { ...unit("F", "temperature", 5, 9, `${SP811} (F = 1.8 C + 32)`), offset: -32 },

  unit("g", "mass", 1, 1, SI),
  unit("kg", "mass", 1000, 1, SI),
  unit("oz", "mass", 28_349_523_125, 1e9, POUND),
  unit("lb", "mass", 45_359_237, 1e5, POUND),

  unit("g/L", "density", 1, 1, SI),
  unit("kg/L", "density", 1000, 1, SI),
  unit("lb/gal", "density", 453_592_370_000, 3_785_411_784, `${POUND}; ${HB44}`),

  unit("m2/L", "spreading rate", 1, 1, SI),
  unit("ft2/L", "spreading rate", 9_290_304, 1e8, CFR500),
  unit("ft2/gal", "spreading rate", 92_903_040, 3_785_411_784, `${CFR500}; ${HB44}`),
  unit("ft2/qt", "spreading rate", 92_903_040, 946_352_946, `${CFR500}; ${HB44}`),
  unit("ft2/pt", "spreading rate", 92_903_040, 473_176_473, `${CFR500}; ${HB44}`),
  { ...unit("mL/m2", "spreading rate", 1000, 1, SI), inverse: true },
  unit("g/m2", "weight by area", 1, 1, SI),
  { ...unit("m2/kg", "weight by area", 1000, 1, SI), inverse: true },
  { ...unit("ft2/lb", "weight by area", 45_359_237_000, 9_290_304, `${POUND}; ${CFR500}`), inverse: true },

  unit("%", "share", 1, 1, SI),

  unit("m3/h", "air flow", 1, 1, SI),
  unit("cfm", "air flow", 169_901_079_552, 1e11, `${CFR500} (cubic foot), 60 min an hour`),
  unit("air changes/h", "air change", 1, 1, OWN),
  unit("min/m2", "time by area", 1, 60, SI),
];

const BY_TEXT: ReadonlyMap<string, UnitDefinition> = new Map(TABLE.map((entry) => [entry.text, entry]));
const ALIASES: ReadonlyMap<string, string> = new Map(Object.entries(UNIT_ALIASES));

/** The unit of this spelling, plain or accepted; undefined for a word that is no unit. */
export function findUnit(text: string): UnitDefinition | undefined {
  return BY_TEXT.get(ALIASES.get(text) ?? text);
}

/** All units that measure a dimension, plain spellings, in the order of the table. */
export function unitsOf(dimension: Dimension): readonly UnitDefinition[] {
  if (dimension === "number") return [];
  const measured = dimension === "temperature difference" ? "temperature" : dimension;
  return TABLE.filter((entry) => entry.dimension === measured);
}

/**
 * `n` of a unit in the canonical unit of its dimension. Temperatures are points on the scale.
 * Zero of an inverse unit (`0 mL/m2`) is infinite; `readQuantity` refuses it.
 */
export function toCanonical(n: number, definition: UnitDefinition): number {
  if (definition.inverse) return definition.multiply / (n * definition.divide);
  return ((n + (definition.offset ?? 0)) * definition.multiply) / definition.divide;
}

/** A difference of temperatures, `n` degrees of the unit, in degrees C: 5.4 F is 3 C. */
export function differenceToCanonical(n: number, definition: UnitDefinition): number {
  return (n * definition.multiply) / definition.divide;
}

/** Litres of so many grams; `densityGPerL` above 0, in g/L. */
export function litresOfGrams(grams: number, densityGPerL: number): number {
  return grams / densityGPerL;
}

/** Spreading rate (m2/L) of a material that is spread at so many grams a square metre; both above 0. */
export function spreadingRateOfWeight(gramsPerM2: number, densityGPerL: number): number {
  return densityGPerL / gramsPerM2;
}

function unit(
  text: string,
  dimension: UnitDimension,
  multiply: number,
  divide: number,
  source: string,
): UnitDefinition {
  return { text, dimension, multiply, divide, source };
}
