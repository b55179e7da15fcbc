/**
 * A stain over fillings that do not take it: every one of them shows as a pale patch.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { TEXTBOOK } from "../../knowledge/sources.ts";
import { isFilm } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const fillerTakesNoStain: TradeRule = {
  id: "filler-takes-no-stain",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "A stain goes over fillings of a filler that does not take stain.",
    why: "Binder and hard fillers keep the stain out, so each filling shows as a patch of its own colour.",
    remedy:
      "Fill after the stain and its first clear coat with a filler of the stained colour, or tint the filler, or paint.",
    sources: [TEXTBOOK],
  },
  failing: [
    {
      title: "Epoxy filler under an oil stain",
      text: `recipe stained {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate, no_ignition, wet_rags
  step   fill with epoxy_filler
  wait   24 h
  step   sand 120, 180
  step   dust
  layer  oil_stain, wiped off #! filler-takes-no-stain
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A grain filler takes the stain",
      text: `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   fill with grain_filler
  wait   24 h
  step   sand 120, 180
  step   dust
  layer  oil_stain, wiped off
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "Paint covers it",
      text: `recipe painted {
  for    wood
  safety dust_mask
  step   fill with wood_filler
  wait   overnight
  step   sand 120, 180
  step   dust
  layer  acrylic_paint
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ roles }) => roles.has("stain"),
  checks: {
    onLayer: ({ action, before, report }) => {
      const over = action.use.material?.family;
      if (over?.role !== "stain" || action.toner || before.layers.some(isFilm)) return;
      const filling = before.fillings.find(
        ({ use, from }) => use.material?.family?.takesStain === false && from === before.nextSerial,
      );
      if (!filling) return;
      const filler = useName(filling.use);
      report({
        headline: t`${useName(action.use)} goes over fillings of ${filler}, which takes no stain`,
        why: t`The fillings keep their own colour and show as patches in the stained wood.`,
        remedy: t`Fill after staining and sealing with a filler of that colour, or use one that takes stain.`,
        related: [related(filling.place, t`Filled here`)],
      });
    },
  },
};
