/**
 * What the rules on layers and wear ask of the coats of a surface: what a wet layer gets at, what stands up to wear,
 * what an unknown finish may be, and the lines that put a barrier or a scuffing between two coats.
 */
import { type DutyWord, materialDuties } from "../knowledge/duties.ts";
import { worstFamilies } from "../knowledge/existing.ts";
import { family } from "../knowledge/families.ts";
import type { FamilyName } from "../knowledge/family-names.ts";
import type { Family } from "../knowledge/family-schema.ts";
import { samePlace } from "../place.ts";
import type { Action } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { type Coat, isFilm } from "../surface/state.ts";
import { isStated } from "./duty-check.ts";

/**
 * What a coat may be made of: its family, or for an unknown old finish every finish it may be by its tests. Wax over an unknown
 * finish is left out: it is said, or the state of the surface has it.
 */
export function familiesOf(coat: Coat): readonly Family[] {
  if (coat.family) return [coat.family];
  if (coat.mayBe) return coat.mayBe;
  return coat.unknown
    ? worstFamilies(`unknown ${coat.unknown}`).filter((candidate) => candidate.role !== "wax")
    : [];
}

/** The coats that a wet layer gets at, from the top: down through what builds no film, to the first film with it. */
export function reachedCoats(layers: readonly Coat[]): readonly Coat[] {
  const film = layers.findLastIndex(isFilm);
  return layers.slice(Math.max(film, 0)).toReversed();
}

/** Paint so porous that oil and stain soak in and the next coat holds without scuffing. */
/** Dry dust of nitrocellulose burns, and the motor of a vacuum cleaner can light it: common practice, no source. */
export const burnsDry = (coat: Coat): boolean => coat.family?.binder === "nitrocellulose";

export const isPorousPaint = (coat: Coat): boolean => coat.family?.role === "paint" && coat.family.needsClear;

/** A layer that dissolves the one below and is of its kind becomes one film with it: shellac, lacquer. */
export const meltsInto = (over: Family, below: Family): boolean =>
  over.binder === below.binder && below.dissolvedBy.includes(over.carrier);

/** The slick stuff that the surface is made of, where that is known: by the piece, or by what the recipe is for. */
export function slickSubstrate(run: SurfaceRun): "laminate" | "metal" | undefined {
  const kinds: readonly string[] = run.surface ? [run.surface.substrate.kind] : (run.recipe?.forKinds ?? []);
  if (kinds.length === 0 || !kinds.every((kind) => kind === "laminate" || kind === "metal")) return undefined;
  return kinds.includes("laminate") ? "laminate" : "metal";
}

/** What a slick surface is of, as its piece says it: `melamine`, `brass`; else its kind. */
export const slickName = (run: SurfaceRun): string | undefined =>
  slickSubstrate(run) && (run.surface?.substrate.name.toLowerCase() ?? slickSubstrate(run));

/** The action that put a coat on, for findings on how a surface is left. */
export const actionOf = (run: SurfaceRun, coat: Coat): Action | undefined =>
  coat.action ?? run.moments.findLast(({ action }) => samePlace(action.place, coat.place))?.action;

/** The safety line, or none, that a fix needs above what it puts in, if the recipe does not state those duties already. */
export function safetyLine(action: Action, duties: readonly DutyWord[]): readonly string[] {
  const missing = duties.filter((duty) => !isStated(action, duty));
  return missing.length === 0 ? [] : [`safety ${missing.join(", ")}`];
}

export const dutiesOf = (name: FamilyName): readonly DutyWord[] =>
  materialDuties(family(name)).map(({ duty }) => duty);

/** A coat of dewaxed shellac, dry enough to be coated. */
export const barrierLines = (action: Action): readonly string[] => [
  ...safetyLine(action, dutiesOf("dewaxed shellac")),
  "layer dewaxed_shellac",
  "wait  until recoat",
];

/** A coat of bonding primer, dry enough to be painted. */
export const primerLines = (action: Action): readonly string[] => [
  ...safetyLine(action, dutiesOf("bonding primer")),
  "layer bonding_primer",
  "wait  until recoat",
];

/** A coat of primer without water, for metal that rusts, ready for any paint. */
export const metalPrimerLines = (action: Action): readonly string[] => [
  ...safetyLine(action, [...dutiesOf("alkyd primer"), "dust_mask"]),
  "layer alkyd_primer",
  "wait  until cured",
  "step  scuff 220",
  "step  dust",
];

export const dewaxLines = (action: Action): readonly string[] => [
  ...safetyLine(action, dutiesOf("mineral spirits")),
  "step  dewax with mineral_spirits",
];

export const scuffLines = (action: Action): readonly string[] => [
  ...safetyLine(action, ["dust_mask"]),
  "step  scuff 220",
  "step  dust",
];

/** A coat of shellac primer, which keeps tannin and the resin of knots back. */
export const stainBlockLines = (action: Action): readonly string[] => [
  ...safetyLine(action, dutiesOf("shellac primer")),
  "layer shellac_primer",
  "wait  until recoat",
];
