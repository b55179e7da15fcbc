/**
 * The coat or filling that a wait counts from. What a hover says in full sentences and an inlay hint in two words comes
 * from here, so that the two never differ.
 */
import type { Material } from "../core/model/model.ts";
import type { DryingTimes } from "../core/surface/drying-time.ts";
import { lastPutOn, type SurfaceState, waitedOf } from "../core/surface/state.ts";

export interface Anchor {
  readonly name: string;
  readonly material?: Material;
  readonly drying: DryingTimes;
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
    drying: last.drying,
    waited: waitedOf(state, last).hours,
    ...(material ? { material } : {}),
  };
}
