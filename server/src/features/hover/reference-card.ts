/** Names: of the declaration at hand, of what a line refers to, of parameters, arguments and surfaces. */
import type { NameUse } from "../../../../grammar/src/names.ts";
import type { Call } from "../../../../grammar/src/tree.ts";
import type { ModelDeclaration, Recipe } from "../../core/model/model.ts";
import { jobSurfaces } from "../../core/surface/job-surfaces.ts";
import { paragraphs } from "../markdown.ts";
import { type HoverContext, recipeAround } from "./context.ts";
import { jobCard } from "./job-card.ts";
import { materialCard } from "./material-card.ts";
import { materialInJobs } from "./material-in-jobs.ts";
import { parameterCard } from "./parameter-card.ts";
import { pieceCard, shopCard, surfaceCard } from "./place-cards.ts";
import { recipeCard } from "./recipe-card.ts";

/** The declaration in which the cursor stands. */
export function declarationCard(ctx: HoverContext): string | undefined {
  const { model } = ctx.declaration.lowered;
  return model && model.name !== "" ? modelCard(ctx, model) : undefined;
}

export function modelCard(ctx: HoverContext, model: ModelDeclaration): string {
  switch (model.kind) {
    case "material":
      return paragraphs(materialCard(model), materialInJobs(ctx, model));
    case "piece":
      return pieceCard(ctx, model);
    case "shop":
      return shopCard(ctx, model);
    case "recipe":
      return recipeCard(ctx, model);
    case "job":
      return jobCard(ctx, model);
  }
}

export function referenceCard(ctx: HoverContext, use: NameUse): string | undefined {
  const { scope } = ctx;
  const name = use.name.text;
  const own = <T extends ModelDeclaration>(model: T | undefined) => model && modelCard(ctx, model);
  switch (use.role) {
    case "declaration-name":
      return declarationCard(ctx);
    case "surface-name":
    case "surface-ref":
      return surfaceAt(ctx, use);
    case "parameter":
    case "parameter-ref":
      return ownParameter(ctx, name);
    case "material-ref":
      return hiding(ctx, use) ?? own(scope.materials.get(name));
    case "recipe-ref":
      return hiding(ctx, use) ?? own(scope.recipes.get(name));
    case "piece-ref":
      return own(scope.pieces.get(name));
    case "shop-ref":
      return own(scope.shops.get(name));
    case "job-ref":
      return own(scope.jobs.get(name));
    case "argument-name":
      return argumentCard(ctx, name);
    case "argument-value":
      return argumentValueCard(ctx, use);
    default:
      return undefined;
  }
}

/** Parameters hide materials and recipes in the lines of their recipe, but not in its head. */
const hiding = (ctx: HoverContext, { name, statement }: NameUse): string | undefined =>
  statement && ownParameter(ctx, name.text);

function ownParameter(ctx: HoverContext, name: string): string | undefined {
  const recipe = recipeAround(ctx);
  const parameter = recipe?.parameters.find((each) => each.name === name);
  return recipe && parameter && parameterCard(ctx, recipe, parameter);
}

/** The call in which the cursor stands, and the recipe that it calls. */
function callAt(ctx: HoverContext): { readonly call: Call; readonly recipe?: Recipe } | undefined {
  const call = ctx.location.path.findLast((node) => node.kind === "call") as Call | undefined;
  if (!call) return undefined;
  const name = calledName(ctx, call);
  const recipe = name === undefined ? undefined : ctx.scope.recipes.get(name);
  return { call, ...(recipe ? { recipe } : {}) };
}

/** Of a recipe that is given as a parameter its default. */
function calledName(ctx: HoverContext, { name }: Call): string | undefined {
  const parameter = recipeAround(ctx)?.parameterSyntax.find((each) => each.name.text === name.text);
  if (!parameter) return name.text;
  return parameter.default?.kind === "name" ? parameter.default.text : undefined;
}

function argumentCard(ctx: HoverContext, name: string): string | undefined {
  const recipe = callAt(ctx)?.recipe;
  const parameter = recipe?.parameters.find((each) => each.name === name);
  const { model } = ctx.declaration.lowered;
  const job = model?.kind === "job" ? ctx.checker.job(model) : undefined;
  return recipe && parameter && parameterCard(ctx, recipe, parameter, job);
}

function argumentValueCard(ctx: HoverContext, { name }: NameUse): string | undefined {
  const parameter = ownParameter(ctx, name.text);
  if (parameter) return parameter;
  const at = callAt(ctx);
  const argument = at?.call.arguments.find(({ value }) => value?.span.start === name.span.start);
  const type = at?.recipe?.parameters.find((each) => each.name === argument?.name?.text)?.type;
  const model = type === "recipe" ? ctx.scope.recipes.get(name.text) : ctx.scope.materials.get(name.text);
  return model && modelCard(ctx, model);
}

function surfaceAt(ctx: HoverContext, use: NameUse): string | undefined {
  const { model } = ctx.declaration.lowered;
  const { statement } = use;
  if (model?.kind === "piece") {
    const surface = model.surfaces.find(({ name }) => name === use.name.text);
    return surface && surfaceCard(ctx, surface, model);
  }
  if (model?.kind !== "job" || statement?.kind !== "apply") return undefined;
  const target = statement.targets.find(({ surface }) => surface?.span.start === use.name.span.start);
  const found = jobSurfaces(model, ctx.scope).find(
    ({ piece, surface }) =>
      surface.name === use.name.text && (!target?.piece || target.piece.text === piece.name),
  );
  return found && surfaceCard(ctx, found.surface, found.piece);
}
