/**
 * What a name stands for, by its part in the line and by what can be named there.
 *
 * The same rules as the checks go by: parameters hide materials and recipes in the lines of their recipe, but not in
 * its head. Beyond them, a name in a line that is wrong otherwise is understood as far as it goes, so that one can find
 * one's way in a file that is half typed.
 */
import type { NameUse } from "../../../../grammar/src/names.ts";
import type { Call } from "../../../../grammar/src/tree.ts";
import type { ModelDeclaration, Recipe, RecipeParameter } from "../../core/model/model.ts";
import type { ProgramDeclaration, Scope } from "../../core/model/program.ts";
import type { FileId } from "../../core/place.ts";
import { jobSurfaces, jobSurfacesNamed } from "../../core/surface/job-surfaces.ts";
import { calledRecipes, type HandedOn } from "./handed-on.ts";
import {
  declared,
  distinct,
  modelReferent,
  parameterReferent,
  type Referent,
  surfaceReferent,
} from "./referent.ts";

export interface NameContext {
  readonly file: FileId;
  readonly scope: Scope;
  readonly declaration: ProgramDeclaration;
  readonly handedOn: HandedOn;
}

/** Everything that a name may mean: nothing where it is not known, several where that depends on who calls. */
export function referentsOf(ctx: NameContext, use: NameUse): readonly Referent[] {
  const { scope } = ctx;
  const { text } = use.name;
  switch (use.role) {
    case "declaration-name":
    case "surface-name":
    case "parameter":
      return ownReferent(ctx, use);
    case "parameter-ref":
      return ownParameter(ctx, use);
    case "material-ref":
      return parameterElse(ctx, use, scope.materials.get(text));
    case "recipe-ref":
      return parameterElse(ctx, use, scope.recipes.get(text));
    case "piece-ref":
      return asReferents(scope.pieces.get(text));
    case "shop-ref":
      return asReferents(scope.shops.get(text));
    case "job-ref":
      return asReferents(scope.jobs.get(text));
    case "surface-ref":
    case "vocabulary":
      return surfacesMeant(ctx, use);
    case "argument-name":
      return distinct(argumentParameters(ctx, use, text).map(parameterReferent));
    case "argument-value":
      return argumentReferents(ctx, use);
    case "keyword":
    case "unit":
      return [];
  }
}

/** The recipe around a line of it. */
export function callerOf({ declaration }: NameContext): Recipe | undefined {
  const { model } = declaration.lowered;
  return model?.kind === "recipe" ? model : undefined;
}

const asReferents = (model: ModelDeclaration | undefined): readonly Referent[] =>
  model ? [modelReferent(model)] : [];

function ownReferent({ file, declaration }: NameContext, { name, role }: NameUse): readonly Referent[] {
  const place = { file, declaration: declaration.tree.key, span: name.span };
  const { kind } = declaration.lowered.syntax;
  if (role === "surface-name") return [declared("surface", name.text, place)];
  if (role === "parameter") return [declared("parameter", name.text, place)];
  return kind === "use" ? [] : [declared(kind, name.text, place)];
}

/** The parameter of this name, in the lines of a recipe. One that still lacks its type counts as well. */
function ownParameter(ctx: NameContext, { name, statement }: NameUse): readonly Referent[] {
  const recipe = callerOf(ctx);
  if (!recipe || !statement) return [];
  const known = recipe.parameters.find((parameter) => parameter.name === name.text);
  if (known) return [parameterReferent(known)];
  const typed = recipe.parameterSyntax.find((parameter) => parameter.name.text === name.text);
  const place = typed && { file: recipe.file, declaration: recipe.declaration, span: typed.name.span };
  return place ? [declared("parameter", name.text, place)] : [];
}

function parameterElse(
  ctx: NameContext,
  use: NameUse,
  model: ModelDeclaration | undefined,
): readonly Referent[] {
  const parameter = ownParameter(ctx, use);
  return parameter.length > 0 ? parameter : asReferents(model);
}

/** The surfaces that a word behind `to` means; `all` means every one, unless one is called so. */
function surfacesMeant(ctx: NameContext, { name, statement }: NameUse): readonly Referent[] {
  const { model } = ctx.declaration.lowered;
  if (model?.kind !== "job" || statement?.kind !== "apply") return [];
  const target = statement.targets.find(({ surface }) => surface?.span.start === name.span.start);
  if (!target) return [];
  const { piece } = target;
  const named = piece
    ? (ctx.scope.pieces.get(piece.text)?.surfaces ?? []).filter((surface) => surface.name === name.text)
    : jobSurfacesNamed(model, ctx.scope, name.text).map(({ surface }) => surface);
  const isAll = named.length === 0 && !piece && name.text === "all";
  const meant = isAll ? jobSurfaces(model, ctx.scope).map(({ surface }) => surface) : named;
  return distinct(meant.map(surfaceReferent));
}

function callOf({ statement }: NameUse): Call | undefined {
  return statement?.kind === "follow" || statement?.kind === "apply" ? statement.call : undefined;
}

/** The parameters of this name, of all recipes that the call around may mean. */
function argumentParameters(
  ctx: NameContext,
  use: NameUse,
  name: string | undefined,
): readonly RecipeParameter[] {
  const call = callOf(use);
  if (!call || name === undefined) return [];
  return calledRecipes(call, ctx.scope, callerOf(ctx), ctx.handedOn).flatMap((recipe) =>
    recipe.parameters.filter((parameter) => parameter.name === name),
  );
}

/** By the type of the parameter that it is given to; where that is not known, a material sooner than a recipe. */
function argumentReferents(ctx: NameContext, use: NameUse): readonly Referent[] {
  const own = ownParameter(ctx, use);
  if (own.length > 0) return own;
  const argument = callOf(use)?.arguments.find(({ value }) => value?.span.start === use.name.span.start);
  const types = argumentParameters(ctx, use, argument?.name?.text).map(({ type }) => type);
  const material = ctx.scope.materials.get(use.name.text);
  const recipe = ctx.scope.recipes.get(use.name.text);
  if (types.length === 0) return asReferents(material ?? recipe);
  return distinct([
    ...(types.includes("material") ? asReferents(material) : []),
    ...(types.includes("recipe") ? asReferents(recipe) : []),
  ]);
}
