/**
 * Which recipes a `recipe` parameter may stand for: its default, and all that any line of the program hands on to it,
 * directly or by way of other parameters.
 *
 * A call of a parameter, `follow finish(clear: hall_clear)`, names parameters of those recipes, so that they must be
 * known to find and to rename these.
 */
import { innerStatements, statementsOf } from "../../../../grammar/src/names.ts";
import type { Call, Statement } from "../../../../grammar/src/tree.ts";
import type { Checker } from "../../core/check.ts";
import type { Recipe, RecipeParameter } from "../../core/model/model.ts";
import { modelsOf, type Scope } from "../../core/model/program.ts";
import { placeKey } from "../../core/place.ts";

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
  for (const { parameter, recipe } of defaults(checker)) add(parameter, recipe);
  const sites = callSites(checker);
  // Every round but the last finds a recipe more for some parameter, so this ends.
  let isNews = true;
  while (isNews) isNews = sites.filter((site) => left > 0 && handOn(site, handedOn, add)).length > 0;
  return { handedOn, isComplete: left > 0 };
}

/** The recipes that a call may mean. `caller` is the recipe around it; none around the lines of a job. */
export function calledRecipes(
  call: Call,
  scope: Scope,
  caller: Recipe | undefined,
  handedOn: HandedOn,
): readonly Recipe[] {
  return recipesNamed(call.name.text, scope, caller, handedOn);
}

interface CallSite {
  readonly call: Call;
  readonly scope: Scope;
  readonly caller?: Recipe;
}

function recipesNamed(
  name: string,
  scope: Scope,
  caller: Recipe | undefined,
  handedOn: HandedOn,
): readonly Recipe[] {
  const parameter = caller?.parameters.find((each) => each.name === name);
  if (parameter) return handedOn(parameter);
  const recipe = scope.recipes.get(name);
  return recipe ? [recipe] : [];
}

/** Whether this line has handed on something that was not known yet. */
function handOn(
  { call, scope, caller }: CallSite,
  handedOn: HandedOn,
  add: (parameter: RecipeParameter, recipe: Recipe) => boolean,
): boolean {
  let isNews = false;
  for (const { name, value } of call.arguments) {
    if (!name || value?.kind !== "name") continue;
    for (const called of calledRecipes(call, scope, caller, handedOn)) {
      const parameter = called.parameters.find((each) => each.name === name.text);
      if (parameter?.type !== "recipe") continue;
      for (const recipe of recipesNamed(value.text, scope, caller, handedOn)) {
        isNews = add(parameter, recipe) || isNews;
      }
    }
  }
  return isNews;
}

function defaults(
  checker: Checker,
): readonly { readonly parameter: RecipeParameter; readonly recipe: Recipe }[] {
  return [...checker.program.files.values()].flatMap((file) =>
    modelsOf(file).flatMap((model) => {
      if (model.kind !== "recipe") return [];
      return model.parameters.flatMap((parameter) => {
        const syntax = model.parameterSyntax.find(
          ({ name }) => name.span.start === parameter.place.span.start,
        );
        const value = parameter.type === "recipe" ? syntax?.default : undefined;
        // Parameters hide nothing in the head of their recipe.
        const recipe = value?.kind === "name" && checker.scope(file.id).recipes.get(value.text);
        return recipe ? [{ parameter, recipe }] : [];
      });
    }),
  );
}

/** All calls that hand anything on. */
function callSites(checker: Checker): readonly CallSite[] {
  return [...checker.program.files.values()].flatMap((file) =>
    file.declarations.flatMap(({ lowered }) => {
      const { model } = lowered;
      return callsIn(statementsOf(lowered.syntax))
        .filter((call) => call.arguments.length > 0)
        .map((call) => ({
          call,
          scope: checker.scope(file.id),
          ...(model?.kind === "recipe" ? { caller: model } : {}),
        }));
    }),
  );
}

function callsIn(statements: readonly Statement[]): readonly Call[] {
  return statements.flatMap((statement) => {
    const isCall = statement.kind === "follow" || statement.kind === "apply";
    return isCall ? (statement.call ?? []) : callsIn(innerStatements(statement));
  });
}
