/**
 * How much wear the finish of a surface bears once a run is over, for the rules on wear.
 */
import type { Family } from "../knowledge/family-schema.ts";
import { wearShare } from "../knowledge/wear.ts";
import { onceFor } from "../once.ts";
import type { SurfaceRun } from "../surface/run.ts";
import type { Coat } from "../surface/state.ts";

export interface WearingCoats {
  /** The last new coat that bears wear; without one, the last new coat. */
  readonly last: Coat;
  /** What the coats bear together: 1 is enough for hard wear, 0 where none of them bears any. */
  readonly worth: number;
}

/** An old finish of which nothing is known counts as one coat of a varnish. */
const UNKNOWN_WORTH = 1 / 3;
/** One coat of a primer counts as a coat of the paint above it. */
const PRIMER_WORTH = 1 / 3;

/** The share of a hard-wearing finish that this coat is, from 0 to 1. */
export const worthOfCoat = (coat: Coat): number =>
  coat.unknown ? UNKNOWN_WORTH : coat.family ? wearShare(coat.family, coat.wiped) : 0;

/**
 * The coats that bear the wear of a surface, from the top down to what they hide. Undefined where nothing new ends the
 * work, where another recipe goes on, or where a material is not known.
 */
export const wearingCoats = onceFor((run: SurfaceRun): WearingCoats | undefined => {
  const { certain } = run.final;
  // Of `x 2 to 3` only two are sure to go on, and a mist covers nothing.
  const layers = run.final.layers.filter(({ action }) => !action?.ifNeeded && action?.laid !== "mist");
  if (run.continued || !certain || layers.some((coat) => !coat.family && !coat.unknown)) return undefined;
  const wearing = topDown(layers);
  const last =
    wearing.find((coat) => coat.origin === "new" && worthOfCoat(coat) > 0) ??
    layers.findLast((coat) => coat.origin === "new");
  if (!last) return undefined;
  const isPainted = wearing.some((coat) => isPaint(coat.family));
  const primer = isPainted && wearing.some(({ family }) => family?.role === "primer") ? PRIMER_WORTH : 0;
  const worth = primer + wearing.reduce((sum, coat) => sum + worthOfCoat(coat), 0);
  // A film that stood up to wear before the work does so under new wax or a stain that freshens it.
  const isLasting = !wearing.some((coat) => coat.origin === "new" && worthOfCoat(coat) > 0) && worth > 0;
  return { last, worth: isLasting ? 1 : worth };
});

const isPaint = (family: Family | undefined): boolean => family?.role === "paint";

/** From the top: clears under a stain that soaked in or under paint do not take the wear, nor what is under porous paint. */
function topDown(layers: readonly Coat[]): readonly Coat[] {
  const wearing: Coat[] = [];
  for (const coat of layers.toReversed()) {
    const { family, toner } = coat;
    const role = family?.role;
    if ((role === "stain" && !toner) || (isPaint(family) && family!.needsClear)) break;
    const painted = wearing.some((above) => isPaint(above.family) || above.family?.role === "primer");
    if (painted && !isPaint(family) && role !== "primer" && coat.unknown !== "paint") break;
    wearing.push(coat);
  }
  return wearing;
}
