/**
 * A line that may be a fact, by a word that the notation does not have.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const notCounted: LanguageRule = {
  id: "not-counted",
  group: "language",
  severity: "warning",
  docs: {
    summary: "A line may be a fact by another name; it is kept as a note and does not count.",
    why: "A price, a size or a time by a word that the block does not have is in no sum and no plan.",
    remedy: "Write the line that the message names, or `note` before it.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A price that stands by itself",
      text: `material black_stain {
  family water stain
  price  4.20 #! not-counted
}
`,
    },
  ],
  passing: [
    {
      title: "The price of its container",
      text: `material black_stain {
  family water stain
  packs  25 g for 4.20
}
`,
    },
  ],
};
