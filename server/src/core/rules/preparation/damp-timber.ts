/**
 * Wood that is too damp to finish, by the `moisture` of its surface or by what the recipe's own words say of it.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { HANDBOOK_16 } from "../../knowledge/sources.ts";
import type { TradeRule } from "../rule.ts";
import { spokenLines, textOf } from "../spoken-words.ts";
import { related } from "../texts.ts";

/** Percent of the dry weight, the most that wood may hold before a finish goes on. */
const MOST_PERCENT = 20;

export const dampTimber: TradeRule = {
  id: "damp-timber",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: `A surface, a note or a step says that the wood holds more than ${MOST_PERCENT} % moisture, and it is finished all the same.`,
    why: "Damp wood goes on drying under the finish: it shrinks and warps, and the water lifts the film in blisters.",
    remedy:
      "Let the wood dry to what it will have in the room, about 6 to 12 % indoors, before it is sanded and finished.",
    sources: [
      `${HANDBOOK_16}: finish no wood above 20 % moisture content, from memory, confidence medium`,
      "Wood Handbook FPL-GTR-190 chapter 13: 6 to 12 % for indoor use, from memory, confidence medium",
    ],
  },
  failing: [
    {
      title: "The meter says so of the surface",
      text: `piece bench {
  surface seat {
    shape    area 1 m2
    wood     oak
    moisture 24 %
  }
}
recipe cleared {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  layer  waterborne_polyurethane x 2, between sand 220 #! damp-timber
  wait   until cured
}
job benches {
  piece bench
  apply cleared
}
`,
    },
    {
      title: "Straight out of the rain",
      text: `recipe varnished {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  note   "The meter says 26 % moisture, but the opening is near." #! damp-timber
  step   sand 120, 180
  step   dust
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Dry wood by the meter",
      text: `piece bench {
  surface seat {
    shape    area 1 m2
    wood     oak
    moisture 9 %
  }
}
recipe cleared {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  layer  waterborne_polyurethane x 2, between sand 220
  wait   until cured
}
job benches {
  piece bench
  apply cleared
}
`,
    },
    {
      title: "Dry wood, a bound to wait for, and the damp of the air",
      text: `recipe varnished {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  note   "The meter says 9 % moisture."
  note   "Wait until the wood is below 20 % moisture, 26 % is too much."
  note   "The air in the yard had 85 % humidity."
  step   sand 120, 180
  step   dust
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ kind, isSpoken }) => isSpoken || kind !== "assumed",
  checks: {
    onRun: ({ run, report }) => {
      const layer = run.moments.find(({ action }) => action.op === "layer")?.action;
      if (!layer) return;
      const measured = run.surface?.moisture;
      if (measured && measured.value > MOST_PERCENT)
        report(layer, {
          headline: t`Wood at ${measured.value} % moisture is too damp to finish`,
          why: t`It goes on drying under the finish: it shrinks and warps, and the water lifts the film in blisters.`,
          remedy: t`Let it dry to about 6 to 12 % first, and measure again.`,
          related: measured.place ? [related(measured.place, t`What the meter says`)] : [],
        });
      for (const action of spokenLines(run)) {
        const percent = moistureIn(textOf(action) ?? "");
        if (percent === undefined || percent <= MOST_PERCENT) continue;
        report(action, {
          headline: t`Wood at ${percent} % moisture is too damp to finish`,
          why: t`It goes on drying under the finish: it shrinks and warps, and the water lifts the film in blisters.`,
          remedy: t`Let it dry indoors to about 6 to 12 % first, and put off what cannot wait.`,
          related: [related(layer.place, t`The first coat`)],
        });
      }
    },
  },
};

const MOISTURE =
  /(\d{1,3}(?:[.,]\d+)?)\s*(?:%|per\s?cent)\s*(?:wood\s+)?(?:moisture|MC\b|water\s+content)|(?:moisture(?:\s+content)?|MC)\s*(?:\w+\s+){0,3}?(\d{1,3}(?:[.,]\d+)?)\s*(?:%|per\s?cent)/iu;
/** What is to be waited for, or was. */
const BOUND =
  /\b(?:until|till|below|under|less\s+than|at\s+most|down\s+to|never|not|no|above|over|was|were|had|too\s+much)\b/iu;

/** The moisture that a text says the wood has; undefined where it speaks of a bound. */
function moistureIn(text: string): number | undefined {
  for (const sentence of text.split(/[;!?]|\.(?=\s|$)/u)) {
    const match = MOISTURE.exec(sentence);
    if (match && !BOUND.test(sentence)) return Number((match[1] ?? match[2])!.replace(",", "."));
  }
  return undefined;
}
