/**
 * A word that its vocabulary does not have.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const unknownWord: LanguageRule = {
  id: "unknown-word",
  group: "language",
  severity: "error",
  docs: {
    summary:
      "A word of a closed vocabulary is expected (a family, wood, verb, shape, method, duty), and this is none.",
    why: "Families, woods and verbs stand for what the tool knows of them; of another word it knows nothing.",
    remedy: "Take the word that the message proposes, or the nearest that fits.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A family, a wood, a shape",
      text: `material hall_clear {
  family waterborne polyuretane #! unknown-word
}

piece box {
  built 2015
  surface lid {
    shape pannel 300 mm x 200 mm #! unknown-word
    wood  bech #! unknown-word
  }
}
`,
    },
    {
      title: "A verb, a method, a duty, a stage",
      text: `recipe clear_coat {
  for    wood
  safety dust_maks #! unknown-word
  step   burnish #! unknown-word
  layer  waterborne_polyurethane, by bursh #! unknown-word
  wait   until shiny #! unknown-word
}
`,
    },
    {
      title: "Only a species has a veneer",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  plywood, veneer 0.6 mm #! unknown-word
  }
}
`,
    },
  ],
  passing: [
    {
      title: "Words that there are",
      text: `recipe clear_coat {
  for    wood
  safety dust_mask
  step   buff
  layer  waterborne_polyurethane, by pad
  wait   until cured
}
`,
    },
  ],
};
