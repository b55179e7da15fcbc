/**
 * Reads a quantity of the text as an amount of the dimension that its place calls for.
 *
 * This is where units are checked: `covers 3 h` fails here, with what was expected and an example of it. Messages name
 * what is wrong first and what to write next. The span is the whole quantity when its dimension is wrong, else the part
 * at fault. Amounts below zero are refused wherever they mean nothing, that is for all but temperatures.
 */

import { closestWord } from "../../../../grammar/src/closest-word.ts";
import { gist, inside, type SuchAs, type Told, toldBy } from "../../../../grammar/src/gist.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Measure, Quantity, Span } from "../../../../grammar/src/tree.ts";
import { UNIT_ALIASES } from "../../../../grammar/src/units.ts";
import { formatAmount } from "./format-amount.ts";
import {
  type Amount,
  type Dimension,
  differenceToCanonical,
  findUnit,
  toCanonical,
  type UnitDefinition,
  unitsOf,
} from "./units.ts";

export interface QuantityProblem {
  readonly ok: false;
  readonly rule: "wrong-unit" | "bad-number";
  readonly span: Span;
  readonly message: string;
}

export type ReadQuantity<D extends Dimension> =
  | { readonly ok: true; readonly amount: Amount<D> }
  | QuantityProblem;

/** Bounds in the canonical unit. Without them zero is accepted, and negative temperatures only. */
export interface Bounds {
  /** Strictly above. */
  readonly above?: number;
  readonly atLeast?: number;
  readonly atMost?: number;
}

/**
 * The amount that a quantity states, in the canonical unit of the first expected dimension that its unit measures.
 * A compound such as `5 ft 6 in` must go from the largest unit to the smallest, all of one dimension.
 */
export function readQuantity<D extends Dimension>(
  quantity: Quantity,
  expected: readonly D[],
  bounds: Bounds = {},
): ReadQuantity<D> {
  const read = readParts(quantity, expected);
  return read.ok ? checkBounds(read.amount, quantity, bounds) : read;
}

/** The words for a dimension and an example: "coverage such as `10 m2/L`". */
export function describeDimension(dimension: Dimension, suchAs: SuchAs): string {
  return `${nounOf(dimension)}${suchAs(DIMENSIONS[dimension].example, "")}`;
}

/** What a dimension is called: "a length". */
export const nounOf = (dimension: Dimension): string => translated(DIMENSIONS[dimension].noun);

/** The quantity as it would be typed: `5 ft 6 in`. */
export function quantityText(quantity: Quantity): string {
  return quantity.parts.map(measureText).join(" ");
}

/** What each dimension is called, and a quantity that has it. */
export const DIMENSIONS: Readonly<Record<Dimension, { readonly noun: string; readonly example: string }>> = {
  length: { noun: "a length", example: "30 mm" },
  area: { noun: "an area", example: "1.2 m2" },
  volume: { noun: "a volume", example: "946 mL" },
  time: { noun: "a time", example: "2 h" },
  temperature: { noun: "a temperature", example: "21 C" },
  "temperature difference": { noun: "a difference of temperatures", example: "3 C" },
  mass: { noun: "a weight", example: "2.5 kg" },
  density: { noun: "a weight by volume", example: "180 g/L" },
  "spreading rate": { noun: "coverage", example: "10 m2/L" },
  "weight by area": { noun: "a weight per area", example: "120 g/m2" },
  share: { noun: "a share", example: "10 %" },
  "air flow": { noun: "an air flow", example: "300 m3/h" },
  "air change": { noun: "air changes", example: "10 air changes/h" },
  "time by area": { noun: "a time by area", example: "15 min/m2" },
  number: { noun: "a plain number", example: "3" },
};

/** Dimensions whose quantities may be written in several parts. */
const COMPOUND: ReadonlySet<Dimension> = new Set<Dimension>(["length", "area", "volume", "time", "mass"]);
const BELOW_ZERO: ReadonlySet<Dimension> = new Set<Dimension>([
  "temperature",
  "temperature difference",
  "number",
]);
const ABSOLUTE_ZERO_C = -273.15;

