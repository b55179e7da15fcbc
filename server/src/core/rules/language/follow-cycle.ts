/**
 * Recipes or jobs that come round to themselves.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const followCycle: LanguageRule = {
  id: "follow-cycle",
  group: "language",
  severity: "error",
  docs: {
    summary: "A recipe follows itself, directly or over others, or a job comes after itself.",
    why: "The work would never end.",
    remedy: "Take the line out, or follow another recipe.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Two recipes that follow each other",
      text: `recipe first {
  for    wood
  follow second #! follow-cycle
}

recipe second {
  for    wood
  follow first #! follow-cycle
}
`,
    },
    {
      title: "A job after itself",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
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
  after lid #! follow-cycle
  apply clear_coat to lid
}
`,
    },
  ],
  passing: [
    {
      title: "One follows the other",
      text: `recipe first {
  for    wood
  follow second
  wait   until cured
}

recipe second {
  for   wood
  layer waterborne_polyurethane
}
`,
    },
  ],
};
