/**
 * Solvent vapour without a word on fresh air: a headache at best, and in a closed room a vapour that can be lit.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { VENTILATION_SOURCE } from "../../knowledge/sources.ts";
import { dutyChecks } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";

export const noVentilation: TradeRule = {
  id: "no-ventilation",
  group: "safety",
  severity: "warning",
  underRoofs: true,
  docs: {
    summary:
      "A material or a way of putting it on gives off vapour, and the recipe does not state `ventilate`.",
    why: "Solvent vapour gathers in a closed room while a coat is put on and for hours after: it harms whoever breathes it, and near a flame it burns.",
    remedy:
      "State `safety ventilate` (or `ventilate 10 air changes/h`) above the first such line. How much air is enough the label, the safety data sheet and local codes say.",
    sources: [VENTILATION_SOURCE, "29 CFR 1910.94(c) for spraying"],
  },
  failing: [
    {
      title: "Shellac in a closed room",
      text: `recipe seal {
  for    wood
  safety no_ignition
  layer  dewaxed_shellac #! no-ventilation
  wait   2 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "The thinner brings the vapour, and only the first of two lines says so",
      text: `recipe oiled {
  for    wood
  safety wet_rags, no_ignition, gloves
  layer  drying_oil, wiped off, thinned 1:1 with mineral_spirits #! no-ventilation
  wait   until cured
  layer  drying_oil, wiped off, thinned 2:1 with mineral_spirits
  wait   until cured
}
`,
    },
    {
      title: "Only the job says what the clear is",
      text: `recipe top_coat(clear: material) {
  for    wood
  safety wet_rags, no_ignition, gloves
  step   clean with soap
  step   scuff wet 220
  step   dust
  layer  clear #! no-ventilation
  wait   until cured
}

piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
    wear     light
  }
}

job lid {
  piece box
  apply top_coat(clear: oil_varnish) to lid
}
`,
    },
    {
      title: "Contact adhesive under a lipping",
      text: `recipe lipped {
  for    wood
  safety gloves, no_ignition, vapour_respirator
  step   glue "lipping" with contact_adhesive #! no-ventilation
  wait   until recoat
}
`,
    },
  ],
  passing: [
    {
      title: "Stated once, for all that follows",
      text: `recipe seal {
  for    wood
  safety ventilate 10 air changes/h, no_ignition
  layer  dewaxed_shellac
  wait   2 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "An oil whose label says that nothing evaporates",
      text: `material bare_oil {
  family hardwax oil
  voc    5 g/L
}

recipe oiled {
  for    wood
  safety wet_rags
  layer  bare_oil, wiped off
  wait   until cured
}
`,
    },
    {
      title: "The duty of the caller reaches into the recipe that it follows",
      text: `recipe shellac_coat {
  for   wood
  layer dewaxed_shellac
  wait  2 h
}

recipe seal {
  for    wood
  safety ventilate, no_ignition
  follow shellac_coat
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
  checks: dutyChecks(
    "ventilate",
    () =>
      t`In a closed room the vapour gathers until it harms whoever works there, and near a flame it can burn.`,
  ),
};
