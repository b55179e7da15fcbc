/**
 * The figures of a job in the units that its people read: metric, or those of the United States. Cans are always told as
 * they are sold, film in micrometres and rooms in cubic metres, as gauges and the limits of fumes are.
 *
 * What a quart and a square foot are stands in `units.ts`, with its sources.
 */
import { t } from "../../../../grammar/src/translate.ts";
import {
  type Addends,
  airText,
  areasThatAddUp,
  areaText,
  degreesText,
  humidityText,
  litresText,
  type ShownAir,
  squareFeetThatAddUp,
  timesText,
} from "./figures.ts";
import { formatAmount, formatNumber } from "./format-amount.ts";
import { findUnit } from "./units.ts";

export const UNIT_SYSTEMS = ["metric", "us"] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

export interface ShownFigures {
  readonly litres: (litres: number) => string;
  /** A share of the measure that people mix by: `200 mL` to `a litre`. */
  readonly mixedIn: (share: number) => { readonly part: string; readonly whole: string };
  readonly area: (m2: number) => string;
  /** `2 × 1.185 m2 = 2.37 m2`; of a single one its area. */
  readonly areaOfMany: (count: number, m2: number) => string;
  /** Of m2, that a reader adds up. */
  readonly areas: (m2: readonly number[]) => Addends;
  readonly degrees: (celsius: number) => string;
  /** A difference of temperatures, in degrees Celsius. */
  readonly degreesApart: (celsius: number) => string;
  /** `18 to 22 C`; one figure where both are told alike. */
  readonly degreesBetween: (low: number, high: number) => string;
  readonly air: (air: ShownAir) => string;
  /** A difference of ten degrees Celsius. */
  readonly tenDegrees: string;
  /** How far a litre goes, m2/L. */
  readonly covers: (m2PerL: number) => string;
}

export const figuresIn = (units: UnitSystem): ShownFigures => (units === "us" ? US : METRIC);

const METRIC: ShownFigures = {
  litres: litresText,
  mixedIn: (share) => ({ part: litresText(share), whole: t`a litre` }),
  area: areaText,
  areaOfMany: (count, m2) => (count === 1 ? areaText(m2) : timesText(count, m2, areaText, "m2")),
  areas: areasThatAddUp,
  degrees: degreesText,
  degreesApart: degreesText,
  degreesBetween: (low, high) => between(formatNumber(low, 1), formatNumber(high, 1), "C"),
  air: airText,
  tenDegrees: "10 C",
  covers: (value) => formatAmount({ dimension: "spreading rate", value }),
};

/** A canonical value in a unit of the table. */
function inUnit(value: number, unit: string): number {
  const { multiply, divide, offset = 0 } = findUnit(unit)!;
  return (value * divide) / multiply - offset;
}

const FLUID_OUNCES_IN_QUART = 32;

/** Of a difference: 180 degrees of the one between freezing and boiling are 100 of the other. */
const FAHRENHEIT_PER_CELSIUS = 1.8;

const between = (low: string, high: string, unit: string): string =>
  low === high ? `${high} ${unit}` : t`${low} to ${high} ${unit}`;

const fahrenheit = (celsius: number): string => `${formatNumber(inUnit(celsius, "F"), 0)} F`;

const squareFeetText = (ft2: number): string => `${formatNumber(ft2, 1)} ft2`;

const US: ShownFigures = {
  litres: (litres) => {
    const quarts = inUnit(litres, "qt");
    if (quarts < 0.25) return `${formatNumber(inUnit(litres, "floz"), 1)} floz`;
    return quarts < 4 ? `${formatNumber(quarts, 2)} qt` : `${formatNumber(inUnit(litres, "gal"), 2)} gal`;
  },
  mixedIn: (share) => ({
    part: `${formatNumber(share * FLUID_OUNCES_IN_QUART, 1)} floz`,
    whole: t`a quart`,
  }),
  area: (m2) => squareFeetText(inUnit(m2, "ft2")),
  areaOfMany: (count, m2) => {
    const one = inUnit(m2, "ft2");
    return count === 1 ? squareFeetText(one) : timesText(count, one, squareFeetText, "ft2");
  },
  areas: (m2) => squareFeetThatAddUp(m2.map((each) => inUnit(each, "ft2"))),
  degrees: fahrenheit,
  degreesApart: (celsius) => `${formatNumber(celsius * FAHRENHEIT_PER_CELSIUS, 0)} F`,
  degreesBetween: (low, high) =>
    between(formatNumber(inUnit(low, "F"), 0), formatNumber(inUnit(high, "F"), 0), "F"),
  air: ({ temperature, humidity }) =>
    humidity === undefined
      ? fahrenheit(temperature)
      : t`${fahrenheit(temperature)} and ${humidityText(humidity)}`,
  tenDegrees: "18 F",
  covers: (value) => `${formatNumber(inUnit(value, "ft2/qt"), 0)} ft2/qt`,
};