/** How units are also called; what to write instead. */
const OTHER_NAMES: ReadonlyMap<string, string> = new Map(
  Object.entries({
    micron: "um",
    filmText: "um",
    mils: "mil",
    inch: "in",
    inches: "in",
    foot: "ft",
    feet: "ft",
    yard: "yd",
    yards: "yd",
    metre: "m",
    metres: "m",
    meter: "m",
    meters: "m",
    sqft: "ft2",
    sqm: "m2",
    litre: "L",
    litres: "L",
    liter: "L",
    liters: "L",
    ounce: "oz",
    ounces: "oz",
    pint: "pt",
    pints: "pt",
    quart: "qt",
    quarts: "qt",
    gallon: "gal",
    gallons: "gal",
    sec: "s",
    secs: "s",
    second: "s",
    seconds: "s",
    mins: "min",
    hr: "h",
    hrs: "h",
    d: "days",
    wk: "weeks",
    gram: "g",
    grams: "g",
    pound: "lb",
    pounds: "lb",
    lbs: "lb",
    percent: "%",
    pc: "%",
  }),
);

function readParts<D extends Dimension>(quantity: Quantity, expected: readonly D[]): ReadQuantity<D> {
  const [first, ...rest] = quantity.parts;
  if (first === undefined)
    return wrongUnit(
      quantity.span,
      gist((suchAs) => t`Expected ${describeAll(expected, suchAs)}.`),
    );
  if (first.unit === undefined && rest.length === 0) return readPlainNumber(first, quantity, expected);

  const definitions: UnitDefinition[] = [];
  for (const part of quantity.parts) {
    const definition = part.unit && findUnit(part.unit.text);
    if (definition === undefined) return unitNotKnown(part, expected);
    definitions.push(definition);
  }
  const leading = definitions[0]!;
  const dimension = expected.find((candidate) => measures(leading, candidate));
  if (dimension === undefined) {
    const found = `${nounOf(leading.dimension)} (\`${quantityText(quantity)}\`)`;
    const isMinutes = leading.text === "m" && expected.some((candidate) => candidate === "time");
    const hint = isMinutes ? t`\nMinutes are \`min\`.` : "";
    const told = (suchAs: SuchAs): string => t`Expected ${describeAll(expected, suchAs)}, found ${found}.`;
    return wrongUnit(quantity.span, hint === "" ? gist(told) : `${told(inside)}${hint}`);
  }
  return checkCompound(quantity, definitions, dimension) ?? sumParts(quantity, definitions, dimension);
}

function readPlainNumber<D extends Dimension>(
  part: Measure,
  quantity: Quantity,
  expected: readonly D[],
): ReadQuantity<D> {
  const dimension = expected.find((candidate) => candidate === "number");
  if (dimension !== undefined) return { ok: true, amount: { dimension, value: part.number.value } };
  return wrongUnit(quantity.span, withoutUnit(part, expected));
}

function checkCompound(
  quantity: Quantity,
  definitions: readonly UnitDefinition[],
  dimension: Dimension,
): QuantityProblem | undefined {
  if (quantity.parts.length === 1) return undefined;
  const text = quantityText(quantity);
  if (!COMPOUND.has(dimension)) {
    return wrongUnit(
      quantity.span,
      t`\`${text}\` is two quantities; ${nounOf(dimension)} is written in one unit.`,
    );
  }
  for (const [index, definition] of definitions.entries()) {
    const part = quantity.parts[index]!;
    const before = definitions[index - 1];
    if (before === undefined) continue;
    if (definition.dimension !== before.dimension) {
      const found = t`\`${measureText(part)}\` is ${nounOf(definition.dimension)}`;
      return wrongUnit(measureSpan(part), t`All parts of \`${text}\` must be of one kind; ${found}.`);
    }
    if (toCanonical(1, definition) >= toCanonical(1, before)) {
      return wrongUnit(
        measureSpan(part),
        gist(
          (suchAs) =>
            t`The parts of \`${text}\` must go from the largest unit to the smallest${suchAs("5 ft 6 in")}.`,
        ),
      );
    }
    if (dimension === "length" && toCanonical(part.number.value, definition) >= toCanonical(1, before)) {
      const whole = quantity.parts[index - 1]!.unit!.text;
      return badNumber(
        measureSpan(part),
        gist(
          (suchAs) =>
            t`\`${measureText(part)}\` is a ${whole} or more; write it in one unit, or with a smaller part${suchAs("5 ft 6 in")}.`,
        ),
      );
    }
    if (part.number.value < 0) {
      return badNumber(part.number.span, t`Only the whole of \`${text}\` can have a sign, not a part of it.`);
    }
  }
  return undefined;
}

function sumParts<D extends Dimension>(
  quantity: Quantity,
  definitions: readonly UnitDefinition[],
  dimension: D,
): ReadQuantity<D> {
  const convert = dimension === "temperature difference" ? differenceToCanonical : toCanonical;
  let value = 0;
  for (const [index, part] of quantity.parts.entries()) {
    value += convert(part.number.value, definitions[index]!);
  }
  return { ok: true, amount: { dimension, value } };
}

