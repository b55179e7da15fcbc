/**
 * `wait until …` counts from the last layer or filling; before the first one there is nothing to wait for.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import { firstIndexOf, isLayer } from "../../surface/run-index.ts";
import { materialOf } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const waitWithoutEffect: TradeRule = {
  id: "wait-without-effect",
  group: "hygiene",
  severity: "hint",
  docs: {
    summary:
      "A `wait until …` stands before the first layer or filling of a job's surface, or waits for a time that no label states.",
    why: "It counts from the end of the last layer or filling; there is none, or no time to wait for, so no time passes.",
    remedy: "State the time, such as `wait 24 h` or `wait overnight`, or take the line out.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "No label says when it can be stacked",
      text: `recipe painted {
  safety dust_mask
  layer  acrylic_paint x 2, between sand 320
  wait   until stackable #! wait-without-effect
}
`,
    },
    {
      title: "Water from cleaning is not a layer",
      text: `recipe clear_coat {
  for    wood
  step   clean with soap
  wait   until recoat #! wait-without-effect
  safety dust_mask
  step   sand 150, 220
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
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
  apply clear_coat to lid
}
`,
    },
  ],
  passing: [
    {
      title: "The label says when it can be stacked",
      text: `material door_white {
  family    acrylic paint
  stackable 16 h
}

recipe painted {
  safety dust_mask
  layer  door_white x 2, between sand 320
  wait   until stackable
}
`,
    },
    {
      title: "A time is stated",
      text: `recipe clear_coat {
  for    wood
  step   clean with soap
  wait   overnight
  safety dust_mask
  step   sand 150, 220
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
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
  apply clear_coat to lid
}
`,
    },
    {
      title: "A recipe by itself may go on where another left off",
      text: `recipe second_coat {
  for    wood
  wait   until recoat
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
  checks: {
    onWait: ({ action, before, run, report, dries }) => {
      const material = dries && materialOf(dries.of);
      if (action.until === "stackable" && material && !dries.time) {
        report({
          headline: t`\`${material.name}\` does not say when it can be stacked`,
          why: t`So no time passes here, and stacked too soon the pieces print or stick.`,
          remedy: t`Take the time from the label, as \`stackable 16 h\` in the material, or write it here, such as \`wait 16 h\`.`,
          ...(material.builtIn ? {} : { related: [related(material.namePlace, t`The material`)] }),
        });
        return;
      }
      if (run.kind === "assumed" || !action.until || before.openBelow) return;
      if (before.fillings.length > 0 || before.layers.some((coat) => coat.origin !== "existing")) return;
      // What was put on and stripped again still counted while it was there.
      if (firstIndexOf(run, isLayer) < action.index) return;
      report({
        headline: t`\`wait until ${action.until}\` has nothing to wait for`,
        why: t`It counts from the last layer or filling, and nothing was put on above this line. So no time passes here, and the wet surface gets no time to dry.`,
        remedy: t`State the time, such as \`wait overnight\`, or take the line out.`,
      });
    },
  },
};
