/**
 * The uppermost film of a surface: the new coats of one family together, for the rules of film thickness.
 */
import type { Family } from "../knowledge/family-schema.ts";
import { type Coat, isFilm, type SurfaceState } from "../surface/state.ts";

export interface FilmStack {
  readonly family: Family;
  /** From the first coat up. */
  readonly coats: readonly Coat[];
  /** Dry film of the coats together, micrometres; with `open` only what is known of it. */
  readonly um: number;
  readonly open: boolean;
}

/** The new coats of one family that make the uppermost film; wax, stains and what is wiped off make none. */
export function stackOf(state: SurfaceState): FilmStack | undefined {
  const coats: Coat[] = [];
  let open = false;
  for (let place = state.layers.length - 1; place >= 0; place -= 1) {
    const coat = state.layers[place]!;
    if (coat.origin !== "new") break;
    if (coat.family && !isFilm(coat)) continue;
    if (!coat.family) {
      open = true;
      break;
    }
    if (coats[0] && coats[0].family !== coat.family) break;
    open ||= coat.filmUm === undefined;
    coats.push(coat);
  }
  const family = coats[0]?.family;
  return (
    family && {
      family,
      coats: coats.reverse(),
      um: coats.reduce((sum, coat) => sum + (coat.filmUm ?? 0), 0),
      open,
    }
  );
}
