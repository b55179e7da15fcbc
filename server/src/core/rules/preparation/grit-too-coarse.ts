/**
 * The last grit before a layer leaves scratches that the layer shows.
 *
 * What shows depends on what goes on: a stain settles in scratches that a paint hides. Each kind of layer has a grit
 * from which on nothing is said and one below which the scratches are sure to show (a warning); between them it is a
 * matter of taste and light, a hint. Public painting procedures sand with 80 before a primer and with 100 to 150
 * between coats of paint.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import {
  GRIT_THRESHOLDS_SOURCE,
  type GritLimit,
  LAST_GRITS,
  PAINT_GRITS_SOURCE,
} from "../../knowledge/abrasives.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { type SurfaceState, topCoat } from "../../surface/state.ts";
import { lastGrit, lastSanding, sandingLines } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related, useName } from "../texts.ts";

export const gritTooCoarse: TradeRule = {
  id: "grit-too-coarse",
  group: "preparation",
  severity: "warning",
  docs: {
    summary:
      "The last grit leaves scratches that show: coarser than 120 before a stain or clear, than 80 before a primer, than 100 before paint and between coats of paint, or than 180 between other coats.",
    why: "Stain settles in the scratches and darkens them, and a film follows them: they show in slanting light. It is a hint as long as the scratches may still be hidden, and a warning where they are sure to show.",
    remedy: "Sand on to a finer grit before the layer, without a jump.",
    sources: [PAINT_GRITS_SOURCE, GRIT_THRESHOLDS_SOURCE],
  },
  failing: [
    {
      title: "A stain on wood sanded to 100",
      text: `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 80, 100
  step   dust
  layer  gel_stain, wiped off #! grit-too-coarse
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "60 before paint is sure to show, 80 may",
      text: `recipe panel_painted {
  for    wood
  safety dust_mask
  step   sand 60
  step   dust
  layer  acrylic_paint #! grit-too-coarse
  wait   until cured
}
recipe shelf_painted {
  for    wood
  safety dust_mask
  step   sand 80
  step   dust
  layer  acrylic_paint #! grit-too-coarse
  wait   until cured
}
`,
    },
    {
      title: "150 between two clear coats",
      text: `recipe clear_coats {
  for    any
  safety dust_mask
  layer  waterborne_polyurethane x 2 { #! grit-too-coarse
    wait until recoat
    step sand 150
    step dust
  }
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "120 before a stain, 180 between coats",
      text: `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 80, 120
  step   dust
  layer  gel_stain, wiped off
  wait   72 h
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 180
    step dust
  }
  wait   until cured
}
`,
    },
    {
      title: "100 before paint",
      text: `recipe painted {
  for    wood
  safety dust_mask
  step   sand 80, 100
  step   dust
  layer  acrylic_paint
  wait   until cured
}
`,
    },
    {
      title: "80 before an exterior primer, and 150 between the coats of paint",
      text: `recipe painted {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 80
  step   dust
  layer  alkyd_primer, by brush
  wait   until recoat
  step   scuff 150
  step   dust
  layer  alkyd_paint x 2, by brush {
    wait until recoat
    step sand 150
    step dust
  }
  wait   until cured
}
`,
    },
    {
      title: "An old film scuffed with 150",
      text: `piece door {
  built 1995
  surface face {
    shape panel 700 mm x 400 mm
    wood  beech
    existing alkyd paint
    lead     none_found by laboratory 2026-11-03
  }
}
recipe painted {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 150
  step   dust
  layer  acrylic_paint
  wait   until cured
}
job doors {
  piece door
  apply painted to face
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      const sanding = lastSanding(run, index);
      const last = lastGrit(sanding);
      if (!over || !sanding || last === undefined) return;
      const limit = limitFor(over, before);
      if (!limit || last >= limit.quietFrom) return;
      const coarsest = limit.quietFrom;
      const name = useName(action.use);
      report({
        severity: last < limit.sureBelow ? "warning" : "hint",
        headline: t`Grit ${last} is too coarse ${translated(limit.where)}: ${coarsest} or finer`,
        why:
          over.role === "stain"
            ? t`A stain settles in the scratches and shows them as dark lines.`
            : last < limit.sureBelow
              ? t`The scratches show through the film in slanting light.`
              : t`The scratches may show through the film in slanting light.`,
        remedy: t`Sand on to ${coarsest} or finer, dust, and then apply ${name}.`,
        abrades: "surface",
        related: [related(sanding.place, t`Sanded to ${last} here`)],
        fixes:
          action.coat === 1 && last >= coarsest / 2
            ? [insertAbove("undertaking", action, t`Sand on to ${coarsest}`, sandingLines(action, coarsest))]
            : [],
      });
    },
  },
};

/** Fillers are sanded again, so any grit will do below them; fillers and conditioners below count as the wood. */
function limitFor(over: Family, before: SurfaceState): GritLimit | undefined {
  if (over.role === "filler" || over.group === "auxiliary") return undefined;
  const top = topCoat(before);
  const role = top?.family?.role;
  const isPaint = over.role === "paint" || over.role === "primer";
  if (top?.origin === "new" && role !== "filler" && role !== "conditioner") {
    return isPaint ? LAST_GRITS.betweenPaints : LAST_GRITS.betweenCoats;
  }
  if (over.role === "primer") return LAST_GRITS.beforePrimer;
  if (over.role === "paint") return LAST_GRITS.beforePaint;
  return over.role === "stain" ? LAST_GRITS.beforeStain : LAST_GRITS.beforeFinish;
}
