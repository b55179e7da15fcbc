/**
 * Dry sanding without a mask: the dust that one does not see is the dust that stays in the lungs.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { dutyChecks } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";

export const noDustMask: TradeRule = {
  id: "no-dust-mask",
  group: "safety",
  severity: "warning",
  // On a line that works on untested old coats it asks for what lead asks for.
  secondaryTo: ["lead-not-tested"],
  docs: {
    summary:
      "Wood or a film is sanded, scuffed or distressed dry, and the recipe states neither `dust_mask` nor a respirator.",
    why: "Fine dust of wood and of old finishes stays in the lungs; that of oak and beech is known to cause cancer.",
    remedy:
      "State `safety dust_mask`, or sand wet where the finish allows. Whether a particle filter is enough the safety data sheet says.",
    sources: [
      "NIOSH recommended limit for wood dust, 1 mg/m3; 29 CFR 1910.1000 table Z-1 for dust not otherwise regulated",
      "29 CFR 1910.134 and 42 CFR 84 for the filter",
    ],
  },
  failing: [
    {
      title: "One finding for the recipe, at its first dry sanding",
      text: `recipe smooth {
  for   wood
  step  sand 150 #! no-dust-mask
  step  dust
  layer waterborne_polyurethane x 2 {
    wait until recoat
    step sand 220
    step dust
  }
  wait  until cured
}
`,
    },
    {
      title: "Stated too late",
      text: `recipe smooth {
  for    wood
  step   scuff 180 #! no-dust-mask
  safety dust_mask
  step   sand 220
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "A wipe with a solvent after dry scuffing",
      text: `recipe rub_down {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  dewaxed_shellac
  wait   until recoat
  step   scuff 320 "by hand, then wiped with a little white spirit" #! no-dust-mask
  step   dust
  layer  dewaxed_shellac
  wait   until cured
}
`,
    },
    {
      title: "A sander that is wetted with a drop",
      text: `recipe machined {
  for    wood
  safety hearing
  step   sand 220 "with a little water, orbital sander" #! no-dust-mask
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "A duty stated inside a block ends with it",
      text: `recipe smooth {
  for   wood
  layer waterborne_polyurethane x 2 {
    safety dust_mask
    wait   until recoat
    step   sand 220
    step   dust
  }
  wait  until recoat
  step  sand 320 #! no-dust-mask
  step  dust
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A mask from the start",
      text: `recipe smooth {
  for    wood
  safety dust_mask
  step   sand 150
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "A respirator has its own particle filter",
      text: `recipe smooth {
  for    wood
  safety vapour_respirator
  step   sand 150
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "Words that say it is rubbed with a liquid",
      text: `recipe rub_down {
  for    wood
  safety ventilate, no_ignition, gloves
  layer  dewaxed_shellac
  wait   until recoat
  step   scuff 600 "with mineral oil, barely touching"
  step   dust
  layer  dewaxed_shellac
  wait   until cured
}
`,
    },
    {
      title: "Wet sanding throws no dust",
      text: `recipe rub_down {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
  step  sand wet 400, 600
  step  clean with water
}
`,
    },
  ],
  checks: dutyChecks(
    "dust_mask",
    () => t`The finest dust is not seen, hangs in the air for hours and stays in the lungs.`,
  ),
};
