/**
 * A call that leaves out what the recipe needs.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const missingArgument: LanguageRule = {
  id: "missing-argument",
  group: "language",
  severity: "error",
  docs: {
    summary: "A call leaves out an argument whose parameter has no default.",
    why: "What depends on it cannot be worked out.",
    remedy: "Add the argument inside the parentheses.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "No material for the clear",
      text: `recipe clear_coat(clear: material) {
  for   wood
  layer clear
  wait  until cured
}

piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

job lid {
  piece box
  apply clear_coat to lid #! missing-argument
}
`,
    },
  ],
  passing: [
    {
      title: "A default stands in",
      text: `recipe clear_coat(clear: material = waterborne_polyurethane) {
  for   wood
  layer clear
  wait  until cured
}

piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

job lid {
  piece box
  apply clear_coat to lid
}
`,
    },
  ],
};
