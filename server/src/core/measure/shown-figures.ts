/**
 * The figures of a job in the units that its people read: metric, or those of the United States. Cans are always told as
 * they are sold, film in micrometres and rooms in cubic metres, as gauges and the limits of fumes are.
 *
 * What a quart and a square foot are stands in `units.ts`, with its sources.
 */
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
} from "./figures.ts";
import { formatAmount, formatNumber } from "./format-amount.ts";
import { findUnit } from "./units.ts";

export const UNIT_SYSTEMS = ["metric", "us"] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

export interface ShownFigures {
  readonly litres: (litres: number) => string;
  readonly area: (m2: number) => string;
  /** Of m2, that a reader adds up. */
  readonly areas: (m2: readonly number[]) => Addends;
  readonly degrees: (celsius: number) => string;
  readonly air: (air: ShownAir) => string;
  /** A difference of ten degrees Celsius. */
  readonly tenDegrees: string;
  /** How far a litre goes, m2/L. */
  readonly covers: (m2PerL: number) => string;
}

export const figuresIn = (units: UnitSystem): ShownFigures => (units === "us" ? US : METRIC);

const METRIC: ShownFigures = {
  litres: litresText,
  area: areaText,
  areas: areasThatAddUp,
  degrees: degreesText,
  air: airText,
  tenDegrees: "10 C",
  covers: (value) => formatAmount({ dimension: "spreading rate", value }),
};

/** A canonical value in a unit of the table. */
function inUnit(value: number, unit: string): number {
  const { multiply, divide, offset = 0 } = findUnit(unit)!;
  return (value * divide) / multiply - offset;
}

const fahrenheit = (celsius: number): string => `${formatNumber(inUnit(celsius, "F"), 0)} F`;

const US: ShownFigures = {
  litres: (litres) => {
    const quarts = inUnit(litres, "qt");
    if (quarts < 0.25) return `${formatNumber(inUnit(litres, "floz"), 1)} floz`;
    return quarts < 4 ? `${formatNumber(quarts, 2)} qt` : `${formatNumber(inUnit(litres, "gal"), 2)} gal`;
  },
  area: (m2) => `${formatNumber(inUnit(m2, "ft2"), 1)} ft2`,
  areas: (m2) => squareFeetThatAddUp(m2.map((each) => inUnit(each, "ft2"))),
  degrees: fahrenheit,
  air: ({ temperature, humidity }) =>
    humidity === undefined
      ? fahrenheit(temperature)
      : `${fahrenheit(temperature)} and ${humidityText(humidity)}`,
  tenDegrees: "18 F",
  covers: (value) => `${formatNumber(inUnit(value, "ft2/qt"), 0)} ft2/qt`,
};
