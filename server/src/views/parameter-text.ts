/** A parameter as its recipe declares it. */
import { t, translated } from "../../../grammar/src/translate.ts";
import type { Grits, Ratio, Value } from "../../../grammar/src/tree.ts";
import { quantityText } from "../core/measure/read-quantity.ts";
import type { Recipe, RecipeParameter } from "../core/model/model.ts";

/** `coats: number = 3` */
export function parameterText(recipe: Recipe, parameter: RecipeParameter): string {
  const value = defaultText(recipe, parameter);
  return `${parameter.name}: ${parameter.type}${value === undefined ? "" : ` = ${value}`}`;
}

/** `a material`, or what is said of a value that is taken where nothing is chosen. */
export function choiceText(
  recipe: Recipe,
  parameter: RecipeParameter,
  taken: (value: string) => string,
): string {
  const value = defaultText(recipe, parameter);
  return value === undefined ? t`a ${translated(parameter.type)}` : taken(value);
}

/** What is taken where no argument is given: `3`; undefined where one must be. */
export function defaultText(recipe: Recipe, { name }: RecipeParameter): string | undefined {
  const value = recipe.parameterSyntax.find((syntax) => syntax.name.text === name)?.default;
  return value && valueText(value);
}

/** `3`, `72 h`, `hall_clear`, `4:1`, `120/150/180` */
export function valueText(value: Value | Ratio | Grits): string {
  switch (value.kind) {
    case "name":
      return value.text;
    case "ratio":
      return `${value.a.text}:${value.b.text}`;
    case "grits":
      return value.grits.join("/");
    case "quantity":
      return quantityText(value);
  }
}
