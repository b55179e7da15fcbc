/**
 * A field without which the declaration says nothing.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const missingField: LanguageRule = {
  id: "missing-field",
  group: "language",
  severity: "error",
  docs: {
    summary:
      "A required field is missing: a material's `family`, a surface's `shape` and `wood`, a job's `piece` and `apply`.",
    why: "Without it nothing can be worked out from the declaration.",
    remedy: "Add the line that the message shows.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A job that does nothing",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

job boxes { #! missing-field
  piece box x 4
}
`,
    },
  ],
  passing: [
    {
      title: "All that is required",
      text: `material hall_clear {
  family waterborne polyurethane
}

piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
`,
    },
  ],
};
