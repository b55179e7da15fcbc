/**
 * A word that may be several things.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const mayBeSeveral: LanguageRule = {
  id: "may-be-several",
  group: "language",
  severity: "warning",
  docs: {
    summary: "A word of everyday speech may be several things of the notation, which differ at the bench.",
    why: "A danish oil may be a drying oil or a thinned varnish. Until you say which, what is a danger with one of them counts, and rules on how layers go together are silent about it.",
    remedy: "Read the label, and write the word that the message names for it.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A word of labels that is several families",
      text: `material bench_oil {
  family danish oil #! may-be-several
  covers 12 m2/L
}
`,
    },
  ],
  passing: [
    {
      title: "The family on the label",
      text: `material bench_oil {
  family wiping varnish
  covers 12 m2/L
}
`,
    },
  ],
};
