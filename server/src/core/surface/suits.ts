/** Whether what a recipe is `for` takes in what a surface is made of. */
import type { ForKind, Substrate } from "../model/model.ts";

export function suits(
  kind: ForKind,
  { kind: substrate, veneerMm }: Pick<Substrate, "kind" | "veneerMm">,
): boolean {
  switch (kind) {
    case "any":
      return true;
    case "wood":
      return substrate !== "laminate" && substrate !== "metal";
    case "veneer":
      return substrate === "plywood" || veneerMm !== undefined;
    default:
      return substrate === kind;
  }
}
