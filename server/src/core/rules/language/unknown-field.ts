/**
 * A line that the block does not have.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const unknownField: LanguageRule = {
  id: "unknown-field",
  group: "language",
  severity: "error",
  docs: {
    summary: "A line begins with a word that its block has no field for.",
    why: "It is not read, so whatever it was meant to say does not count.",
    remedy: "Fix the word; the message names the fields that there are.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A misspelt field",
      text: `material hall_clear {
  family waterborne polyurethane
  solid  33 % #! unknown-field
}
`,
    },
    {
      title: "`for` between coats",
      text: `recipe clear_coat {
  layer waterborne_polyurethane x 2 {
    for  wood #! unknown-field
    wait until recoat
  }
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Fields of a material",
      text: `material hall_clear {
  family waterborne polyurethane
  solids 33 %
}
`,
    },
  ],
};
