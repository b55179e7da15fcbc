/**
 * A number that means nothing there.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const badNumber: LanguageRule = {
  id: "bad-number",
  group: "language",
  severity: "error",
  docs: {
    summary: "A number is zero, negative, not whole or out of range where that means nothing.",
    why: "Areas, litres and dates worked out from it would be nonsense.",
    remedy: "Write a number in the range that the message names.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Zero, too much, backwards",
      text: `material hall_clear {
  family waterborne polyurethane
  covers 0 m2/L #! bad-number
  solids 120 % #! bad-number
  recoat 24 h to 2 h #! bad-number
}
`,
    },
    {
      title: "Half a coat, and a grit that there is not",
      text: `recipe clear_coat {
  for    wood
  safety dust_mask
  step   sand 5 #! bad-number
  step   dust
  layer  waterborne_polyurethane x 2.5 #! bad-number
  wait   until cured
}
`,
    },
    {
      title: "No coats, by the argument of a call",
      text: `recipe clear_coat(coats: number) {
  for   wood
  layer waterborne_polyurethane x coats {
    wait until recoat
  }
  wait  until cured
}

recipe none {
  for    wood
  follow clear_coat(coats: 0) #! bad-number
}
`,
    },
    {
      title: "A day that there is not",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}

job lid {
  piece box
  ready 2027-02-30 #! bad-number
  apply clear_coat to lid
}
`,
    },
  ],
  passing: [
    {
      title: "At the edges of the ranges",
      text: `material hall_clear {
  family waterborne polyurethane
  solids 100 %
  voc    0 g/L
  recoat 2 h to 2 h
}
`,
    },
  ],
};
