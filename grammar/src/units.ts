/**
 * The spellings of units: which words after a number are a unit, and the plain form each is formatted to.
 * Dimension and size of a unit belong to the analysis core.
 */
import { lookUp } from "./look-up.ts";

/** Plain spellings, in the groups in which the language reference lists them. */
export const UNIT_GROUPS: Readonly<Record<string, readonly string[]>> = {
  length: ["um", "mm", "cm", "m", "in", "ft", "yd", "mil"],
  area: ["mm2", "cm2", "m2", "in2", "ft2"],
  volume: ["mL", "L", "floz", "pt", "qt", "gal", "m3", "ft3"],
  time: ["s", "min", "h", "hours", "minutes", "day", "days", "week", "weeks", "months"],
  temperature: ["C", "F"],
  mass: ["g", "kg", "oz", "lb"],
  density: ["g/L", "lb/gal", "kg/L"],
  "spreading rate": ["m2/L", "ft2/gal", "ft2/L", "ft2/qt", "ft2/pt", "mL/m2", "g/m2", "m2/kg", "ft2/lb"],
  share: ["%"],
  "air flow": ["m3/h", "cfm"],
  "air change": ["air changes/h"],
  "time by area": ["min/m2"],
};

/** Other spellings that are accepted, with their plain form: those with a sign, and those that stay as they are. */
export const UNIT_ALIASES: Readonly<Record<string, string>> = {
  µm: "um",
  μm: "um",
  "m²": "m2",
  "cm²": "cm2",
  "mm²": "mm2",
  "in²": "in2",
  "ft²": "ft2",
  "m³": "m3",
  "ft³": "ft3",
  "m²/L": "m2/L",
  "ft²/gal": "ft2/gal",
  "ft²/L": "ft2/L",
  "ft²/qt": "ft2/qt",
  "ft²/pt": "ft2/pt",
  "mL/m²": "mL/m2",
  "g/m²": "g/m2",
  "m²/kg": "m2/kg",
  "ft²/lb": "ft2/lb",
  "m³/h": "m3/h",
  "min/m²": "min/m2",
  "°C": "C",
  "°F": "F",
  hour: "h",
  minute: "min",
  month: "months",
  "air change/h": "air changes/h",
};

/** The aliases that a text keeps: words that are as good as the plain form. */
const KEPT: ReadonlySet<string> = new Set(["hour", "minute", "month", "air change/h"]);

/**
 * As labels and people write them, by plain form, in any case and with or without points. Parts of a rate (`sq ft per
 * quart`) are read one by one, so that every spelling of one goes with every spelling of the other.
 */
export const UNIT_SPELLINGS: Readonly<Record<string, readonly string[]>> = {
  um: ["micron", "microns"],
  mm: ["millimetre", "millimetres", "millimeter", "millimeters"],
  cm: ["centimetre", "centimetres", "centimeter", "centimeters"],
  m: ["metre", "metres", "meter", "meters"],
  in: ['"', "″", "”", "inch", "inches"],
  ft: ["'", "′", "’", "foot", "feet"],
  yd: ["yard", "yards"],
  mil: ["mils", "thou"],
  mm2: ["sq mm", "square millimetres", "square millimeters"],
  cm2: ["sq cm", "sqcm", "square centimetres", "square centimeters"],
  m2: ["sq m", "sqm", "qm", "square metre", "square metres", "square meter", "square meters"],
  in2: ["sq in", "sqin", "square inch", "square inches"],
  ft2: ["sq ft", "sqft", "square foot", "square feet"],
  m3: ["cbm", "cu m", "cubic metre", "cubic metres", "cubic meter", "cubic meters"],
  ft3: ["cu ft", "cuft", "cubic foot", "cubic feet"],
  mL: ["milliliter", "milliliters", "millilitre", "millilitres"],
  L: ["ltr", "ltrs", "litre", "litres", "liter", "liters"],
  floz: ["fl oz", "fluid ounce", "fluid ounces"],
  pt: ["pts", "pint", "pints"],
  qt: ["qts", "quart", "quarts"],
  gal: ["gals", "gallon", "gallons"],
  s: ["sec", "secs", "second", "seconds"],
  min: ["mins", "minute", "minutes"],
  h: ["hr", "hrs", "hour", "hours"],
  days: ["d"],
  weeks: ["wk", "wks"],
  C: ["deg C", "degC", "celsius", "centigrade"],
  F: ["deg F", "degF", "fahrenheit"],
  g: ["gram", "grams", "gramme", "grammes"],
  kg: ["kgs", "kilo", "kilos", "kilogram", "kilograms"],
  oz: ["ounce", "ounces"],
  lb: ["lbs", "pound", "pounds"],
  "g/m2": ["gsm"],
  "%": ["percent", "pct", "per cent"],
  cfm: [],
  "air changes": ["air change"],
  "air changes/h": ["ACH"],
};

const UNITS: ReadonlySet<string> = new Set(Object.values(UNIT_GROUPS).flat());

/** Plain form by what is left of a spelling without case and points. */
const SPELT: ReadonlyMap<string, string> = new Map(
  Object.entries(UNIT_SPELLINGS).flatMap(([plain, spellings]) =>
    [plain, ...spellings].map((spelling) => [spelling.toLowerCase(), plain] as const),
  ),
);

/** The plain form of a unit as it was written, or undefined when the notation has no such unit. */
export function plainUnit(written: string): string | undefined {
  if (UNITS.has(written)) {
    return written;
  }
  const spaced = written.replace(/\s+/gu, " ");
  if (UNITS.has(spaced)) {
    return spaced;
  }
  return lookUp(UNIT_ALIASES, spaced) ?? speltUnit(spaced);
}

/** `Sq. Ft. per Quart`; longer than any unit is none. */
function speltUnit(spaced: string): string | undefined {
  if (spaced.length > LONGEST_SPELLING) {
    return undefined;
  }
  const bare = spaced
    .toLowerCase()
    .replaceAll(".", "")
    .replaceAll("²", "2")
    .replaceAll("³", "3")
    .replace(/^°/u, "");
  const whole = SPELT.get(bare);
  if (whole !== undefined) {
    return UNITS.has(whole) ? whole : undefined;
  }
  const parts = bare.split(/ ?\/ ?| per /u);
  if (parts.length !== 2) {
    return undefined;
  }
  const [above, below] = parts.map((part) => SPELT.get(part));
  const rate = `${above}/${below}`;
  return UNITS.has(rate) ? rate : undefined;
}

const LONGEST_SPELLING = 40;

/** The plain form that a unit is formatted to; a word that is as good as the plain form stays. */
export function formattedUnit(written: string): string {
  const spaced = written.replace(/\s+/gu, " ");
  return KEPT.has(spaced) ? spaced : (plainUnit(spaced) ?? spaced);
}

/** Whether a unit is written with a sign, such as `m²` or `°C`; only those are formatted to the plain form. */
export function hasSign(unit: string): boolean {
  return /[^\x20-\x7e]/u.test(unit);
}
