/**
 * Materials of a run that a flame, a spark or something hot can light.
 */
import { canLight } from "../knowledge/ignition.ts";
import { labelSays } from "../knowledge/label-words.ts";
import type { Action, MaterialUse } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { hasSelfHeatingRags } from "./duty-check.ts";
import { usesOf } from "./material-uses.ts";

/** A liquid whose vapour can be lit, or an oil whose cloths heat up. */
export function burns({ material }: MaterialUse): "vapour" | "cloths" | undefined {
  if (!material?.family) return undefined;
  const lights = canLight("heater", material.flash?.value, material.family.boils);
  if (lights || labelSays(material, "flammable") !== undefined) return "vapour";
  return hasSelfHeatingRags(material) ? "cloths" : undefined;
}

/** The first use of such a material in a run. */
export function firstBurning({
  moments,
}: SurfaceRun): { readonly action: Action; readonly use: MaterialUse } | undefined {
  for (const { action } of moments) {
    const use = usesOf(action).find(burns);
    if (use) return { action, use };
  }
  return undefined;
}
