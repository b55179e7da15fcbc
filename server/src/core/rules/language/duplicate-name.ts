/**
 * Two things of one kind under one name.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const duplicateName: LanguageRule = {
  id: "duplicate-name",
  group: "language",
  severity: "error",
  docs: {
    summary: "A name is declared twice in its kind, over the file and all that it uses.",
    why: "Only the first counts, and whoever reads the recipe cannot tell which is meant.",
    remedy: "Give one of the two another name. Only built-in materials may be shadowed.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Two recipes",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}

recipe clear_coat { #! duplicate-name
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
    {
      title: "Two surfaces, two parameters",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
  surface lid { #! duplicate-name
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

recipe clear_coat(clear: material, clear: material) { #! duplicate-name
  for   wood
  layer clear
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "A material and a recipe may share a name, and a built-in material may be shadowed",
      text: `material clear_coat {
  family waterborne polyurethane
}

material waterborne_polyurethane {
  family waterborne polyurethane
  covers 12 m2/L
}

recipe clear_coat {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
};
