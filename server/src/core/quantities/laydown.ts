/**
 * How much of a coat a way of working leaves on the piece, as a share of what a brush lays at the label's rate.
 *
 * A label's spreading rate is that of a full coat. A polisher's pad leaves a fraction of it, a cloth with varnish about
 * half, and flooding more than it, whose surplus is wiped off. The share holds for litres, film and vapour.
 * Overspray is another thing: it leaves the can and never reaches the piece, so it is divided out as transfer efficiency.
 * What is wiped off again has been put on first, so its litres are the label's.
 *
 * All that leaves the can counts as evaporating in the room, cautiously: what is laid, the overspray, and what is wiped
 * off, which leaves with the rags and evaporates from them as well unless they are closed in (mass balance: Michigan
 * Department of Environmental Quality, Emission Calculation Fact Sheet, coating operations, by which all volatiles of
 * a coating are emitted into the air). So a job's grams and its room's are of the same litres.
 */
import type { Binder, Family } from "../knowledge/family-schema.ts";
import { PRACTICE } from "../knowledge/sources.ts";
import { wetFilmUm } from "./film.ts";

export interface Laydown {
  /** Of a coat brushed at the label's rate; above 0. */
  readonly share: number;
  /** What the sum calls it; empty for a full coat. */
  readonly name: string;
  readonly source: string;
}

const FULL: Laydown = { share: 1, name: "", source: "the label's spreading rate" };

/** Each way of laying a coat that is not the brushed one that a label's rate is for. */
export const LAYDOWNS = {
  /** Shellac from a polisher's pad or rubber: four coats come to one that is brushed. */
  padded: { share: 0.25, name: "a polisher's pad", source: PRACTICE },
  /** Varnish rubbed on with a cloth: two coats come to one that is brushed. */
  wipedOn: { share: 0.5, name: "wiped on", source: PRACTICE },
  /** As much as the surface holds wet until the surplus is wiped off. */
  flooded: { share: 2, name: "flooded", source: PRACTICE },
} as const satisfies Readonly<Record<string, Laydown>>;

/** What of a layer decides how much of it is laid. */
interface LaidCoat {
  readonly use: {
    readonly material?: { readonly family?: Family; readonly covers?: { readonly value: number } };
  };
  readonly method: string;
  readonly wiped: boolean;
  readonly laid?: "thin" | "mist" | "full" | "flooded";
  readonly wetUm?: number;
  readonly session?: true;
}

/**
 * The laydown of a coat. A stated wet film stands as it is. A session of French polishing is many passes, which together
 * come to about a brushed coat (common practice, no source). Wiping varnish, oil, stain and wax have a cloth's rate on
 * their labels.
 */
export function laydownOf({ use, method, wiped, laid, wetUm, session }: LaidCoat): Laydown {
  if (wetUm !== undefined || session) return FULL;
  if (laid === "flooded") return LAYDOWNS.flooded;
  const family = use.material?.family;
  if (family === undefined || laid === "full") return FULL;
  if (isPolished(family, method)) return LAYDOWNS.padded;
  return !wiped && isWipedOn(family, method) ? LAYDOWNS.wipedOn : FULL;
}

/** Wet film of a coat in µm: as stated, else of the label's rate and the way it is laid; undefined when neither is known. */
export function coatWetUm(layer: LaidCoat): number | undefined {
  const covers = layer.use.material?.covers?.value;
  return layer.wetUm ?? (covers === undefined ? undefined : wetFilmUm(covers) * laydownOf(layer).share);
}

/** Whether a polisher's pad, cloth or rubber lays shellac, far thinner than a brush and in a great many coats. */
export const isPolished = (family: Family, method: string): boolean =>
  family.binder === "shellac" && POLISHERS.has(method);

const isWipedOn = (family: Family, method: string): boolean =>
  CLOTHS.has(method) && BRUSHING_VARNISHES.has(family.binder) && family.name !== "wiping varnish";

const POLISHERS: ReadonlySet<string> = new Set(["pad", "cloth", "rubber"]);
const CLOTHS: ReadonlySet<string> = new Set(["cloth", "rubber"]);
const BRUSHING_VARNISHES: ReadonlySet<Binder> = new Set(["oil varnish", "oil-modified urethane"]);
