/** Names that can stand at the cursor, each with what it is; parameters of the recipe come first. */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Role } from "../../core/knowledge/family-schema.ts";
import type { Material, Named, ParameterType, Recipe } from "../../core/model/model.ts";
import { markdownDocs } from "../../escape/markdown.ts";
import { familyTold } from "../family-told.ts";
import type { CompletionKind } from "../types.ts";
import { type CompletionContext, hole, type Offer, snippetText } from "./offer.ts";

/** The recipe's own parameters of a type. */
export function parameterOffers(
  ctx: CompletionContext,
  ...types: readonly ParameterType[]
): readonly Offer[] {
  return (ctx.recipe?.parameters ?? [])
    .filter(({ type }) => types.includes(type))
    .map(({ name, type }) => ({ label: name, kind: "parameter" as const, detail: t`${type} parameter` }));
}

/** Materials: parameters, then those that have one of the roles, then the others; built-in ones last in each. */
export function materialOffers(
  ctx: CompletionContext,
  roles: readonly Role[] = [],
  accepts: (material: Material) => boolean = () => true,
): readonly Offer[] {
  const rank = (material: Material): number => {
    const fits = material.family !== undefined && roles.includes(material.family.role);
    return (roles.length > 0 && !fits ? 2 : 0) + (material.builtIn ? 1 : 0);
  };
  const materials = [...ctx.scope.materials.values()].filter(accepts);
  return [
    ...parameterOffers(ctx, "material"),
    ...materials.toSorted((a, b) => rank(a) - rank(b)).map(materialOffer),
  ];
}

function materialOffer(material: Material): Offer {
  const family = material.familyName === undefined ? t`no family` : translated(material.familyName);
  const doc = material.family && familyTold(material.family).doc;
  const documentation = doc && translated(doc);
  return {
    ...named(material, "material"),
    detail: material.builtIn ? t`built-in ${family}` : family,
    ...(material.docs || documentation === undefined ? {} : { documentation }),
  };
}

export const shopOffers = ({ scope }: CompletionContext): readonly Offer[] =>
  [...scope.shops.values()].map((shop) => named(shop, "shop"));

export const pieceOffers = ({ scope }: CompletionContext): readonly Offer[] =>
  [...scope.pieces.values()].map((piece) => named(piece, "piece"));

/** Jobs but the one in which the cursor stands. */
export const jobOffers = ({ scope, cursor, file }: CompletionContext): readonly Offer[] =>
  [...scope.jobs.values()]
    .filter((job) => job.file !== file || job.declaration !== cursor.declaration?.key)
    .map((job) => named(job, "job"));

/** Recipes for a call, with the arguments that must be given; not the recipe itself. */
export function recipeOffers(ctx: CompletionContext): readonly Offer[] {
  const hasCall = /^\s*\(/u.test(ctx.cursor.rest);
  const own = ctx.recipe;
  return [
    ...parameterOffers(ctx, "recipe"),
    ...[...ctx.scope.recipes.values()]
      .filter((recipe) => !own || recipe.file !== own.file || recipe.declaration !== own.declaration)
      .map((recipe) => ({
        ...named(recipe, "recipe"),
        detail: `(${recipe.parameters.map(({ name, type }) => `${name}: ${type}`).join(", ")})`,
        ...(hasCall ? {} : { snippet: callSnippet(recipe) }),
      })),
  ];
}

function callSnippet(recipe: Recipe): string {
  const needed = recipe.parameters.filter(({ hasDefault }) => !hasDefault);
  const args = needed.map(({ name, type }, i) => `${name}: ${hole(i + 1, EXAMPLES[type] ?? name)}`);
  return `${snippetText(recipe.name)}(${args.join(", ")})$0`;
}

const EXAMPLES: Readonly<Partial<Record<ParameterType, string>>> = { number: "3", duration: "72 h" };

function named(model: Named, kind: CompletionKind): Offer {
  return {
    label: model.name,
    kind,
    ...(model.title ? { detail: model.title } : {}),
    ...(model.docs ? { documentation: markdownDocs(model.docs) } : {}),
  };
}
