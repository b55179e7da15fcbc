/**
 * A surface that children chew or food lies on, left before the last coat has cured or with a material that is not
 * meant for it. Nothing here says that a finish is safe: the label, its maker and local rules do.
 */
import { sentence } from "../../sentence.ts";
import { hasReached, stageHours, waitedOf } from "../../surface/state.ts";
import { actionOf } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import { afterText, coatName, factorText, hoursText, related } from "../texts.ts";

export const childOrFoodSurface: TradeRule = {
  id: "child-or-food-surface",
  group: "wear",
  severity: "warning",
  docs: {
    summary:
      "A children's or food surface is left before its last coat has its full cure, or with a material that is not meant for it.",
    why: "Until it is cured a coat gives off solvent and uncured resin, and pigments, dyes and fillers are not made to meet food.",
    remedy:
      "End the recipe with `wait until cured`, and use a last coat whose label says that it is meant for children's furniture or for contact with food; the label, the safety data sheet and local rules decide.",
    sources: [
      "21 CFR 175.300 for coatings that meet food, which names no cure time and approves no product",
      "16 CFR 1303 for paint on children's furniture",
      "waiting for the full cure: common practice, no source",
    ],
  },
  failing: [
    {
      title: "A toy box handed over after a day",
      text: `piece toy_box "Toy box" {
  use_by children
  surface lid {
    shape panel 600 mm x 400 mm
    wood  beech
  }
}
recipe sealed {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac #! child-or-food-surface
  wait   24 h
}
job toys {
  piece toy_box
  apply sealed to lid
}
`,
    },
    {
      title: "Paint where food lies",
      text: `piece board "Bread board" {
  use_by food
  surface face {
    shape panel 400 mm x 250 mm
    wood  MDF
  }
}
recipe painted {
  safety ventilate, no_ignition
  layer  shellac_primer
  wait   until recoat
  layer  acrylic_paint #! child-or-food-surface
  wait   until cured
}
job boards {
  piece board
  apply painted to face
}
`,
    },
  ],
  passing: [
    {
      title: "The full cure; and adults' furniture is not asked",
      text: `piece toy_box "Toy box" {
  use_by children
  surface lid {
    shape panel 600 mm x 400 mm
    wood  beech
  }
}
piece box "Box" {
  surface lid {
    shape panel 600 mm x 400 mm
    wood  beech
  }
}
recipe sealed {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   7 days
}
recipe quick {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   24 h
}
job toys {
  piece toy_box
  apply sealed to lid
}
job boxes {
  piece box
  apply quick to lid
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      const use = run.piece?.useBy;
      if (!use || use.value === "adults" || run.continued || !run.final.certain) return;
      const last = run.final.layers.findLast((coat) => coat.origin === "new");
      const action = last && actionOf(run, last);
      if (!last?.family || !action) return;
      const surface = use.value === "food" ? "a surface for food" : "a children's surface";
      const who = use.place ? [related(use.place, "Who uses the piece")] : [];
      if (last.family.unfitFor?.includes(use.value)) {
        report(action, {
          headline: `${sentence(coatName(last))} is the last layer of \`${run.label}\`, ${surface}, and is not meant for it`,
          why: "Its pigments, dyes or fillers are not made to meet food.",
          remedy:
            "Use a last coat whose label says that it is meant for this, and wait for its full cure; the label, the safety data sheet and local rules decide.",
          related: who,
        });
        return;
      }
      if (hasReached(run.final, last, "cured") !== "no") return;
      report(action, {
        headline: `\`${run.label}\` is ${surface}, and the recipe ends ${afterText(waitedOf(run.final, last).hours)} ${coatName(last)} goes on, which takes ${hoursText(stageHours(last, "cured")!)} to its full cure${factorText(last)}`,
        why: "Until then the coat still gives off solvent and uncured resin.",
        remedy:
          "End with `wait until cured`, and let the label and the safety data sheet say whether it is meant for this use at all.",
        related: who,
      });
    },
  },
};
