/**
 * Bare wood polished until nothing soaks in or holds.
 *
 * Stains and paints are `grit-too-fine`'s. Drying oil, shellac, lacquer and what is wiped off stay out: many lay them
 * on wood sanded as fine as this, with good reason.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { FINEST_ON_BARE_WOOD } from "../../knowledge/abrasives.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { StepAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isBare } from "../../surface/state.ts";
import { isWooden, lastGrit } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const burnishedWood: TradeRule = {
  id: "burnished-wood",
  group: "preparation",
  severity: "hint",
  docs: {
    summary:
      "Bare wood is sanded finer than 400, or buffed, right before a varnish, a waterborne clear, hardwax oil or conditioner.",
    why: "So fine a paper burnishes the wood: the pores are rubbed shut, oil and conditioner stay on top, and a film finds nothing to hold in.",
    remedy: "Stop at 180 to 320 on bare wood, and keep the fine grits for the last coat.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "Sanded to 600 before a clear",
      text: `recipe polished {
  for    wood
  safety dust_mask
  step   sand 80, 120, 220, 320, 600
  step   dust
  layer  waterborne_polyurethane #! burnished-wood
  wait   until cured
}
`,
    },
    {
      title: "Buffed bare before hardwax oil",
      text: `recipe polished {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 80, 120, 180
  step   dust
  step   buff
  layer  hardwax_oil #! burnished-wood
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "400 is the finest",
      text: `recipe polished {
  for    wood
  safety dust_mask
  step   sand 80, 120, 220, 400
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "An oil rubbed in, and what lies below is not known",
      text: `recipe oiled {
  for    wood
  safety dust_mask, wet_rags
  step   sand 80, 120, 220, 320, 600
  step   dust
  layer  drying_oil, wiped off
  wait   until cured
}
recipe refreshed {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 600
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      if (!over || action.wiped || !needsOpenWood(over) || !isBare(before) || isWooden(run) !== "yes") return;
      const polish = lastPolish(run, index);
      if (!polish) return;
      const grit = lastGrit(polish);
      if (polish.verb !== "buff" && (grit === undefined || grit <= FINEST_ON_BARE_WOOD)) return;
      report({
        headline:
          polish.verb === "buff"
            ? t`Buffed wood is too smooth for \`${action.use.name}\``
            : t`Wood sanded to ${grit!} is too smooth for \`${action.use.name}\``,
        why: over.penetrating
          ? t`Polished wood has its pores rubbed shut, and what should soak in stays on top.`
          : t`Polished wood gives a film nothing to hold in.`,
        remedy:
          polish.verb === "buff"
            ? t`Open the wood again with 220, and keep the buffing for the last coat.`
            : t`Stop at 180 to 320 on bare wood, ${FINEST_ON_BARE_WOOD} at most, and keep finer grits for the last coat.`,
        related: [
          related(polish.place, polish.verb === "buff" ? t`Buffed here` : t`Sanded to ${grit!} here`),
        ],
      });
    },
  },
};

/** Shellac and lacquer hold on anything that is clean. */
function needsOpenWood(over: Family): boolean {
  if (over.role === "conditioner" || over.name === "hardwax oil") return true;
  return over.role === "clear" && (over.drying === "waterborne" || over.drying === "oxidising");
}

/** The last step that makes the wood smooth or rough; water opens what was burnished. */
function lastPolish(run: SurfaceRun, index: number): StepAction | undefined {
  for (let at = index - 1; at >= 0; at -= 1) {
    const { action, after } = run.moments[at]!;
    if (action.op !== "step") continue;
    if (["sand", "scuff", "buff"].includes(action.verb)) return action.use ? undefined : action;
    if (after.wet?.place === action.place || ["strip", "scrape", "distress"].includes(action.verb))
      return undefined;
  }
  return undefined;
}
