/**
 * The materials that one line uses: the material itself, its thinner and its hardener.
 */
import type { Action, MaterialUse } from "../surface/actions.ts";

export function usesOf(action: Action): readonly MaterialUse[] {
  if (action.op === "step") return action.use ? [action.use] : [];
  if (action.op !== "layer") return [];
  return [
    action.use,
    ...(action.hardener ? [action.hardener.use] : []),
    ...(action.thinned ? [action.thinned.thinner] : []),
  ];
}
