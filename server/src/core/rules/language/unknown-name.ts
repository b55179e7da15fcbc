/**
 * A name that nothing declares: mostly a slip of the finger.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const unknownName: LanguageRule = {
  id: "unknown-name",
  group: "language",
  severity: "error",
  docs: {
    summary: "A name is used that neither this file nor one that it uses declares, and that is not built in.",
    why: "What cannot be found cannot be judged, bought or scheduled.",
    remedy: "Fix the name, declare it, or name the file that does with `use`.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A material, a shop and a surface",
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
  in    shed #! unknown-name
  apply clear_coat(clear: waterborne_polyuretane) to lid, base #! unknown-name, unknown-name
}
`,
    },
    {
      title: "A recipe to follow",
      text: `recipe clear_coat {
  for    wood
  follow prepare #! unknown-name
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "A surface of two pieces that does not say whose",
      text: `piece shelf {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}

job lids {
  piece box
  piece shelf
  apply clear_coat to lid #! unknown-name
}
`,
    },
  ],
  passing: [
    {
      title: "Built-in materials need no declaration",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
};
