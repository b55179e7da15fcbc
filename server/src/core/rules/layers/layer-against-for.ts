/**
 * A recipe that is only for laminate or metal, and yet lays what has to soak into wood.
 *
 * Stain there is `stain-on-sealed-surface`'s, and oil `oil-over-film`'s; this is for what is left: conditioner, grain
 * filler and bleach.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { orList } from "../../model/suggest.ts";
import type { LayerAction, StepAction } from "../../surface/actions.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const layerAgainstFor: TradeRule = {
  id: "layer-against-for",
  group: "layers",
  severity: "warning",
  docs: {
    summary: "A recipe for laminate or metal lays a conditioner or grain filler, or bleaches.",
    why: "Such materials work in the pores of wood. On laminate and metal they stand on the surface, stay tacky and keep the next coat from holding.",
    remedy: "Leave the line out, or change the recipe's `for` line if wood is meant.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "A grain filler in a recipe for laminate",
      text: `recipe smooth {
  for    laminate
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   clean with soap
  step   scuff 220
  step   dust
  layer  grain_filler, wiped off #! layer-against-for
  wait   72 h
  layer  bonding_primer
  wait   until recoat
  layer  acrylic_paint
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "For wood, or for either",
      text: `recipe smooth {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  grain_filler, wiped off
  wait   72 h
  layer  bonding_primer
  wait   until cured
}
recipe any_surface {
  for    metal, wood
  layer  waterborne_conditioner, wiped off
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ verbs, roles }) =>
    verbs.has("bleach") || verbs.has("fill") || roles.has("conditioner") || roles.has("filler"),
  checks: {
    onLayer: (ctx) => check(ctx, ctx.action.use.material?.family?.name === "grain filler"),
    onStep: (ctx) => {
      if (ctx.action.verb === "bleach") check(ctx, true);
      if (ctx.action.verb === "fill") check(ctx, ctx.action.use?.material?.family?.name === "grain filler");
    },
  },
};

function check({ action, run, report }: MomentContext<LayerAction | StepAction>, isForPores: boolean): void {
  if (!isForPores && action.use?.material?.family?.role !== "conditioner") return;
  const recipe = run.applied
    .map((part) => part.recipe)
    .find(({ file, declaration }) => file === action.place.file && declaration === action.place.declaration);
  const kinds = recipe?.forKinds ?? [];
  if (kinds.length === 0 || !kinds.every((kind) => kind === "laminate" || kind === "metal")) return;
  const told = orList(kinds.map(translated));
  const what = action.use ? useName(action.use) : t`A bleach`;
  report({
    headline: t`${what} works in wood, and the recipe is for ${told}`,
    why: t`It works in the pores of wood; on ${told} it stays on top and keeps the next coat from holding.`,
    remedy: t`Leave this line out, or change the recipe's \`for\` line if wood is meant.`,
    related: recipe!.forPlace ? [related(recipe!.forPlace, t`What the recipe is for`)] : [],
  });
}
