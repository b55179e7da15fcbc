/**
 * The state of one surface at one moment: the stack of layers with their dryness, and what else matters to the next
 * step. Immutable; `simulate` makes a new one for every action.
 *
 * "Open" means not known: in a recipe that is run without a job the existing layers, the wood and open parameters
 * are unknown, and whatever depends on them must stay silent.
 */

import type { Family } from "../knowledge/family-schema.ts";
import type { Material } from "../model/model.ts";
import type { Place } from "../place.ts";
import type { LayerAction, MaterialUse } from "./actions.ts";
import type { DryingTime, DryingTimes, Stage } from "./drying-time.ts";

export type { Stage } from "./drying-time.ts";

/** A reading of a surface's clock, which begins with its recipe and runs on with every time that is stated. */
export interface Clock {
  /** The least that has certainly passed. */
  readonly hours: number;
  /** Waits so far whose length is not known. */
  readonly unknown: number;
  /** Hours besides, for which the shop is surely still closed where work goes on, whenever the task before has ended. */
  readonly closed: number;
}

/** When something was put on. What has passed since is told by the clock of the surface, `waitedOf`. */
export interface PutOn {
  /** The clock at its end; `LONG_AGO` for what has been there for years. */
  readonly since: Clock;
  /** Stages that a `wait until` has reached in so many words. */
  readonly reached: readonly Stage[];
}

/** Time since something was put on. With `open`, `hours` is only the least that has certainly passed. */
export interface Waited {
  readonly hours: number;
  readonly open: boolean;
  readonly reached: readonly Stage[];
  /** Hours besides, for which the shop was surely closed. */
  readonly closed: number;
}

export interface Abrasion {
  readonly verb: "sand" | "scuff";
  /** Grits in order; empty when not known. */
  readonly grits: readonly number[];
  readonly place: Place;
  readonly wet: boolean;
}

export interface Coat extends PutOn {
  /** Counts up over everything ever put on this surface. */
  readonly serial: number;
  readonly origin: "existing" | "earlier job" | "new";
  /** For messages: the material's name, or the family's. */
  readonly what: string;
  /** Undefined where the material is not known. */
  readonly family?: Family;
  readonly material?: Material;
  /** Set for `existing unknown clear` and `existing unknown paint`: rules take the worst. */
  readonly unknown?: "clear" | "paint";
  /** What an unknown clear may be by the spot tests of its surface; absent where they leave it open. */
  readonly mayBe?: readonly Family[];
  /** The line that put it on. */
  readonly place: Place;
  readonly action?: LayerAction;
  readonly wiped: boolean;
  readonly toner: boolean;
  /** How long it needs to each stage, in the air that it was put on in. */
  readonly drying: DryingTimes;
  /** Dry film of this coat, micrometres; 0 where it builds none; undefined when not known. */
  readonly filmUm?: number;
  /** What was masked when it went on, and so shows what lies below. */
  readonly masked: readonly string[];
  /** Abrasions since it went on, oldest first. */
  readonly abrasions: readonly Abrasion[];
}

export interface Filling extends PutOn {
  readonly use: MaterialUse;
  readonly place: Place;
  /** How long it needs to each stage, in the air that it was put on in. */
  readonly drying: DryingTimes;
  readonly sanded: boolean;
  /** Serial of the first coat that can have gone on since. */
  readonly from: number;
}

export interface Masking {
  readonly what: string;
  readonly place: Place;
  /** Serial of the first coat that can have gone on since. */
  readonly from: number;
}

/** Every state has all fields, those that may be absent as `undefined`: rules read thousands of them for an edit. */
export interface SurfaceState {
  /** False after a part of the recipe that is not known: rules stay silent. */
  readonly certain: boolean;
  /** True while what lies under `layers` is not known (assumed surface, not yet stripped). */
  readonly openBelow: boolean;
  /** From the wood up. */
  readonly layers: readonly Coat[];
  /** Wax on the surface; `drivenIn` when it was sanded instead of dissolved. */
  readonly wax?: { readonly place: Place; readonly drivenIn: boolean };
  /** Silicone of a polish on the surface; `inWood` where it got into bare wood, from which a wash no longer takes it. */
  readonly silicone?: { readonly use: MaterialUse; readonly place: Place; readonly inWood: boolean };
  /** The surface is used (has a finish of its own) and was not cleaned yet. */
  readonly grease?: { readonly place: Place };
  /** Stripping or scraping residue that was not cleaned off. */
  readonly residue?: {
    readonly place: Place;
    /** Scraped off dry: sanding or dusting takes it away. */
    readonly dry?: true;
  };
  readonly dust?: { readonly place: Place };
  /** The grain of bare wood is up. */
  readonly raised?: { readonly place: Place };
  /** The grain was raised and sanded down before: it will not rise much again. */
  readonly settled: boolean;
  /** Water on the surface, and when; `inWood` where it went on bare wood. A dry sanding shows that it has dried. */
  readonly wet?: PutOn & { readonly place: Place; readonly inWood: boolean };
  /** Abrasions since the last layer (or the beginning), oldest first. */
  readonly abrasions: readonly Abrasion[];
  /** Wood taken by sanding so far, mm. */
  readonly woodTakenMm: number;
  readonly fillings: readonly Filling[];
  readonly masks: readonly Masking[];
  readonly removed: readonly { readonly what: string; readonly place: Place }[];
  readonly bleached?: { readonly place: Place; readonly use?: MaterialUse; readonly rinsed: boolean };
  /** Worn through to the wood in places, and nothing has gone over these since. */
  readonly distressed?: { readonly place: Place };
  /** Tests made so far (`test "…"`), with their titles. */
  readonly tests: readonly { readonly what: string; readonly place: Place }[];
  /** Time since the first action, as far as the recipe states it. */
  readonly clock: Clock;
  readonly nextSerial: number;
}

