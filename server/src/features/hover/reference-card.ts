/** Names: of the declaration at hand, of what a line refers to, of parameters, arguments and surfaces. */
import type { NameUse } from "../../../../grammar/src/names.ts";
import type { ModelDeclaration, Recipe, RecipeParameter } from "../../core/model/model.ts";
import { type Referent, referentsOf } from "../../core/resolution/reference.ts";
import { type Resolution, referenceAt } from "../../core/resolution/resolve.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { paragraphs } from "../markdown.ts";
import { figuresHere, type HoverContext } from "./context.ts";
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
      return paragraphs(materialCard(model, figuresHere(ctx)), materialInJobs(ctx, model));
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
  const resolution = ctx.checker.resolution(ctx.file, ctx.declaration);
  const reference = referenceAt(resolution, use.name.span.start);
  const [meant] = reference ? referentsOf(reference, (parameter) => defaultOf(resolution, parameter)) : [];
  return meant && referentCard(ctx, meant, use.role);
}

/** A recipe that is handed on may be any; its default tells of it. */
function defaultOf(resolution: Resolution, { name }: RecipeParameter): readonly Recipe[] {
  const bound = resolution.kind === "recipe" ? resolution.defaults.get(name) : undefined;
  return bound?.type === "recipe" && bound.recipe ? [bound.recipe] : [];
}

function referentCard(ctx: HoverContext, meant: Referent, role: NameUse["role"]): string | undefined {
  switch (meant.kind) {
    case "parameter":
      return meant.recipe && meant.parameter
        ? parameterCard(
            ctx,
            meant.recipe,
            meant.parameter,
            role === "argument-name" ? jobAround(ctx) : undefined,
          )
        : undefined;
    case "surface":
      return meant.surface && meant.piece && surfaceCard(ctx, meant.surface, meant.piece);
    default:
      return meant.model && modelCard(ctx, meant.model);
  }
}

function jobAround({ checker, declaration: { lowered } }: HoverContext): JobResult | undefined {
  return lowered.model?.kind === "job" ? checker.job(lowered.model) : undefined;
}
