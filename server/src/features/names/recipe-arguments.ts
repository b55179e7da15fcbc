/**
 * Which recipes a `recipe` parameter may stand for: its default, and all that any line of the program hands on to it,
 * directly or by way of other parameters.
 *
 * A call of a parameter, `follow finish(clear: hall_clear)`, names parameters of those recipes, so that they must be
 * known to find and to rename these.
 */
import type { Checker } from "../../core/check.ts";
import type { Recipe, RecipeParameter } from "../../core/model/model.ts";
import { parameterNamed } from "../../core/model/parameters.ts";
import { placeKey } from "../../core/place.ts";
import type { ArgumentValue, ResolvedCall } from "../../core/resolution/lines.ts";
import { callsOf, type Resolution } from "../../core/resolution/resolve.ts";

export type HandedOn = (parameter: RecipeParameter) => readonly Recipe[];

/**
 * Recipes that are handed on to each other in a ring may all stand for one another, which grows with the cube of their
 * number: so often a recipe is handed on to a parameter, and what comes then is left out.
 */
const MOST_HANDED_ON = 50_000;

export interface HandedOnRecipes {
  readonly handedOn: HandedOn;
  /** Whether nothing was left out; else a parameter may stand for more. */
  readonly isComplete: boolean;
}

export function handedOnRecipes(checker: Checker): HandedOnRecipes {
  let left = MOST_HANDED_ON;
  const found = new Map<string, Map<string, Recipe>>();
  const handedOn: HandedOn = (parameter) => [...(found.get(placeKey(parameter.place))?.values() ?? [])];
  const add = (parameter: RecipeParameter, recipe: Recipe): boolean => {
    if (left <= 0) return false;
    left -= 1;
    const key = placeKey(parameter.place);
    const recipes = found.get(key) ?? new Map<string, Recipe>();
    const isNew = !recipes.has(placeKey(recipe.namePlace));
    found.set(key, recipes.set(placeKey(recipe.namePlace), recipe));
    return isNew;
  };
  const resolutions = resolutionsOf(checker);
  for (const { parameter, recipe } of resolutions.flatMap(defaultsIn)) add(parameter, recipe);
  const sites = resolutions.flatMap(callSitesIn);
  // Every round but the last finds a recipe more for some parameter, so this ends.
  let isNews = true;
  while (isNews) isNews = sites.filter((site) => left > 0 && handOn(site, handedOn, add)).length > 0;
  return { handedOn, isComplete: left > 0 };
}

/** The recipes that a call may mean. */
export function calledRecipes({ recipe, parameter }: ResolvedCall, handedOn: HandedOn): readonly Recipe[] {
  if (parameter) return handedOn(parameter);
  return recipe ? [recipe] : [];
}

interface CallSite {
  readonly call: ResolvedCall;
  /** The parameters of the recipe around it. */
  readonly parameters: readonly RecipeParameter[];
}

/** The recipes that are handed on as an argument. */
function recipesGiven(
  value: ArgumentValue,
  parameters: readonly RecipeParameter[],
  handedOn: HandedOn,
): readonly Recipe[] {
  if (value.kind === "name") return value.recipe ? [value.recipe] : [];
  const parameter = value.kind === "parameter" ? parameterNamed(parameters, value.parameter) : undefined;
  return parameter ? handedOn(parameter) : [];
}

/** Whether this line has handed on something that was not known yet. */
function handOn(
  { call, parameters }: CallSite,
  handedOn: HandedOn,
  add: (parameter: RecipeParameter, recipe: Recipe) => boolean,
): boolean {
  let isNews = false;
  for (const { name, value } of call.arguments) {
    for (const called of calledRecipes(call, handedOn)) {
      const parameter = parameterNamed(called.parameters, name);
      if (parameter?.type !== "recipe") continue;
      for (const recipe of recipesGiven(value, parameters, handedOn))
        isNews = add(parameter, recipe) || isNews;
    }
  }
  return isNews;
}

function defaultsIn(
  resolution: Resolution,
): readonly { readonly parameter: RecipeParameter; readonly recipe: Recipe }[] {
  if (resolution.kind !== "recipe") return [];
  return resolution.recipe.parameters.flatMap((parameter) => {
    const bound = resolution.defaults.get(parameter.name);
    return bound?.type === "recipe" && bound.recipe ? [{ parameter, recipe: bound.recipe }] : [];
  });
}

/** The calls of a declaration that hand anything on. */
const callSitesIn = (resolution: Resolution): readonly CallSite[] =>
  callsOf(resolution)
    .filter((call) => call.arguments.length > 0)
    .map((call) => ({
      call,
      parameters: resolution.kind === "recipe" ? resolution.recipe.parameters : [],
    }));

const resolutionsOf = (checker: Checker): readonly Resolution[] =>
  [...checker.program.files.values()].flatMap((file) =>
    file.declarations.map((declaration) => checker.resolution(file.id, declaration)),
  );