/** One action and the surface before and after it. */
export interface Moment<A> {
  readonly action: A;
  readonly before: SurfaceState;
  readonly after: SurfaceState;
  /** Of a `wait until` with something to wait for. */
  readonly dries?: Dries;
}

/** What a `wait until` counts from, and how long that needs; no time is known where its material is not, or states none. */
export interface Dries {
  readonly of: Coat | Filling;
  readonly time?: DryingTime;
}

/** The material of what was put on. */
export const materialOf = (it: Coat | Filling): Material | undefined =>
  "use" in it ? it.use.material : it.material;

export const CLOCK_START: Clock = { hours: 0, unknown: 0, closed: 0 };
/** Existing layers have been there for years. */
export const LONG_AGO: Clock = { hours: -24 * 365 * 5, unknown: 0, closed: 0 };
const EVERY_STAGE: readonly Stage[] = ["touch", "recoat", "cured"];

/** What has passed on this surface since something was put on it. */
export function waitedOf({ clock }: SurfaceState, { since, reached }: PutOn): Waited {
  if (since === LONG_AGO) return { hours: -LONG_AGO.hours, open: false, reached: EVERY_STAGE, closed: 0 };
  return {
    hours: clock.hours - since.hours,
    open: clock.unknown > since.unknown,
    reached,
    closed: clock.closed - since.closed,
  };
}

/** Hours that have surely passed, with those for which the shop was closed. */
export const sureHours = ({ hours, closed }: Waited): number => hours + closed;

/** Whether at least `hours` have passed: "unknown" when only an open wait could have brought them. */
export function hasWaited(waited: Waited, hours: number, stage?: Stage): "yes" | "no" | "unknown" {
  if (sureHours(waited) >= hours - 1e-6) return "yes";
  if (stage && waited.reached.includes(stage)) return "yes";
  return waited.open ? "unknown" : "no";
}

export const topCoat = (state: SurfaceState): Coat | undefined => state.layers[state.layers.length - 1];

/**
 * The layer or filling that `wait until` counts from: the last one of this job, or of the job that it goes on from. Wax
 * that was buffed on is no layer of the recipe, and what was there for years needs no wait.
 */
export function lastPutOn(state: SurfaceState): Coat | Filling | undefined {
  const coat = state.layers.findLast((it) => it.action !== undefined && it.since !== LONG_AGO);
  const filling = state.fillings.at(-1);
  if (!coat || !filling) return coat ?? filling;
  return filling.from > coat.serial ? filling : coat;
}

/** Bare wood for certain: no layers, and nothing unknown below. */
export const isBare = (state: SurfaceState): boolean => state.layers.length === 0 && !state.openBelow;

/** The label's hours for a stage of a coat, lengthened by the shop's air; undefined when the label has no such time. */
export const stageHours = (coat: Coat, stage: Stage): number | undefined => coat.drying[stage]?.hours;

/** Whether a coat of this surface has reached a stage; "unknown" when the material or the time is not known. */
export function hasReached(state: SurfaceState, coat: Coat, stage: Stage): "yes" | "no" | "unknown" {
  if (coat.since === LONG_AGO) return "yes";
  if (coat.reached.includes(stage) || (stage !== "cured" && coat.reached.includes("cured"))) return "yes";
  const hours = stageHours(coat, stage);
  if (hours === undefined) return "unknown";
  return hasWaited(waitedOf(state, coat), hours, stage);
}

/** Builds a film that one can scuff, that seals and that can peel: not wax, oil, stain. */
export const isFilm = (coat: Coat): boolean =>
  coat.unknown !== undefined || (coat.family?.buildsFilm === true && !coat.wiped);

export const isAbradedSince = (coat: Coat): boolean => coat.abrasions.length > 0;
