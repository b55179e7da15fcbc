/** Layers in air that is too cold for them, by the labels. */
import type { Material } from "../model/model.ts";
import type { SurfaceRun } from "./run.ts";

/**
 * The materials that a run puts on in a shop which is colder, by day, than they bear: one for each time, in order. None where
 * the air of the shop is not stated.
 */
export function materialsInTheCold({ moments, shop }: SurfaceRun): readonly Material[] {
  const air = shop?.air?.value.temperature;
  if (air === undefined) return [];
  return moments.flatMap(({ action }) => {
    const material = action.op === "layer" ? action.use.material : undefined;
    const low = material?.limits?.value.low;
    return material && low !== undefined && air < low ? [material] : [];
  });
}
