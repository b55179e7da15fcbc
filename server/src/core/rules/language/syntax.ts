/**
 * What is not in the notation; the message says what was expected there.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const syntax: LanguageRule = {
  id: "syntax",
  group: "language",
  severity: "error",
  docs: {
    summary: "The text is not in the notation.",
    why: "What a line means cannot be told, so nothing that depends on it is worked out; the rest of the file still is.",
    remedy: "Write the line as the example in the message shows.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A line that ends too early",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait #! syntax
}
`,
    },
    {
      title: "A note that says nothing",
      text: `recipe clear_coat {
  for  wood
  note #! syntax
}
`,
    },
    {
      title: "How much air is said of `ventilate` only",
      text: `recipe clear_coat {
  for    wood
  safety gloves 10 air changes/h #! syntax
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Every line whole",
      text: `recipe clear_coat {
  for    wood
  safety ventilate 10 air changes/h
  note   "Thin coats."
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
};
