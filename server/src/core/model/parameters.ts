/** The parameters of a recipe by their names. */
import { onceFor } from "../once.ts";
import type { RecipeParameter } from "./model.ts";

/** A parameter by its name, the first of several. */
export const parameterNamed = (
  parameters: readonly RecipeParameter[],
  name: string,
): RecipeParameter | undefined => parametersByName(parameters).get(name);

export const parametersByName = onceFor(
  (parameters: readonly RecipeParameter[]): ReadonlyMap<string, RecipeParameter> => {
    const byName = new Map<string, RecipeParameter>();
    for (const parameter of parameters)
      if (!byName.has(parameter.name)) byName.set(parameter.name, parameter);
    return byName;
  },
);