function checkBounds<D extends Dimension>(
  amount: Amount<D>,
  quantity: Quantity,
  bounds: Bounds,
): ReadQuantity<D> {
  const { dimension, value } = amount;
  const text = quantityText(quantity);
  const say = (limit: number): string => formatAmount({ dimension, value: limit }, "full");
  const refuse = (why: Told): QuantityProblem =>
    badNumber(
      quantity.span,
      gist((suchAs) => `\`${text}\` ${toldBy(why, suchAs)}.`),
    );
  if (!Number.isFinite(value))
    return refuse((suchAs) => t`is no amount; expected ${describeDimension(dimension, suchAs)}`);
  if (dimension === "temperature" && value < ABSOLUTE_ZERO_C) return refuse(t`is below the absolute zero`);
  if (bounds.above !== undefined && value <= bounds.above)
    return refuse(t`must be more than ${say(bounds.above)}`);
  const least = bounds.atLeast ?? (BELOW_ZERO.has(dimension) ? undefined : 0);
  if (least !== undefined && value < least) return refuse(t`must not be less than ${say(least)}`);
  if (bounds.atMost !== undefined && value > bounds.atMost)
    return refuse(t`must not be more than ${say(bounds.atMost)}`);
  return { ok: true, amount };
}

function unitNotKnown(part: Measure, expected: readonly Dimension[]): QuantityProblem {
  if (part.unit === undefined) {
    return wrongUnit(part.number.span, withoutUnit(part, expected));
  }
  const spellings = expected.flatMap((dimension) => unitsOf(dimension).map((definition) => definition.text));
  const written = part.unit.text;
  const per = COUNTED_THING.exec(written);
  if (per && expected.includes("spreading rate")) {
    const rate = /^(?:mm|cm|m|in|ft)2/u.test(written) ? `\`covers 10 ft2/qt\`` : `\`covers 40 g/m2\``;
    const thing = per[1]!;
    return wrongUnit(
      part.unit.span,
      /^(?:can|tin|bottle|pack|tube)$/iu.test(thing)
        ? t`How much one ${thing} is the line does not say\nState the one pack that it comes in, such as \`packs 1 qt for 14.00\`, or write it by volume or area, such as ${rate}.`
        : t`How much one ${thing} is the line does not say\nWrite it by volume or area, such as ${rate}.`,
    );
  }
  const known = OTHER_NAMES.get(written.toLowerCase());
  const aliases = Object.keys(UNIT_ALIASES).filter((alias) => spellings.includes(UNIT_ALIASES[alias]!));
  const near =
    known !== undefined && spellings.includes(known)
      ? known
      : closestWord(written, [...spellings, ...aliases]);
  return wrongUnit(
    part.unit.span,
    near === undefined
      ? gist((suchAs) => t`\`${written}\` is no unit; expected ${describeAll(expected, suchAs)}.`)
      : t`\`${written}\` is no unit; did you mean \`${UNIT_ALIASES[near] ?? near}\`?`,
  );
}

/** `ft2/can`, `g/chair`: by things whose size no line says. */
const COUNTED_THING =
  /(?:\/| per )(can|tin|bottle|stick|tube|pack|set|bag|chair|table|piece|door|panel|leg|drawer|seat|coat)s?$/iu;

const measures = (definition: UnitDefinition, dimension: Dimension): boolean =>
  definition.dimension === dimension ||
  (definition.dimension === "temperature" && dimension === "temperature difference");

const describeAll = (expected: readonly Dimension[], suchAs: SuchAs): string =>
  expected.map((dimension) => describeDimension(dimension, suchAs)).join(t` or `);

const withoutUnit = (part: Measure, expected: readonly Dimension[]): string =>
  gist((suchAs) => t`\`${part.number.text}\` has no unit; expected ${describeAll(expected, suchAs)}.`);

const measureText = (part: Measure): string =>
  part.unit === undefined ? part.number.text : `${part.number.text} ${part.unit.text}`;

const measureSpan = (part: Measure): Span => ({
  start: part.number.span.start,
  end: part.unit?.span.end ?? part.number.span.end,
});

const wrongUnit = (span: Span, message: string): QuantityProblem => ({
  ok: false,
  rule: "wrong-unit",
  span,
  message,
});
const badNumber = (span: Span, message: string): QuantityProblem => ({
  ok: false,
  rule: "bad-number",
  span,
  message,
});
