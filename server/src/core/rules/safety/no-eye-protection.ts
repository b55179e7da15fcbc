/**
 * Strippers, bleaches and spray mist: a splash in the eye is not to be mended.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { dutyChecks } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";

export const noEyeProtection: TradeRule = {
  id: "no-eye-protection",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A material or a way of working can harm the eyes, and the recipe does not state `eye_protection`.",
    why: "Strippers, bleaches, lyes and hardeners splash when they are poured, brushed on and scraped off, and spray mist hangs in the air.",
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
    {
      title: "Epoxy poured on",
      text: `recipe poured {
  for    wood
  safety gloves, ventilate
  layer  epoxy_coating #! no-eye-protection
  wait   until cured
}
`,
    },
    {
      title: "A hardener stirred in",
      text: `material hardener "Hardener, free of isocyanate" {
  family waterborne polyurethane
}

material two_part {
  family   waterborne polyurethane
  mix      10:1 with hardener
  pot_life 4 h
}

recipe rolled {
  for    wood
  safety gloves
  layer  two_part, by roller #! no-eye-protection
  wait   until cured
}
`,
    },
    {
      title: "Oxalic acid",
      text: `material spot_acid "Oxalic acid crystals in water" {
  family cleaner
}

recipe spotted {
  for    wood
  safety gloves
  step   clean with spot_acid #! no-eye-protection
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
  checks: dutyChecks(
    "eye_protection",
    () => t`One splash or a cloud of mist is enough to harm an eye for good.`,
  ),
};
