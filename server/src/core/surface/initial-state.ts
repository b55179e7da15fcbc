/**
 * The state a surface starts from: what the piece describes, what an earlier job left, or, for a recipe that is run
 * by itself, a surface of which nothing is known.
 */
import { familyByName } from "../knowledge/families.ts";
import type { Surface } from "../model/model.ts";
import type { Place } from "../place.ts";
import { type Coat, LONG_AGO, NO_WAIT, type SurfaceState, type Waited } from "./state.ts";

const EMPTY: SurfaceState = {
  certain: true,
  openBelow: false,
  layers: [],
  settled: false,
  abrasions: [],
  woodTakenMm: 0,
  fillings: [],
  masks: [],
  removed: [],
  tests: [],
  clock: NO_WAIT,
  nextSerial: 1,
};

/** Nothing is known of the surface, and rules that depend on it stay silent. */
export const ASSUMED_STATE: SurfaceState = { ...EMPTY, openBelow: true };

/** The surface as its piece describes it: a used surface has grease on it until it is cleaned. */
export function describedState(surface: Surface): SurfaceState {
  const layers = surface.existing.flatMap((existing): readonly Omit<Coat, "serial">[] => {
    const unknown =
      existing.what === "unknown clear" ? "clear" : existing.what === "unknown paint" ? "paint" : undefined;
    const family = unknown ? undefined : familyByName(existing.what);
    const coat: Omit<Coat, "serial"> = {
      origin: "existing",
      what: unknown ? `an unknown ${unknown}` : existing.what,
      ...(family ? { family } : {}),
      ...(unknown ? { unknown } : {}),
      place: existing.place,
      wiped: false,
      toner: false,
      waited: LONG_AGO,
      factor: 1,
      factorReason: "",
      masked: [],
      abrasions: [],
    };
    return Array.from({ length: Math.min(existing.coats, 100) }, () => coat);
  });
  const numbered = layers.map((coat, i) => ({ ...coat, serial: i + 1 }));
  const top = numbered[numbered.length - 1];
  return {
    ...EMPTY,
    layers: numbered,
    nextSerial: numbered.length + 1,
    ...(top ? { grease: { place: surface.existingPlace ?? top.place } } : {}),
    ...(top?.family?.role === "wax" ? { wax: { place: top.place, drivenIn: false } } : {}),
  };
}

/** What is on a surface only while it is being worked on, and is not there years later. */
const inWork = (final: SurfaceState, wait: (waited: Waited) => Waited): Partial<SurfaceState> => ({
  abrasions: final.abrasions,
  fillings: final.fillings.map((filling) => ({ ...filling, waited: wait(filling.waited) })),
  masks: final.masks,
  removed: final.removed,
  tests: final.tests,
  ...(final.grease ? { grease: final.grease } : {}),
  ...(final.residue ? { residue: final.residue } : {}),
  ...(final.dust ? { dust: final.dust } : {}),
  ...(final.raised ? { raised: final.raised } : {}),
  ...(final.wet ? { wet: { ...final.wet, waited: wait(final.wet.waited) } } : {}),
  ...(final.bleached ? { bleached: final.bleached } : {}),
});

/**
 * What an earlier job left. `gapHours` is the time between the two (undefined: not known, `"years"`: long ago); a
 * surface that was in use since is greasy, which is taken to begin after 30 days.
 */
export function leftState(
  final: SurfaceState,
  gapHours: number | "years" | undefined,
  place: Place,
): SurfaceState {
  const wait = (waited: Waited): Waited =>
    gapHours === "years"
      ? LONG_AGO
      : gapHours === undefined
        ? { ...waited, open: true }
        : { ...waited, hours: waited.hours + gapHours };
  const inUse = gapHours === "years" || (gapHours !== undefined && gapHours > 30 * 24);
  return {
    ...EMPTY,
    certain: final.certain,
    openBelow: final.openBelow,
    layers: final.layers.map((coat) => ({
      ...coat,
      origin: coat.origin === "new" ? ("earlier job" as const) : coat.origin,
      waited: coat.waited === LONG_AGO ? LONG_AGO : wait(coat.waited),
      ...(gapHours === "years" ? { abrasions: [] } : {}),
    })),
    nextSerial: final.nextSerial,
    woodTakenMm: final.woodTakenMm,
    settled: final.settled,
    ...(final.wax ? { wax: final.wax } : {}),
    ...(final.silicone ? { silicone: final.silicone } : {}),
    ...(final.distressed ? { distressed: final.distressed } : {}),
    ...(gapHours === "years" ? {} : inWork(final, wait)),
    ...(inUse && final.layers.length > 0 ? { grease: { place } } : {}),
  };
}
