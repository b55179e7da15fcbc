/**
 * What a run knows about lead: the age of the piece, the country of the shop, the stated result, and which old coats
 * may hold it.
 */
import type { LeadFacts } from "../knowledge/lead.ts";
import type { SurfaceRun } from "./run.ts";
import type { Coat } from "./state.ts";

export const leadFactsOf = ({ piece, shop, surface, job }: SurfaceRun): LeadFacts => ({
  built: piece?.built?.value,
  country: shop?.country?.value,
  result: surface?.lead?.value,
  begins: job?.start?.date,
});

export type OldCoating = "paint" | "clear";

/**
 * Whether a coat was there before any job of these files, and is a paint, which lead coloured and dried, or a clear,
 * which lead driers may have dried (24 CFR 35.110 counts varnish, shellac and stain among coatings).
 */
export function oldCoating({ origin, unknown, family }: Coat): OldCoating | undefined {
  if (origin !== "existing") return undefined;
  if (unknown) return unknown;
  if (family?.role === "paint" || family?.role === "primer") return "paint";
  return family?.role === "clear" || family?.role === "sealer" ? "clear" : undefined;
}
