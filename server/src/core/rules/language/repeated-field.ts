/**
 * A field stated twice.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const repeatedField: LanguageRule = {
  id: "repeated-field",
  group: "language",
  severity: "error",
  docs: {
    summary: "A field or a tail that may stand once stands twice; or a piece or a used file is named twice.",
    why: "Only the first counts, and the second looks as if it did.",
    remedy: "Keep one of the two.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Two spreading rates",
      text: `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
  covers 12 m2/L #! repeated-field
}
`,
    },
    {
      title: "Two methods on one line",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane, by brush, by pad #! repeated-field
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Shapes add up, and duties may stand on several lines",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

recipe seal {
  for    wood
  safety ventilate, no_ignition
  safety gloves
  layer  dewaxed_shellac
  wait   until cured
}
`,
    },
  ],
};
