/** A parameter as its recipe declares it. */
import type { Value } from "../../../grammar/src/tree.ts";
import { quantityText } from "../core/measure/read-quantity.ts";
import type { Recipe, RecipeParameter } from "../core/model/model.ts";

/** `coats: number = 3` */
export function parameterText(recipe: Recipe, { name, type }: RecipeParameter): string {
  const value = recipe.parameterSyntax.find((syntax) => syntax.name.text === name)?.default;
  return `${name}: ${type}${value ? ` = ${valueText(value)}` : ""}`;
}

export const valueText = (value: Value): string => (value.kind === "name" ? value.text : quantityText(value));
