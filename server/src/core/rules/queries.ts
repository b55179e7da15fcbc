/**
 * Questions about a run that several rules ask: what lies below, what the surface is made of, what was sanded last.
 */
import type { Wood } from "../knowledge/wood-schema.ts";
import { woodByName } from "../knowledge/woods.ts";
import { onceFor } from "../once.ts";
import type { Action, LayerAction, StepAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { isLayer, lastIndexOf } from "../surface/run-index.ts";
import { type Coat, hasReached, isBare, type Moment, type SurfaceState, topCoat } from "../surface/state.ts";
import { isStated } from "./duty-check.ts";
import { isOtherPart } from "./spoken-words.ts";

/** The wood of the surface; undefined for sheet goods and metal, and where nothing is known of the surface. */
export const woodOf = (run: SurfaceRun): Wood | undefined =>
  run.surface?.substrate.kind === "species" ? woodByName(run.surface.substrate.name) : undefined;

/** Whether a layer is a stain straight on bare wood that drinks it unevenly. */
export const blotches = ({ use, toner }: LayerAction, before: SurfaceState, run: SurfaceRun): boolean =>
  use.material?.family?.role === "stain" && !toner && woodOf(run)?.blotchProne === true && isBare(before);

/** Whether the surface is of wood, veneer or a board of wood, whose grain can rise. */
export function isWooden(run: SurfaceRun): "yes" | "no" | "unknown" {
  const kind = run.surface?.substrate.kind;
  if (kind !== undefined) {
    if (kind === "unknown") return "unknown";
    return kind === "laminate" || kind === "metal" ? "no" : "yes";
  }
  const kinds = run.recipe?.forKinds ?? [];
  if (kinds.length > 0 && kinds.every((word) => word === "wood" || word === "veneer")) return "yes";
  return kinds.length > 0 && kinds.every((word) => word === "laminate" || word === "metal")
    ? "no"
    : "unknown";
}

/** `steel` or `iron` where the surface is bare of what keeps rust away by itself. */
export const rustingMetal = onceFor(({ surface, piece }: SurfaceRun): "steel" | "iron" | undefined => {
  const { substrate } = surface ?? {};
  if (substrate?.kind !== "metal") return undefined;
  const name = substrate.name.toLowerCase();
  if (name === "steel" || name === "iron") return name;
  if (name !== "metal") return undefined;
  const words = `${piece?.title ?? ""}. ${piece?.docs ?? ""}. ${surface?.docs ?? ""}`;
  if (/\b(?:stainless|galvani[sz]ed|zinc|chromed?|chromium|plated|brass|alumini?um|bronze)\b/iu.test(words))
    return undefined;
  const [said] = /\b(?:steel|iron)\b/iu.exec(words) ?? [];
  return said?.toLowerCase() as "steel" | "iron" | undefined;
});

/** Verbs that rub or cut a surface and throw its dust. */
export const ABRADING_VERBS: ReadonlySet<string> = new Set(["sand", "scuff", "scrape", "distress"]);

/** Verbs after which the scratches of an earlier sanding no longer count for the next, or not in the same way. */
const NEW_SURFACE = ["strip", "scrape"];
const REWORKED = [...NEW_SURFACE, "fill", "repair", "distress", "buff"];
/** Verbs that wet or wipe the surface: its scratches stay, but the next sanding may have another purpose. */
const WASHED = ["dampen", "clean", "dewax", "bleach"];

/** The sanding whose scratches the surface shows now; undefined when a layer or a stripping came since. */
export const lastSanding = (run: SurfaceRun, index: number): StepAction | undefined =>
  sandingBefore(run, index, NEW_SURFACE);

/** The sanding that the one at `index` goes on from: nothing but dusting, waiting and looking came between. */
export const sandingJustBefore = (run: SurfaceRun, index: number): StepAction | undefined =>
  sandingBefore(run, index, [...REWORKED, ...WASHED]);

/** The sanding whose scratches the one at `index` finds all over the surface, washed since or not. */
export const sandingFound = (run: SurfaceRun, index: number): StepAction | undefined =>
  sandingBefore(run, index, REWORKED);

function sandingBefore(run: SurfaceRun, index: number, stops: readonly string[]): StepAction | undefined {
  for (let at = index - 1; at >= 0; at -= 1) {
    const action = run.moments[at]!.action;
    if (action.op === "layer" || action.op === "open") return undefined;
    if (action.op !== "step") continue;
    if (action.verb === "sand" || action.verb === "scuff") return action;
    if (stops.includes(action.verb)) return undefined;
  }
  return undefined;
}

/** The last grit of a sanding, where all its grits are known. */
export const lastGrit = (sanding: StepAction | undefined): number | undefined =>
  sanding?.gritsKnown ? sanding.grits.at(-1) : undefined;

/**
 * The coats that give the surface its colour: the topmost, and where parts of the surface were masked when it went on,
 * those below it that still show there. Nothing is known below a coat that is not known.
 */
export function colouredCoats(state: SurfaceState): readonly Coat[] {
  const shown: Coat[] = [];
  for (let place = state.layers.length - 1; place >= 0; place -= 1) {
    const coat = state.layers[place]!;
    if (coat.unknown === "clear") continue;
    if (!coat.family) break;
    if (!["paint", "primer", "stain", "glaze"].includes(coat.family.role)) continue;
    shown.push(coat);
    if (coat.masked.every(isOtherPart)) break;
  }
  return shown;
}

/** Lines of a fix that sand the surface and take the dust off, with the mask where none is stated. */
export function sandingLines(action: LayerAction | StepAction, ...grits: readonly number[]): string[] {
  return [
    ...(isStated(action, "dust_mask") ? [] : ["safety dust_mask"]),
    `step  sand ${grits.join(", ")}`,
    "step  dust",
  ];
}

/** The next layer over this coat comes before its recoat time. */
export function isCoatedTooEarly(run: SurfaceRun, index: number, coat: Coat): boolean {
  const next = nextMoment(run, index, isLayer);
  const below = next && topCoat(next.before);
  if (!next || below?.serial !== coat.serial) return false;
  return hasReached(next.before, below, "recoat") === "no";
}

/** The first moment after `index` of a sort; the sort must be a function that is made once. */
export function nextMoment(
  run: SurfaceRun,
  index: number,
  isWanted: (action: Action) => boolean,
): Moment<Action> | undefined {
  const last = lastIndexOf(run, isWanted);
  for (let at = index + 1; at <= last; at += 1) if (isWanted(run.moments[at]!.action)) return run.moments[at];
  return undefined;
}
