/**
 * A comment that allows a finding and does not say why.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const suppressionWithoutReason: LanguageRule = {
  id: "suppression-without-reason",
  group: "language",
  severity: "warning",
  docs: {
    summary: "A comment `# allow RULE` gives no reason; it allows nothing.",
    why: "Whoever reads the recipe next cannot tell whether the reason still holds, or whether there was one.",
    remedy: "Write the reason after a colon: `# allow RULE: reason`.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "No reason, so the finding stays",
      text: `recipe smooth {
  for  wood
  # allow no-dust-mask #! suppression-without-reason
  step sand 150 #! no-dust-mask
  step dust
}
`,
    },
  ],
  passing: [
    {
      title: "A reason",
      text: `recipe smooth {
  for  wood
  # allow no-dust-mask: the sander's own extraction, measured last year
  step sand 150
  step dust
}
`,
    },
    {
      title: "Prose is not such a comment",
      text: `recipe smooth {
  for   wood
  # allow time for it: at least 20 min
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
};
