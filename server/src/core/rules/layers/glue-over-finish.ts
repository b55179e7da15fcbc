/**
 * Glue on wood that this recipe has oiled, waxed or coated. Only words say that something is glued, and only the surface
 * as a whole is known, so words that speak of bare or masked wood are believed.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE, TEXTBOOK } from "../../knowledge/sources.ts";
import type { TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";
import { coatName, layerBelow } from "../texts.ts";

export const glueOverFinish: TradeRule = {
  id: "glue-over-finish",
  group: "layers",
  severity: "warning",
  docs: {
    summary: "Something is glued after the surface was oiled, waxed or coated.",
    why: "Glue holds by soaking into bare wood. Oil, wax or a film keeps it out, and the joint lets go under load.",
    remedy: "Glue before the finish, or keep the joint bare: mask it, or scrape it to the wood.",
    sources: [`${TEXTBOOK}: glue before finishing, and mask joints that are glued later`, PRACTICE],
  },
  failing: [
    {
      title: "A rung glued into an oiled mortise",
      text: `recipe oiled {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  drying_oil, wiped off
  wait   until cured
  step   repair "glue the new rung into its mortise" #! glue-over-finish
}
`,
    },
    {
      title: "A glue of the stock, on an oiled edge",
      text: `recipe oiled {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  drying_oil, wiped off
  wait   until cured
  step   glue "lipping" with wood_glue #! glue-over-finish
  wait   until recoat
}
`,
    },
  ],
  passing: [
    {
      title: "Glued first; and joints that were kept bare",
      text: `recipe oiled {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   repair "glue the loose rungs"
  wait   overnight
  step   sand 120, 180
  step   dust
  layer  drying_oil, wiped off
  wait   until cured
  step   repair "glue the feet on, their joints were masked and are bare"
}
`,
    },
  ],
  looksAt: ({ verbs }) => verbs.has("glue") || verbs.has("repair"),
  checks: {
    onStep: ({ action, before, report }) => {
      const text = textOf(action) ?? "";
      const isGlued = action.verb === "glue" || (action.verb === "repair" && GLUED.test(text));
      if (!isGlued || BARE.test(text)) return;
      const coat = before.layers.findLast((it) => it.origin === "new" && it.family?.role !== "stain");
      if (!coat) return;
      report({
        headline: t`Glue does not hold on ${coatName(coat)}`,
        why: t`It has to soak into bare wood, and the joint lets go under load.`,
        remedy: t`Glue before the finish goes on, or keep the joint bare: mask it, or scrape it to the wood and say so.`,
        abrades: "to the wood",
        related: [layerBelow(coat)],
      });
    },
  },
};

const GLUED = /\b(?:re-?glue\w*|glu(?:e|es|ed|ing))\b/iu;
const BARE =
  /\b(?:bare|masked|mask|scrape\w*|clean(?:ed)?\s+to\s+the\s+wood|dry\s+fit|no|not|never|unglued?|hot[\s-]?melt|felt|felts|pads?)\b/iu;
