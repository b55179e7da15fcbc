/**
 * A parameter or a `use` line that does nothing.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const unusedName: LanguageRule = {
  id: "unused-name",
  group: "language",
  severity: "hint",
  docs: {
    summary: "A parameter is not used in its recipe, or nothing here names anything from a used file.",
    why: "Every call must give an argument that changes nothing, or a file is loaded for nothing.",
    remedy: "Use it, or take it out.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A parameter that nothing uses",
      text: `recipe clear_coat(clear: material, coats: number = 2) { #! unused-name
  for   wood
  layer clear
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Used as a number of coats, and passed to another recipe",
      text: `recipe thin_coats(clear: material, coats: number = 1) {
  for   wood
  layer clear x coats {
    wait until recoat
  }
}

recipe clear_coat(clear: material, coats: number) {
  for    wood
  follow thin_coats(clear: clear, coats: coats)
  wait   until cured
}
`,
    },
  ],
};
