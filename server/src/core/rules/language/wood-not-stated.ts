/**
 * A surface of which nothing says what it is made of.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const woodNotStated: LanguageRule = {
  id: "wood-not-stated",
  group: "language",
  severity: "warning",
  docs: {
    summary: "A surface has no `wood`.",
    why: "Tannin, resin, open pores, a thin veneer and bare metal ask for different work; without the line it counts as the worst that it may be.",
    remedy: "Add the wood, the sheet or the metal; `wood unknown` where nobody knows.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A size, and no wood",
      text: `piece box {
  built 2015
  surface lid { #! wood-not-stated
    shape panel 600 mm x 400 mm x 18 mm
  }
}
`,
    },
  ],
  passing: [
    {
      title: "A sheet",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 600 mm x 400 mm x 18 mm
    wood  MDF
  }
}
`,
    },
    {
      title: "Nobody knows",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 600 mm x 400 mm x 18 mm
    wood  unknown
  }
}
`,
    },
  ],
};
