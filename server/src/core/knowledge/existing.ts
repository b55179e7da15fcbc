/**
 * Old finishes: what an `unknown clear` or `unknown paint` may be, by the age of the piece.
 *
 * Likelihoods are rough and change no finding: rules take the worst of every family in question. Only a test shows
 * what an old finish is; for lead see `lead.ts`.
 */
import { family } from "./families.ts";
import type { FamilyName } from "./family-names.ts";
import type { Family } from "./family-schema.ts";
import { MEMORY_MEDIUM } from "./sources.ts";

export type UnknownFinish = "unknown clear" | "unknown paint";
export type Likelihood = "likely" | "possible" | "unlikely";

export interface PossibleFinish {
  readonly family: FamilyName;
  readonly likelihood: Likelihood;
  readonly reason: string;
  readonly source: string;
}

interface Era {
  readonly family: FamilyName;
  /** First and last year in which it was the usual thing. */
  readonly from?: number;
  readonly to?: number;
  readonly reason: string;
}

const CLEAR_ERAS: readonly Era[] = [
  { family: "waxed shellac", to: 1930, reason: "Shellac and French polish before about 1930." },
  { family: "drying oil", to: 1900, reason: "Oil on country and workshop furniture." },
  { family: "oil varnish", to: 1950, reason: "Oil varnish on hard-used furniture before about 1950." },
  {
    family: "nitrocellulose lacquer",
    from: 1925,
    to: 1990,
    reason: "Factory furniture from about 1925 on is mostly nitrocellulose lacquer.",
  },
  { family: "oil polyurethane", from: 1960, reason: "Polyurethane at home from about 1960 on." },
  {
    family: "precatalyzed lacquer",
    from: 1980,
    reason: "Factory furniture from about 1980 on is often a catalysed lacquer.",
  },
  { family: "conversion varnish", from: 1970, reason: "Kitchens and contract furniture from about 1970 on." },
  { family: "waterborne polyurethane", from: 1990, reason: "Waterborne clears from about 1990 on." },
  { family: "paste wax", reason: "Wax over any of them, at any time." },
];

const PAINT_ERAS: readonly Era[] = [
  { family: "milk paint", to: 1900, reason: "Casein paint on country furniture before about 1900." },
  { family: "alkyd paint", to: 1990, reason: "Oil paint, then alkyd paint, until about 1990." },
  {
    family: "nitrocellulose lacquer",
    from: 1925,
    to: 1990,
    reason: "Coloured lacquer on factory furniture from about 1925 on.",
  },
  { family: "acrylic paint", from: 1955, reason: "Latex and acrylic paint from about 1955 on." },
  { family: "paste wax", reason: "Wax over any of them, at any time." },
];

/** What an unknown old finish may be on a piece built in this year, the likeliest first. */
export function possibleFinishes(what: UnknownFinish, built?: number): readonly PossibleFinish[] {
  const order: readonly Likelihood[] = ["likely", "possible", "unlikely"];
  return (what === "unknown clear" ? CLEAR_ERAS : PAINT_ERAS)
    .map((era) => ({
      family: era.family,
      likelihood: likelihood(era, built),
      reason: era.reason,
      source: `history of furniture finishes, ${MEMORY_MEDIUM}`,
    }))
    .sort((a, b) => order.indexOf(a.likelihood) - order.indexOf(b.likelihood));
}

/** Every family that a rule must try for an unknown finish: the finding of the worst of them counts. */
export function worstFamilies(what: UnknownFinish): readonly Family[] {
  return possibleFinishes(what).map((finish) => family(finish.family));
}

/** A later owner may have refinished any piece, so a later finish is possible and an earlier one unlikely. */
function likelihood(era: Era, built: number | undefined): Likelihood {
  if (built === undefined || (era.from === undefined && era.to === undefined)) return "possible";
  if (era.to !== undefined && built > era.to) return "unlikely";
  if (era.from !== undefined && built < era.from) return "possible";
  return "likely";
}
