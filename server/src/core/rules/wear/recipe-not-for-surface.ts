/**
 * A recipe that says what it is for, applied to a surface of something else.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { Substrate } from "../../model/model.ts";
import { orList } from "../../model/suggest.ts";
import { suits } from "../../surface/suits.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const recipeNotForSurface: TradeRule = {
  id: "recipe-not-for-surface",
  group: "wear",
  severity: "warning",
  docs: {
    summary: "A job applies a recipe to a surface that it is not for.",
    why: "Grits, solvents and primers that suit solid wood go through a veneer, and nothing made for wood holds on laminate or metal.",
    remedy: "Apply another recipe to this surface, or change the recipe's `for` line if it does suit it.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "A recipe for solid wood on metal",
      text: `piece stool "Stool" {
  surface legs {
    shape 4 of round 25 mm x 450 mm
    wood  metal
  }
}
recipe sealed {
  for    wood
  safety ventilate, no_ignition, dust_mask
  step   scuff 220
  step   dust
  layer  dewaxed_shellac
  wait   until cured
}
job stools {
  piece stool
  apply sealed to legs #! recipe-not-for-surface
}
`,
    },
    {
      title: "A recipe for veneer on solid wood",
      text: `piece box "Box" {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
recipe sealed {
  for    veneer
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}
job boxes {
  piece box
  apply sealed to lid #! recipe-not-for-surface
}
`,
    },
  ],
  passing: [
    {
      title: "Wood takes veneer and sheet goods; veneer takes plywood; any takes all",
      text: `piece box "Box" {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech, veneer 0.6 mm
  }
  surface inside {
    shape panel 300 mm x 200 mm
    wood  plywood
  }
  surface back {
    shape panel 300 mm x 200 mm
    wood  MDF
  }
}
recipe sealed {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}
recipe thin {
  for    veneer
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}
recipe primed {
  safety ventilate, no_ignition
  layer  shellac_primer
  wait   until cured
}
job boxes {
  piece box
  apply sealed to lid, inside, back
}
job more_boxes {
  piece box
  apply thin to lid, inside
  apply primed to back
}
`,
    },
  ],
  looksAt: ({ kind }) => kind !== "assumed",
  checks: {
    onRun: ({ run, reportAt }) => {
      const substrate = run.surface?.substrate;
      if (!substrate || substrate.kind === "unknown") return;
      for (const { recipe, apply } of run.applied) {
        if (!apply || recipe.forKinds.length === 0) continue;
        if (recipe.forKinds.some((kind) => suits(kind, substrate))) continue;
        const made = translated(substrate.name);
        const name = substrate.veneerMm === undefined ? made : t`${made} veneer`;
        reportAt(apply, {
          headline: t`This recipe is for ${orList(recipe.forKinds.map(translated))}, and \`${run.label}\` is ${name}`,
          why: WHY[substrate.kind]?.() ?? t`Its grits and materials are chosen for something else.`,
          remedy: t`Apply another recipe to \`${run.label}\`, or change the recipe's \`for\` line if it does suit it.`,
          related: [
            ...(substrate.place ? [related(substrate.place, t`What the surface is made of`)] : []),
            ...(recipe.forPlace ? [related(recipe.forPlace, t`What the recipe is for`)] : []),
          ],
        });
      }
    },
  },
};

const WHY: Readonly<Partial<Record<Substrate["kind"], () => string>>> = {
  laminate: () => t`Nothing soaks into laminate, and what is made for wood does not hold on it.`,
  metal: () => t`Nothing soaks into metal, and what is made for wood does not hold on it.`,
};
