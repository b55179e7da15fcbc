/**
 * What bears hard wear (table tops, counters, steps): how many coats of a family do, and which families never do by
 * themselves. Typical figures and cautious ones; the label of the product decides.
 */
import { FAMILIES } from "./families.ts";
import type { FamilyName } from "./family-names.ts";
import type { Family } from "./family-schema.ts";

/** Film-forming coats for hard wear, of most families. */
const FILM_COATS = 3;
/** Two-part films, and oil with hard wax as it is laid on floors and worktops. */
const TOUGH_COATS = 2;
/** A coat that is wiped off leaves about half of a brushed one. */
const WIPED_SHARE = 0.5;

/**
 * The share of a hard-wearing finish that one coat is, from 0 to 1: where the coats of a surface add up to 1, it bears
 * hard wear. Common practice, no source: three coats of a varnish, clear or enamel, two of what cures by reaction or
 * of hardwax oil, and two wiped coats for a brushed one.
 */
export function wearShare(row: Family, isWiped: boolean): number {
  if (row.binder === "oil and wax") return 1 / TOUGH_COATS;
  if (!isWearFilm(row)) return 0;
  const brushed = row.twoPart || row.drying === "reacting" ? 1 / TOUGH_COATS : 1 / FILM_COATS;
  return isWiped ? brushed * WIPED_SHARE : brushed;
}

/** A clear or an enamel; paint so porous that it needs a clear is none. */
const isWearFilm = (row: Family): boolean =>
  row.buildsFilm && (row.role === "clear" || (row.role === "paint" && !row.needsClear));

/** Families that bear hard wear by themselves, the most usual first, for texts that say what to use instead. */
export const WEARS_HARD: readonly FamilyName[] = (
  ["oil polyurethane", "waterborne polyurethane", "hardwax oil", "conversion varnish"] as const
).filter((name) => wearShare(FAMILIES.get(name)!, false) > 0);

/** What alcohol or heat spoils when it is the last layer: shellac by both, lacquer and wax by heat. From memory, confidence high. */
export const spoiltBy = (row: Family): readonly ("alcohol" | "heat")[] => {
  if (row.binder === "shellac") return ["alcohol", "heat"];
  if (row.role === "wax") return ["heat"];
  // A spill wiped up in time does not reach through an enamel, which alcohol softens slowly.
  return row.role !== "paint" && row.dissolvedBy.includes("alcohol") ? ["alcohol"] : [];
};

/** What stands up to alcohol and heat as the last layer, for texts that say what to use instead. From memory, confidence high. */
export const STANDS_ALCOHOL_AND_HEAT: readonly FamilyName[] = [
  "oil polyurethane",
  "waterborne polyurethane",
  "conversion varnish",
];
