/**
 * A material of which nothing says what it is, or that is called something that no family is.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const materialNotKnown: LanguageRule = {
  id: "material-not-known",
  group: "language",
  severity: "warning",
  docs: {
    summary: "Nothing says what kind of material this is, so nothing of it is checked.",
    why: "What it gives off, how it dries and what goes over it follow from its family. A recipe with a material of no family is not checked for any of that.",
    remedy: "Write its family, or the nearest; until then go by its label and its safety data sheet.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "What is bought and woven",
      text: `material seat_cane {
  family cane #! material-not-known
}
`,
    },
    {
      title: "A title alone",
      text: `material black "Black metal paint" { #! material-not-known
  recoat 6 h
}
`,
    },
  ],
  passing: [
    {
      title: "A paint by its family",
      text: `material black "Black metal paint" {
  family alkyd paint
  recoat 6 h
}
`,
    },
  ],
};
