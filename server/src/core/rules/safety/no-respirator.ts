/**
 * Strong solvents and spray mist: more than an open window takes away.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { dutyChecks } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";

export const noRespirator: TradeRule = {
  id: "no-respirator",
  group: "safety",
  severity: "warning",
  secondaryTo: ["isocyanate-hardener"],
  docs: {
    summary:
      "A strong solvent or spraying asks for a respirator, and the recipe states neither `vapour_respirator` nor `supplied_air`.",
    why: "Lacquer thinner, stripper and spray mist reach the lungs in a strength that moving the air alone does not take away; a dust mask stops no vapour. Formaldehyde, which conversion varnish and precatalyzed lacquer give off, needs a cartridge that is approved for it. Sprayed isocyanate and banned solvents have findings of their own and none of this rule: no cartridge is right for them.",
    remedy:
      "State `safety vapour_respirator`. The label and the safety data sheet name the cartridge and when to change it.",
    sources: [
      "29 CFR 1910.134",
      "29 CFR 1910.94(c) for spraying",
      "29 CFR 1910.1048 for formaldehyde",
      "29 CFR 1910.1052 for methylene chloride",
    ],
  },
  failing: [
    {
      title: "Stripping with a dust mask",
      text: `recipe take_off {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate
  step   strip with paint_stripper #! no-respirator
  step   clean with water
}
`,
    },
    {
      title: "A waterborne clear sprayed",
      text: `recipe sprayed {
  for    wood
  safety eye_protection, ventilate
  layer  waterborne_polyurethane, by hvlp #! no-respirator
  wait   until cured
}
`,
    },
    {
      title: "Formaldehyde needs its own cartridge",
      text: `recipe sprayed {
  for    wood
  safety gloves, eye_protection, ventilate, no_ignition
  layer  conversion_varnish, by hvlp #! no-respirator
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Stripping with a respirator",
      text: `recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with paint_stripper
  step   clean with water
}
`,
    },
    {
      title: "Air from outside is as good",
      text: `recipe sprayed {
  for    wood
  safety supplied_air, eye_protection, ventilate
  layer  waterborne_polyurethane, by hvlp
  wait   until cured
}
`,
    },
    {
      title: "The same clear by brush",
      text: `recipe brushed {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  checks: dutyChecks(
    "vapour_respirator",
    () => t`In that strength it reaches the lungs whatever window is open, and a dust mask stops no vapour.`,
  ),
};
