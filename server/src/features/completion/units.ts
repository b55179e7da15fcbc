/** Units after a number: those of the dimension that the place calls for, the usual ones first. */
import { translated } from "../../../../grammar/src/translate.ts";
import { DIMENSIONS } from "../../core/measure/read-quantity.ts";
import { type Dimension, unitsOf } from "../../core/measure/units.ts";
import type { Offer } from "./offer.ts";

/** What a finisher writes first; the rest follows in the order of the unit table. */
const USUAL: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  length: ["mm", "cm", "m", "in", "ft"],
  volume: ["mL", "L"],
  time: ["h", "min", "days", "weeks"],
  "spreading rate": ["m2/L", "ft2/gal"],
  density: ["g/L", "kg/L"],
};
/** Spellings of one unit that need not be offered beside it. */
const SAME: ReadonlySet<string> = new Set(["hours", "minutes", "day", "week"]);

export function unitOffers(...dimensions: readonly Dimension[]): readonly Offer[] {
  return dimensions.flatMap((dimension) => {
    const known = unitsOf(dimension).map(({ text }) => text);
    const usual = USUAL[dimension] ?? [];
    return [...usual, ...known.filter((text) => !usual.includes(text) && !SAME.has(text))].map((label) => ({
      label,
      kind: "unit" as const,
      detail: translated(DIMENSIONS[dimension].noun),
    }));
  });
}

/** Thicknesses of films, where the small units come first. */
export const filmUnitOffers = (): readonly Offer[] => {
  const small = ["um", "mil"];
  const offers = unitOffers("length");
  return [
    ...small.flatMap((label) => offers.filter((offer) => offer.label === label)),
    ...offers.filter((offer) => !small.includes(offer.label)),
  ];
};
