/**
 * Chemicals that must not meet, in one vessel or one after the other on the same wood.
 */
import type { Hazard } from "./chemical-schema.ts";
import { NIOSH_GUIDE } from "./sources.ts";

export interface Incompatible {
  readonly one: Hazard;
  readonly other: Hazard;
  /** What comes of it, as one sentence. */
  readonly result: string;
  /** Whether they may meet on wood once the first has soaked in and dried: an acid is the usual rinse after peroxide. */
  readonly onlyWhileWet: boolean;
  readonly source: string;
}

const BLEACH_SOURCE =
  "Washington State Department of Health, Bleach Mixing Dangers, from memory; by way of a secondary page";

export const INCOMPATIBLE: readonly Incompatible[] = [
  {
    one: "chlorine bleach",
    other: "ammonia",
    result: "Chlorine bleach and ammonia give off chloramine gas, which burns the lungs and can kill.",
    onlyWhileWet: false,
    source: BLEACH_SOURCE,
  },
  ...(["strong acid", "weak acid"] as const).map(
    (other): Incompatible => ({
      one: "chlorine bleach",
      other,
      result:
        "Chlorine bleach and acid, even vinegar, give off chlorine gas, which burns the lungs and can kill.",
      onlyWhileWet: false,
      source: BLEACH_SOURCE,
    }),
  ),
  {
    one: "chlorine bleach",
    other: "peroxide",
    result: "Chlorine bleach and peroxide heat up and give off oxygen, which bursts a closed vessel.",
    onlyWhileWet: true,
    source: BLEACH_SOURCE,
  },
  ...(["strong acid", "weak acid"] as const).map(
    (other): Incompatible => ({
      one: "peroxide",
      other,
      result: "Peroxide and acid form peracids, which burn eyes and skin and can react violently.",
      onlyWhileWet: true,
      source: `${NIOSH_GUIDE}; peracetic acid of peroxide and vinegar, by way of a secondary page`,
    }),
  ),
  {
    one: "strong base",
    other: "strong acid",
    result: "Lye and strong acid boil up at once and throw drops that burn and blind.",
    onlyWhileWet: true,
    source: NIOSH_GUIDE,
  },
];

/** What is known of two hazards together, whichever comes first. */
export const incompatible = (some: readonly Hazard[], others: readonly Hazard[]): Incompatible | undefined =>
  INCOMPATIBLE.find(
    ({ one, other }) =>
      (some.includes(one) && others.includes(other)) || (some.includes(other) && others.includes(one)),
  );
