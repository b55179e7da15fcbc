/**
 * The coat or filling that a wait counts from, and how long it needs in the air of a shop. What a hover says in full
 * sentences and an inlay hint in two words comes from here, so that the two never differ.
 */
import type { Material } from "../core/model/model.ts";
import { factorOf, labelHours } from "../core/surface/simulate.ts";
import { lastPutOn, type Stage, type SurfaceState, waitedOf } from "../core/surface/state.ts";

export interface Anchor {
  readonly name: string;
  readonly material?: Material;
  /** Hours since it was put on, as far as they are stated. */
  readonly waited: number;
}

/** The last coat or filling, from whose end `until` counts; by the name of the material where a parameter stands for it. */
export function anchorIn(state: SurfaceState): Anchor | undefined {
  const last = lastPutOn(state);
  if (!last) return undefined;
  const { name, material } = "use" in last ? last.use : { name: last.what, material: last.material };
  return {
    name: material?.name ?? name,
    waited: waitedOf(state, last).hours,
    ...(material ? { material } : {}),
  };
}

export type Air = { readonly temperature: number; readonly humidity?: number } | undefined;

export interface NeededTime {
  /** As the label states it, or the family. */
  readonly label: number;
  /** How much the air lengthens it. */
  readonly factor: number;
  /** The two multiplied. */
  readonly hours: number;
  /** Why the air lengthens it, in a sentence; empty where it does not. */
  readonly reason: string;
}

/** Undefined where neither the material nor its family states a time for this stage. */
export function neededTime(air: Air, material: Material, stage: Stage): NeededTime | undefined {
  const label = labelHours(material, stage);
  if (label === undefined) return undefined;
  const { factor, reason } = factorOf({ ...(air ? { air } : {}) }, material);
  return { label, factor, hours: label * factor, reason };
}
