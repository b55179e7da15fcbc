/**
 * Strippers, bleaches and spray mist: a splash in the eye is not to be mended.
 */
import { dutyChecks } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";

export const noEyeProtection: TradeRule = {
  id: "no-eye-protection",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A material or a way of working can harm the eyes, and the recipe does not state `eye_protection`.",
    why: "Stripper and bleach splash when they are brushed on and scraped off, and spray mist hangs in the air.",
    remedy: "State `safety eye_protection`. The label says whether a face shield is needed too.",
    sources: ["29 CFR 1910.133"],
  },
  failing: [
    {
      title: "Bleach brushed on",
      text: `recipe lighten {
  for    wood
  safety gloves
  step   bleach with wood_bleach #! no-eye-protection
  step   clean with water
}
`,
    },
  ],
  passing: [
    {
      title: "Goggles stated",
      text: `recipe lighten {
  for    wood
  safety gloves, eye_protection
  step   bleach with wood_bleach
  step   clean with water
}
`,
    },
  ],
  checks: dutyChecks("eye_protection", "One splash or a cloud of mist is enough to harm an eye for good."),
};
