/**
 * The last grit before a layer leaves scratches that the layer shows.
 */
import {
  COARSEST_BEFORE_FINISH,
  COARSEST_BEFORE_PAINT,
  COARSEST_BETWEEN_COATS,
  GRIT_THRESHOLDS_SOURCE,
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
      "The last grit is coarser than 120 before a stain or clear, than 100 before paint, or than 180 between coats.",
    why: "Stain settles in the scratches and darkens them, and a film follows them: they show in every slanting light.",
    remedy: "Sand on to a finer grit before the layer, without a jump.",
    sources: [GRIT_THRESHOLDS_SOURCE],
  },
  failing: [
    {
      title: "A stain on wood sanded to 100",
      text: `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 80, 100
  step   dust
  layer  gel_stain, wiped #! grit-too-coarse
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "A paint on wood sanded to 80",
      text: `recipe painted {
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
      title: "150 between two coats",
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
  layer  gel_stain, wiped
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
      const { coarsest, where } = limitFor(over, before) ?? {};
      if (coarsest === undefined || last >= coarsest) return;
      const name = useName(action.use);
      report({
        headline: `The last grit before ${name} is ${last}, and ${where} ${coarsest} is the coarsest`,
        why:
          over.role === "stain"
            ? "A stain settles in the scratches and shows them as dark lines."
            : "The scratches telegraph through the film and show in slanting light.",
        remedy: `Sand on to ${coarsest} or finer, dust, and then put ${name} on.`,
        related: [related(sanding.place, `Sanded to ${last} here`)],
        fixes:
          action.coat === 1 && last >= coarsest / 2
            ? [insertAbove("undertaking", action, `Sand on to ${coarsest}`, sandingLines(action, coarsest))]
            : [],
      });
    },
  },
};

interface Limit {
  readonly coarsest: number;
  readonly where: string;
}

/** Fillers are sanded again, so any grit will do below them; fillers and conditioners below count as the wood. */
function limitFor(over: Family, before: SurfaceState): Limit | undefined {
  if (over.role === "filler" || over.group === "auxiliary") return undefined;
  const top = topCoat(before);
  const role = top?.family?.role;
  if (top?.origin === "new" && role !== "filler" && role !== "conditioner") {
    return { coarsest: COARSEST_BETWEEN_COATS, where: "over another coat" };
  }
  return over.role === "paint" || over.role === "primer"
    ? { coarsest: COARSEST_BEFORE_PAINT, where: "before paint" }
    : {
        coarsest: COARSEST_BEFORE_FINISH,
        where: over.role === "stain" ? "before a stain" : "before a finish",
      };
}
