/**
 * The state a surface starts from: what the piece describes, what an earlier job left, or, for a recipe that is run
 * by itself, a surface of which nothing is known.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { familyByName } from "../knowledge/families.ts";
import type { Family } from "../knowledge/family-schema.ts";
import { narrowedClear } from "../knowledge/spot-tests.ts";
import type { ExistingCoat, Surface } from "../model/model.ts";
import type { Place } from "../place.ts";
import { familyTimes } from "./drying-time.ts";
import {
  CLOCK_START,
  type Clock,
  type Coat,
  LONG_AGO,
  type PutOn,
  type SurfaceState,
  waitedOf,
} from "./state.ts";

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
  clock: CLOCK_START,
  nextSerial: 1,
  wax: undefined,
  silicone: undefined,
  grease: undefined,
  residue: undefined,
  dust: undefined,
  raised: undefined,
  wet: undefined,
  bleached: undefined,
  distressed: undefined,
};

/** Nothing is known of the surface, and rules that depend on it stay silent. */
export const ASSUMED_STATE: SurfaceState = { ...EMPTY, openBelow: true };

/** The layer that a spot test reaches: the topmost that is no wax, for a test is made through it. */
export const finishOnTop = (existing: readonly ExistingCoat[]): ExistingCoat | undefined =>
  existing.findLast(({ what }) => familyByName(what)?.role !== "wax");

/** What the unknown clear on top of a surface may be by its tests; undefined where they leave it as open as before. */
export function testedFamilies(surface: Surface): readonly Family[] | undefined {
  return finishOnTop(surface.existing)?.what === "unknown clear"
    ? narrowedClear((surface.tested ?? []).map(({ value }) => value))
    : undefined;
}

/** The surface as its piece describes it: a used surface has grease on it until it is cleaned. */
export function describedState(surface: Surface): SurfaceState {
  const onTop = finishOnTop(surface.existing);
  const byTests = testedFamilies(surface);
  const layers = surface.existing.flatMap((existing): readonly Omit<Coat, "serial">[] => {
    const unknown =
      existing.what === "unknown clear" ? "clear" : existing.what === "unknown paint" ? "paint" : undefined;
    const family = unknown ? undefined : familyByName(existing.what);
    const coat: Omit<Coat, "serial"> = {
      origin: "existing",
      what:
        unknown === "clear" ? t`an unknown clear` : unknown === "paint" ? t`an unknown paint` : existing.what,
      ...(family ? { family } : {}),
      ...(unknown ? { unknown } : {}),
      ...(byTests && existing === onTop ? { mayBe: byTests } : {}),
      place: existing.place,
      wiped: false,
      toner: false,
      since: LONG_AGO,
      reached: [],
      drying: familyTimes(family),
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
    grease: top && { place: surface.existingPlace ?? top.place },
    wax: top?.family?.role === "wax" ? { place: top.place, drivenIn: false } : undefined,
  };
}

/** What is on a surface only while it is being worked on, and is not there once it has been in use. */
const inWork = (final: SurfaceState, since: (putOn: PutOn) => Clock): Partial<SurfaceState> => ({
  abrasions: final.abrasions,
  fillings: final.fillings.map((filling) => ({ ...filling, since: since(filling) })),
  masks: final.masks,
  removed: final.removed,
  tests: final.tests,
  grease: final.grease,
  residue: final.residue,
  dust: final.dust,
  raised: final.raised,
  wet: final.wet && { ...final.wet, since: since(final.wet) },
  bleached: final.bleached,
});

/** A finished surface that was left for longer than this counts as used: 30 days. */
const UNUSED_H = 30 * 24;

/**
 * What an earlier job left. `gapHours` is the time between the two (undefined: not known, `"years"`: long ago). A finish
 * that was in use since is greasy, and as smooth again as hands and cloths make it; nothing of the work is left on it.
 */
export function leftState(
  final: SurfaceState,
  gapHours: number | "years" | undefined,
  place: Place,
): SurfaceState {
  const since = (putOn: PutOn): Clock => {
    if (gapHours === "years" || putOn.since === LONG_AGO) return LONG_AGO;
    const { hours, open, closed } = waitedOf(final, putOn);
    // The clock of the later job begins anew.
    return {
      hours: -hours - (gapHours ?? 0),
      unknown: open || gapHours === undefined ? -1 : 0,
      closed: -closed,
    };
  };
  const isLongAgo = gapHours === "years" || (gapHours !== undefined && gapHours > UNUSED_H);
  const wasUsed = isLongAgo && final.layers.length > 0;
  return {
    ...EMPTY,
    certain: final.certain,
    openBelow: final.openBelow,
    layers: final.layers.map((coat) => ({
      ...coat,
      origin: coat.origin === "new" ? ("earlier job" as const) : coat.origin,
      since: since(coat),
      ...(isLongAgo ? { abrasions: [] } : {}),
    })),
    nextSerial: final.nextSerial,
    woodTakenMm: final.woodTakenMm,
    settled: final.settled,
    wax: final.wax,
    silicone: final.silicone,
    distressed: final.distressed,
    ...(gapHours === "years" || wasUsed ? {} : inWork(final, since)),
    ...(wasUsed ? { grease: { place } } : {}),
  };
}
