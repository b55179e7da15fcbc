/**
 * A comment that allows what is not there.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const unusedSuppression: LanguageRule = {
  id: "unused-suppression",
  group: "language",
  severity: "hint",
  docs: {
    summary:
      "A comment `# allow RULE: reason` stands above a line on which that rule finds nothing, or names no rule.",
    why: "It may hide a finding of later, for a reason that was given for something else.",
    remedy: "Take the comment out, or put it directly above the line of the finding.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Nothing to allow",
      text: `recipe smooth {
  for    wood
  safety dust_mask
  # allow no-dust-mask: extraction #! unused-suppression
  step   sand 150
  step   dust
}
`,
    },
    {
      title: "A rule that there is not",
      text: `recipe smooth {
  for  wood
  # allow no-dust-masks: extraction #! unused-suppression
  step sand 150 #! no-dust-mask
  step dust
}
`,
    },
  ],
  passing: [
    {
      title: "Two stacked above one line",
      text: `recipe seal {
  for    wood
  safety no_ignition
  # allow no-ventilation: the spray room has its own exhaust
  # allow no-gloves: pad on a stick
  layer  dye_stain
  wait   until recoat
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
};
