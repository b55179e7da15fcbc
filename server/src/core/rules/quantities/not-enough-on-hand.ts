/**
 * A material that only comes from the cupboard, and there is not enough of it: it says what is on hand but not how it
 * is sold. The finding stands on the line with which it runs out.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { figuresIn } from "../../measure/shown-figures.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const notEnoughOnHand: TradeRule = {
  id: "not-enough-on-hand",
  group: "quantities",
  severity: "warning",
  docs: {
    summary:
      "The job needs more of a material than is on hand, and the material does not say how it is sold.",
    why: "The can runs empty in the middle of a coat, and a coat that is finished from another day's batch shows its lap.",
    remedy: "Buy more before the work begins and state it with `packs`, or use another material.",
    sources: ["arithmetic with the material's own figures", "common practice, no source"],
  },
  failing: [
    {
      title: "A quarter of a litre for two coats on 1.2 m2",
      text: `material old_stock {
  family  waterborne polyurethane
  covers  10 m2/L
  on_hand 250 mL
}

piece shelf {
  surface top {
    shape area 1.2 m2
    wood  beech
  }
}

recipe two_coats {
  safety dust_mask
  layer  old_stock x 2 { #! not-enough-on-hand
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}

job shelves {
  piece shelf
  apply two_coats to top
}
`,
    },
  ],
  passing: [
    {
      title: "Just enough with its spare",
      text: `material old_stock {
  family  waterborne polyurethane
  covers  10 m2/L
  on_hand 264 mL
}

piece shelf {
  surface top {
    shape area 1.2 m2
    wood  beech
  }
}

recipe two_coats {
  safety dust_mask
  layer  old_stock x 2 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}

job shelves {
  piece shelf
  apply two_coats to top
}
`,
    },
    {
      title: "The rest can be bought, and what says nothing is not counted",
      text: `material hall_clear {
  family  waterborne polyurethane
  covers  10 m2/L
  on_hand 100 mL
  packs   946 mL for 28.00
}

piece shelf {
  surface top {
    shape area 1.2 m2
    wood  beech
  }
}

recipe two_coats {
  safety dust_mask
  layer  waterborne_polyurethane
  wait   until recoat
  step   sand 220
  step   dust
  layer  hall_clear
  wait   until cured
}

job shelves {
  piece shelf
  apply two_coats to top
}
`,
    },
  ],
  checks: {
    onJob: (ctx) => {
      const say = figuresIn(ctx.units);
      for (const { material, litres, onHand, draws } of ctx.needs.values()) {
        if (!material.onHandPlace || material.sold.length > 0 || litres <= onHand + 1e-9) continue;
        const last = runsOut(draws, onHand);
        if (!last) continue;
        ctx.report(last.run, last.action, {
          headline: t`\`${material.name}\`: ${say.litres(litres)} needed, ${say.litres(onHand)} on hand`,
          why: t`Spare is included. The can runs empty in the middle of the work, and the material does not say how more is sold.`,
          remedy: t`Get more before the work begins and state it with \`packs\` or \`on_hand\`, or use another material.`,
          related: [related(material.onHandPlace, t`What is on hand`)],
        });
      }
    },
  },
};

/** The draw that empties the stock. */
function runsOut<D extends { readonly litres?: number }>(draws: readonly D[], onHand: number): D | undefined {
  let used = 0;
  return draws.find((draw) => {
    used += draw.litres ?? 0;
    return used > onHand + 1e-9;
  });
}
