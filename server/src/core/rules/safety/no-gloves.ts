/**
 * Hands in solvent and stain: it goes through the skin, and stays in it.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { dutyChecks } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";

export const noGloves: TradeRule = {
  id: "no-gloves",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A material that harms or dries the skin, or a coating of two parts, is handled, and the recipe does not state `gloves`.",
    why: "Solvents, and varnishes and oil paints that hold them, take the fat out of the skin; strippers, lyes, acids and bleaches burn it, and uncured resin and hardeners can make it allergic for good.",
    remedy: "State `safety gloves`. The safety data sheet says which glove the product does not go through.",
    sources: [
      "29 CFR 1910.138",
      "NIOSH Publication 96-111 (1996) on hardeners and skin",
      "safety data sheets of varnishes, oil paints and stains in mineral spirits: EUH066 and H317 of Regulation (EC) 1272/2008, from memory, confidence high",
    ],
  },
  failing: [
    {
      title: "Wax taken off with a wet rag",
      text: `recipe take_wax_off {
  for    wood
  safety ventilate, no_ignition
  step   dewax with mineral_spirits #! no-gloves
  step   clean with soap
}
`,
    },
    {
      title: "An oil polyurethane by brush",
      text: `recipe topped {
  for    wood
  safety ventilate, no_ignition, wet_rags
  layer  oil_polyurethane #! no-gloves
  wait   until cured
}
`,
    },
    {
      title: "Gloves that come after the first line that needs them",
      text: `recipe stained {
  for    wood
  safety ventilate, no_ignition, wet_rags
  step   dewax with mineral_spirits #! no-gloves
  step   clean with soap
  safety gloves
  layer  gel_stain, wiped off
  wait   until cured
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "In a coat block: the fix goes above it",
      text: `recipe glazed {
  for    wood
  safety ventilate, no_ignition, wet_rags
  layer  waterborne_polyurethane x 3 {
    wait until cured
    step scuff wet 220
    step clean with mineral_spirits #! no-gloves
  }
  wait   until cured
}
`,
    },
    {
      title: "A cleaner that calls itself caustic",
      text: `material lye_wash "Caustic wash for kitchen grease" {
  family degreaser
}
recipe washed {
  for    wood
  safety eye_protection
  step   clean with lye_wash #! no-gloves
}
`,
    },
    {
      title: "Two parts, put on by brush",
      text: `material hardener "Hardener, free of isocyanate" {
  family waterborne polyurethane
}

material two_part {
  family   waterborne polyurethane
  mix      10:1 with hardener
  pot_life 4 h
}

recipe brushed {
  for    wood
  safety eye_protection
  layer  two_part, by brush #! no-gloves
  wait   until cured
}
`,
    },
    {
      title: "A note that tells to use ammonia",
      text: `recipe washed {
  for    wood
  safety eye_protection
  note   "Wash the inside with household ammonia in water." #! no-gloves
  step   clean with soap
}
`,
    },
    {
      title: "A glue of two parts",
      text: `recipe mended {
  for    wood
  safety eye_protection
  step   glue "loose joint" with epoxy_glue #! no-gloves
  wait   until recoat
}
`,
    },
    {
      title: "A clear of two parts, brushed on",
      text: `recipe topped {
  for    wood
  safety eye_protection, ventilate
  layer  waterborne_two_part_polyurethane #! no-gloves
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Gloves from the start",
      text: `recipe stained {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  step   dewax with mineral_spirits
  step   clean with soap
  layer  gel_stain, wiped off
  wait   until cured
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "Words that only speak of it",
      text: `## Resists ammonia, alcohol and household bleach.
material clear {
  family waterborne polyurethane
}

recipe plain {
  for   wood
  note  "Never wash this with ammonia or bleach."
  layer clear
  wait  until cured
}
`,
    },
    {
      title: "An oil whose label says that nothing evaporates, shellac and linseed oil ask for none",
      text: `material pure "Hardwax oil without solvent" {
  family hardwax oil
  voc    0 g/L
}

recipe oiled {
  for    wood
  safety wet_rags
  layer  pure, wiped off
  wait   until cured
}

recipe oiled_again {
  for    wood
  safety wet_rags
  layer  drying_oil, wiped off
  wait   until cured
}

recipe polished {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac x 2 {
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "Soap, a degreaser whose label says nothing of lye, and a waterborne clear ask for none",
      text: `recipe plain {
  for   wood
  step  clean with degreaser
  step  clean with soap
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  checks: dutyChecks("gloves", () => t`It goes through the skin, or burns or dries it, before you feel it.`),
};
