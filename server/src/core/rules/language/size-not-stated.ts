/**
 * A surface of which nothing says how big it is.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const sizeNotStated: LanguageRule = {
  id: "size-not-stated",
  group: "language",
  severity: "warning",
  docs: {
    summary: "A surface has no `shape`.",
    why: "Litres, cost, fumes and hands-on time follow from its area, so they are left out for it.",
    remedy: "Add its shape, or the area that you measured; what is left as it is says so: `leave as found`.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Neither size nor wood is one finding",
      text: `piece box {
  built 2015
  surface lid { #! size-not-stated
    wear light
  }
}
`,
    },
    {
      title: "Wood, and no size",
      text: `piece box {
  built 2015
  surface lid { #! size-not-stated
    wood beech
  }
}
`,
    },
  ],
  passing: [
    {
      title: "A measured area",
      text: `piece box {
  built 2015
  surface lid {
    shape area 0.2 m2
    wood  beech
  }
}
`,
    },
    {
      title: "Nothing is done to it",
      text: `piece box {
  built 2015
  surface inside {
    wood beech
    note "leave as found"
  }
}
`,
    },
  ],
};
