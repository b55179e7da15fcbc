/**
 * Distressing that wears a finish through to the wood, and nothing that goes over the bare places afterwards. Porous
 * paint that needs a clear all over anyway is `unprotected-layer`'s.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { samePlace } from "../../place.ts";
import { topCoat } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";

const FILE = (last: string) => `recipe aged {
  for    any
  safety dust_mask, no_ignition
  layer  acrylic_paint x 2 {
    wait until recoat
  }
  wait   until cured
  step   distress${last}
  step   dust
`;

export const distressedLeftBare: TradeRule = {
  id: "distressed-left-bare",
  group: "wear",
  severity: "hint",
  docs: {
    summary: "A finish is distressed to the wood, and nothing goes over the bare places.",
    why: "Where the paint is worn through, the wood lies open: it takes up dirt and water, turns grey there, and the edges of the paint go on flaking.",
    remedy: "Dust it and put a clear, oil or wax over the whole.",
    sources: [PRACTICE],
  },
  failing: [
    { title: "Paint worn at the edges, and left so", text: `${FILE(" #! distressed-left-bare")}}\n` },
  ],
  passing: [
    {
      title: "Waxed afterwards, as a layer or buffed on",
      text: `${FILE("")}  layer  paste_wax
  wait   until cured
}
${FILE("").replace("aged", "aged_and_buffed")}  step   buff with paste_wax
}
`,
    },
    {
      title: "A stain rubbed into the bare places, and a clear over it",
      text: `recipe aged {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  layer  acrylic_paint x 2 {
    wait until recoat
  }
  wait   until cured
  step   distress
  step   dust
  layer  oil_stain, wiped off
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      const { distressed, certain } = run.final;
      const top = topCoat(run.final);
      if (!distressed || !certain || run.continued || top?.origin !== "new" || top.family?.needsClear) return;
      const step = run.moments.findLast(({ action }) => samePlace(action.place, distressed.place))?.action;
      if (!step) return;
      report(step, {
        headline: t`The places rubbed through to the wood stay bare`,
        why: t`Nothing goes over them afterwards. Open wood takes up dirt and water and turns grey, and the finish goes on flaking from its edges.`,
        remedy: t`Dust it and put a clear, oil or wax over the whole.`,
      });
    },
  },
};
