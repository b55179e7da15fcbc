/**
 * Recipes beside pieces that no job brings together, where it is not clear which recipe is meant for which surface.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const recipeWithoutJob: LanguageRule = {
  id: "recipe-without-job",
  group: "language",
  severity: "hint",
  docs: {
    summary: "No job applies a recipe, and it is not clear which piece of its file it is for.",
    why: "The wood, the wear, the age, the old finish and the use of a piece decide about a recipe. Where no job says what it is for, a recipe is checked with the surfaces of its file that it must be meant for: those that its name names, else those of the piece that it names, else those that no other recipe fits by its `for`. Where two recipes are left for a surface, it is checked with neither, and nothing that comes of the piece is found.",
    remedy: "Write a job that names the piece and applies the recipe to its surfaces.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Two recipes for wood, and one box of wood",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

recipe pale { #! recipe-without-job
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}

recipe matt { #! recipe-without-job
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "One recipe and one piece: they are checked together",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

recipe pale {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}
`,
    },
    {
      title: "Recipes that name their surfaces",
      text: `piece table {
  built 2015
  surface top {
    shape panel 300 mm x 200 mm
    wood  beech
  }
  surface legs {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

recipe clear_top {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}

recipe matt_legs {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
    {
      title: "A collection of recipes, without pieces",
      text: `recipe pale {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}

recipe matt {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
  ],
};
