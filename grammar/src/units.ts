/**
 * The spellings of units: which words after a number are a unit, and the plain form each is formatted to.
 * Dimension and size of a unit belong to the analysis core.
 */

/** Plain spellings, in the groups in which the language reference lists them. */
export const UNIT_GROUPS: Readonly<Record<string, readonly string[]>> = {
  length: ["um", "mm", "cm", "m", "in", "ft", "yd", "mil"],
  area: ["mm2", "cm2", "m2", "in2", "ft2"],
  volume: ["mL", "L", "floz", "pt", "qt", "gal", "m3", "ft3"],
  time: ["s", "min", "h", "hours", "minutes", "day", "days", "week", "weeks", "months"],
  temperature: ["C", "F"],
  mass: ["g", "kg", "oz", "lb"],
  density: ["g/L", "lb/gal", "kg/L"],
  "spreading rate": ["m2/L", "ft2/gal", "ft2/L", "ft2/qt", "mL/m2", "g/m2"],
  share: ["%"],
  "air flow": ["m3/h", "cfm"],
  "air change": ["air changes/h"],
  "time by area": ["min/m2"],
};

/** Other spellings that are accepted, with their plain form. */
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
  "mL/m²": "mL/m2",
  "g/m²": "g/m2",
  "m³/h": "m3/h",
  "min/m²": "min/m2",
  "°C": "C",
  "°F": "F",
  hour: "h",
  minute: "min",
  month: "months",
  "air change/h": "air changes/h",
};

/** Whether a unit is written with a sign, such as `m²` or `°C`; only those are formatted to the plain form. */
export function hasSign(unit: string): boolean {
  return /[^\x20-\x7e]/u.test(unit);
}
