/**
 * Files that use each other in a circle.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const useCycle: LanguageRule = {
  id: "use-cycle",
  group: "language",
  severity: "error",
  docs: {
    summary: "A file uses itself, directly or over others.",
    why: "Which of the two is read first would decide what a name means.",
    remedy: "Move what both need into a third file that both use.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A file that uses itself",
      text: `use "test.finish" #! use-cycle

recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Nothing is used",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
};
