/**
 * A coat over bleach that was never rinsed out of the wood.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { placeKey } from "../../place.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const bleachNotNeutralised: TradeRule = {
  id: "bleach-not-neutralised",
  group: "preparation",
  severity: "warning",
  secondaryTo: ["caustic-or-acid-left-in"],
  docs: {
    summary: "A coat goes on bleached wood that was not rinsed or neutralised.",
    why: "What is left of the bleach goes on working: it fades stains, clouds or softens finishes, and its crystals lift them.",
    remedy: "Rinse or neutralise as the bleach's label says, with a `clean` step, and let the wood dry.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "An oil straight on bleached wood",
      text: `recipe pale_wood {
  for    wood
  safety dust_mask, gloves, eye_protection, wet_rags
  step   sand 80, 120, 180
  step   dust
  step   bleach with wood_bleach
  wait   overnight
  layer  drying_oil, wiped off #! bleach-not-neutralised
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Rinsed and dried",
      text: `recipe pale_wood {
  for    wood
  safety dust_mask, gloves, eye_protection, wet_rags
  step   sand 80, 120, 180
  step   dust
  step   bleach with wood_bleach
  wait   overnight
  step   clean with water
  wait   overnight
  layer  drying_oil, wiped off
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before: { bleached }, report }) => {
      if (!bleached || bleached.rinsed) return;
      report({
        headline: t`\`${action.use.name}\` goes on bleach that was never rinsed out`,
        why: t`Bleach that stays in the wood fades stains and clouds or softens the finish over it, and its crystals burn when they are sanded.`,
        remedy: t`Put a \`clean\` step above this layer that rinses or neutralises as the bleach's label says, and let the wood dry.`,
        related: [related(bleached.place, t`Bleached here`)],
        causes: [`residue of ${placeKey(bleached.place)}`],
      });
    },
  },
};
