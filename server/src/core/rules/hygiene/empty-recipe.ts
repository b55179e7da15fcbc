/**
 * A job that applies a recipe in which nothing stands: most likely it was meant to be written later.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const emptyRecipe: TradeRule = {
  id: "empty-recipe",
  group: "hygiene",
  severity: "hint",
  docs: {
    summary: "A job applies a recipe that has no lines.",
    why: "Nothing is done to the surface, and areas, litres and dates come out without it.",
    remedy: "Write the recipe's lines, or take the `apply` line out.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Only its kind of surface is stated",
      text: `recipe later {
  for wood
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
  apply later to lid #! empty-recipe
}
`,
    },
  ],
  passing: [
    {
      title: "Not yet applied",
      text: `recipe later {
  for wood
}
`,
    },
  ],
  looksAt: ({ kind }) => kind === "job",
  checks: {
    onRun: ({ run, reportAt }) => {
      if (run.kind !== "job") return;
      for (const { recipe, apply } of run.applied) {
        if (!apply || recipe.statements.some((statement) => statement.kind !== "field")) continue;
        reportAt(apply, {
          headline: t`\`${recipe.name}\` has no lines, so nothing is done here`,
          why: t`Areas, litres and dates come out as if this surface were left alone.`,
          remedy: t`Write the recipe's lines, or take this line out.`,
          related: [related(recipe.namePlace, t`The recipe without lines`)],
        });
      }
    },
  },
};
