/**
 * Bare wood of a kind that inflames the skin, sanded dry with bare hands.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { IRRITATING_WOODS_SOURCE, irritationBy } from "../../knowledge/irritating-woods.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isBare, type Moment } from "../../surface/state.ts";
import { dutyChecks, type Need } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const irritatingWoodDust: TradeRule = {
  id: "irritating-wood-dust",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "Bare rosewood, cocobolo, ebony, iroko, teak, wenge or yew is sanded dry, and the recipe does not state `gloves`.",
    why: "Their dust inflames the skin of many people, some only after years, and whoever has become allergic stays so.",
    remedy:
      "State `safety gloves` and cover your arms, wash before you eat, and stop where the skin itches. The dust mask is asked for as for any wood.",
    sources: [IRRITATING_WOODS_SOURCE],
  },
  failing: [
    {
      title: "Iroko, with a mask and bare hands",
      text: `piece tray {
  built 2015
  surface face {
    shape panel 300 mm x 200 mm
    wood  iroko
  }
}

recipe smooth {
  for    wood
  safety dust_mask
  step   sand 120, 150 #! irritating-wood-dust
  step   dust
}

job trays {
  piece tray
  apply smooth to face
}
`,
    },
  ],
  passing: [
    {
      title: "Gloves on; and beech, which does not inflame the skin",
      text: `piece tray {
  built 2015
  surface face {
    shape panel 300 mm x 200 mm
    wood  teak
  }
  surface back {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

recipe smooth {
  for    wood
  safety dust_mask
  step   sand 120, 150
  step   dust
}

recipe smooth_with_gloves {
  for    wood
  safety dust_mask, gloves
  step   sand 120, 150
  step   dust
}

job trays {
  piece tray
  apply smooth to back
  apply smooth_with_gloves to face
}
`,
    },
  ],
  looksAt: ({ kind }) => kind !== "assumed",
  checks: dutyChecks("gloves", () => t`Whoever has become allergic to a wood stays so.`, need),
};

const RUBS: ReadonlySet<string> = new Set(["sand", "scuff", "distress"]);

function need({ action, before }: Moment<Action>, { surface }: SurfaceRun): Need | undefined {
  if (action.op !== "step" || action.wet || !RUBS.has(action.verb) || !isBare(before)) return undefined;
  const { name, place } = surface?.substrate ?? {};
  const effect = name && irritationBy(name);
  if (!effect) return undefined;
  return {
    who: t`the dust of ${translated(name)}`,
    reason: translated(effect),
    ...(place ? { cause: related(place, t`What the surface is made of`) } : {}),
  };
}
