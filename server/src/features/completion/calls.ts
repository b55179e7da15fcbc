/** `apply` and `follow`: the recipe, its arguments and their values, and the surfaces. */

import { t } from "../../../../grammar/src/translate.ts";
import type { Token } from "../../../../grammar/src/tree.ts";
import { METHODS } from "../../../../grammar/src/vocabulary.ts";
import { SHEENS } from "../../core/knowledge/words.ts";
import { areaText } from "../../core/measure/figures.ts";
import type { Job, Recipe } from "../../core/model/model.ts";
import { recipeOf } from "../../core/resolution/reference.ts";
import { referenceAt } from "../../core/resolution/resolve.ts";
import { jobSurfaces } from "../../core/surface/job-surfaces.ts";
import { materialOffers, parameterOffers, recipeOffers } from "./names.ts";
import { type CompletionContext, isComma, type Offer } from "./offer.ts";
import { unitOffers } from "./units.ts";

/** After `apply` or `follow`; `tokens` are those behind the word. */
export function callOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  if (tokens.length === 0) return recipeOffers(ctx);
  const opens = tokens.findIndex(({ text }) => text === "(");
  const closes = tokens.findLastIndex(({ text }) => text === ")");
  if (opens >= 0 && closes < opens) return argumentOffers(ctx, tokens[0]!, tokens.slice(opens + 1));
  const behind = tokens.slice(opens < 0 ? 1 : closes + 1);
  return ctx.cursor.block === "job" ? targetOffers(ctx, behind) : [];
}

function argumentOffers(ctx: CompletionContext, name: Token, args: readonly Token[]): readonly Offer[] {
  const recipe = recipeCalled(ctx, name);
  if (!recipe) return [];
  const last = args.at(-1);
  if (!last || isComma(last)) return parameterNames(ctx, recipe, args);
  const colon = args.findLastIndex(({ text }) => text === ":");
  const parameter = recipe.parameters.find((each) => each.name === args[colon - 1]?.text);
  if (!parameter || colon < 0) return [];
  if (ctx.cursor.afterNumber) {
    return parameter.type === "duration" ? unitOffers("time") : [];
  }
  if (colon !== args.length - 1) return [];
  switch (parameter.type) {
    case "material":
      return materialOffers(ctx);
    case "recipe":
      return recipeNames(ctx);
    case "number":
      return [...parameterOffers(ctx, "number"), example("3")];
    case "duration":
      return [...parameterOffers(ctx, "duration"), example("72 h")];
    case "method":
      return [...parameterOffers(ctx, "method"), ...METHODS.map((label): Offer => ({ label, kind: "word" }))];
    case "grits":
      return [...parameterOffers(ctx, "grits"), example("120/150/180")];
    case "ratio":
      return [...parameterOffers(ctx, "ratio"), example("4:1")];
    case "sheen":
      return [
        ...parameterOffers(ctx, "sheen"),
        ...SHEENS.map(({ word: label }): Offer => ({ label, kind: "word" })),
      ];
  }
}

/** The recipe that a call means; of a parameter its default. A line that cannot be read as a call has no names in it. */
function recipeCalled({ resolution, cursor, scope }: CompletionContext, name: Token): Recipe | undefined {
  const start = name.start - (cursor.declaration?.offset ?? 0);
  const [meant] = (resolution && referenceAt(resolution, start)?.referents) ?? [];
  if (!meant) return scope.recipes.get(name.text);
  if (meant.kind !== "parameter") return recipeOf(meant);
  const bound = resolution?.kind === "recipe" ? resolution.defaults.get(meant.name) : undefined;
  return bound?.type === "recipe" ? bound.recipe : undefined;
}

/** As an argument a recipe is named, not called. */
const recipeNames = (ctx: CompletionContext): readonly Offer[] =>
  recipeOffers(ctx).map(({ snippet: _, ...offer }) => offer);

const example = (text: string): Offer => ({ label: text, kind: "word", detail: t`an example` });

/** Parameters that are not given yet, those first that must be. */
function parameterNames(
  { cursor }: CompletionContext,
  recipe: Recipe,
  args: readonly Token[],
): readonly Offer[] {
  const behind = /^[^)]*/u.exec(cursor.rest)![0].matchAll(/,\s*([\p{L}\p{M}\p{N}_]+)\s*:/gu);
  const given = new Set([
    ...args.flatMap((token, i) => (args[i + 1]?.text === ":" ? [token.text] : [])),
    ...[...behind].map((match) => match[1]!),
  ]);
  return recipe.parameters
    .filter(({ name }) => !given.has(name))
    .toSorted((a, b) => Number(a.hasDefault) - Number(b.hasDefault))
    .map(({ name, type, hasDefault }) => ({
      label: name,
      kind: "parameter" as const,
      detail: hasDefault ? t`${type}, may be left out` : type,
      insert: `${name}: `,
    }));
}

function targetOffers(ctx: CompletionContext, behind: readonly Token[]): readonly Offer[] {
  if (behind.length === 0) return [{ label: "to", kind: "keyword", insert: "to " }];
  return behind[0]!.text === "to" ? surfaceOffers(ctx, behind) : [];
}

/** Behind `to` or `on`, which is the first of the tokens. */
export function surfaceOffers(ctx: CompletionContext, behind: readonly Token[]): readonly Offer[] {
  const last = behind.at(-1)!;
  const job = jobAt(ctx);
  if (!job) return [];
  const surfaces = jobSurfaces(job, ctx.scope);
  const named = new Set(behind.slice(1).map(({ text }) => text));
  if (last.text === ".") {
    const piece = behind.at(-2)?.text;
    return surfaces
      .filter((each) => each.piece.name === piece)
      .map(({ surface, piece: of }) => surfaceOffer(surface.name, of.name, surface.areaM2));
  }
  const isFirst = behind.length === 1;
  if (!isFirst && !isComma(last) && last.text !== "and") return [];
  const offers = surfaces
    .filter(({ label }) => !named.has(label))
    .map(({ label, surface, piece }) => surfaceOffer(label, piece.name, surface.areaM2));
  const pieces = job.pieces.length > 1 ? job.pieces.map(({ piece }) => piece) : [];
  const whole = pieces
    .filter((piece) => !named.has(piece))
    .map((piece): Offer => ({ label: piece, kind: "piece", detail: t`every surface of this piece` }));
  const all: Offer = { label: "all", kind: "word", detail: t`every surface of the job's pieces` };
  return isFirst ? [...offers, ...whole, all] : [...offers, ...whole];
}

const surfaceOffer = (label: string, piece: string, areaM2: number): Offer => ({
  label,
  kind: "surface",
  detail: `${piece}, ${areaText(areaM2)}`,
});

function jobAt({ program, file, cursor }: CompletionContext): Job | undefined {
  const key = cursor.declaration?.key;
  const model = key === undefined ? undefined : program.files.get(file)?.byKey.get(key)?.lowered.model;
  return model?.kind === "job" ? model : undefined;
}
