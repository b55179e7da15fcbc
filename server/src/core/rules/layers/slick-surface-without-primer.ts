/**
 * Paint straight on scuffed laminate or metal: it holds better on a primer that is made to bond. A hint, since some
 * paints are made to go on without one.
 */
import { leavesLayer } from "../../knowledge/families.ts";
import { slickSubstrate } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related, useName } from "../texts.ts";

export const slickSurfaceWithoutPrimer: TradeRule = {
  id: "slick-surface-without-primer",
  group: "layers",
  severity: "hint",
  docs: {
    summary: "Paint goes straight on laminate or metal without a primer.",
    why: "Most paints get little hold on laminate and metal even when these are scuffed, and chip at edges and handles.",
    remedy: "Put a bonding primer between the two, unless the paint's label says that it needs none.",
    sources: ["common practice, no source"],
  },
  failing: [
    {
      title: "Paint on scuffed laminate",
      text: `piece shelf "Shelf" {
  surface top {
    shape panel 800 mm x 300 mm
    wood  laminate
  }
}
recipe painted {
  for    laminate
  safety dust_mask
  step   scuff 220
  step   dust
  layer  acrylic_paint #! slick-surface-without-primer
  wait   until cured
}
job shelves {
  piece shelf
  apply painted to top
}
`,
    },
  ],
  passing: [
    {
      title: "A bonding primer first",
      text: `piece shelf "Shelf" {
  surface top {
    shape panel 800 mm x 300 mm
    wood  laminate
  }
}
recipe painted {
  for    laminate
  safety dust_mask
  step   scuff 220
  step   dust
  layer  bonding_primer
  wait   until recoat
  layer  acrylic_paint
  wait   until cured
}
job shelves {
  piece shelf
  apply painted to top
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      const slick = slickSubstrate(run);
      if (over?.role !== "paint" || !slick || before.openBelow || before.abrasions.length === 0) return;
      if (before.layers.some((coat) => !coat.family || leavesLayer(coat.family))) return;
      const place = run.surface?.substrate.place;
      report({
        headline: `${useName(action.use)} goes straight on ${slick}, without a primer`,
        why: "Most paints get little hold there even when it is scuffed, and chip at edges and handles.",
        remedy: "Put a bonding primer between the two, unless the paint's label says that it needs none.",
        related: place ? [related(place, "What the surface is made of")] : [],
        fixes: [
          insertAbove("undertaking", action, "Put a bonding primer on first", [
            "layer bonding_primer",
            "wait  until recoat",
          ]),
        ],
      });
    },
  },
};
