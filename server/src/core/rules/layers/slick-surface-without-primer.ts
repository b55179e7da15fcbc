/**
 * Paint straight on laminate, melamine, foil or metal. Scuffed, that is a hint, since some paints are made to go on without
 * a primer; neither scuffed nor primed, it peels.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { leavesLayer } from "../../knowledge/families.ts";
import { metalPrimerLines, scuffLines, slickName } from "../coat-queries.ts";
import { rustingMetal } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related, useName } from "../texts.ts";

export const slickSurfaceWithoutPrimer: TradeRule = {
  id: "slick-surface-without-primer",
  group: "layers",
  severity: "warning",
  docs: {
    summary:
      "Paint goes straight on laminate, melamine, foil or metal without scuffing and a primer (a hint where it was scuffed).",
    why: "Most paints get little hold on laminate and metal even when these are scuffed, and chip at edges and handles.",
    remedy:
      "Scuff it, dust it and put a bonding primer between the two, unless the paint's label says that it needs none.",
    sources: ["common practice, no source"],
  },
  failing: [
    {
      title: "Paint on laminate that was only washed",
      text: `recipe painted {
  for   laminate
  step  clean with soap
  layer acrylic_paint x 2 { #! slick-surface-without-primer
    wait until recoat
  }
  wait  until cured
}
`,
    },
    {
      title: "Paint on a melamine shelf",
      text: `piece shelf "Shelf" {
  surface top {
    shape panel 800 mm x 300 mm
    wood  melamine
  }
}
recipe painted {
  for   any
  layer acrylic_paint #! slick-surface-without-primer
  wait  until cured
}
job shelves {
  piece shelf
  apply painted to top
}
`,
    },
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
  looksAt: ({ roles }) => roles.has("paint"),
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      const slick = slickName(run);
      if (over?.role !== "paint" || !slick) return;
      if (before.layers.some((coat) => !coat.family || leavesLayer(coat.family))) return;
      const isScuffed = before.abrasions.length > 0;
      // What is there already, once it is scuffed, may be a primer or paint that holds.
      if (before.openBelow && isScuffed) return;
      const place = run.surface?.substrate.place;
      const rusts = rustingMetal(run) !== undefined;
      const told = translated(slick);
      const primer = rusts ? metalPrimerLines(action) : ["layer bonding_primer", "wait  until recoat"];
      report({
        ...(isScuffed ? { severity: "hint" as const } : {}),
        headline: isScuffed
          ? t`${useName(action.use)} goes straight on ${told}, without a primer`
          : t`${useName(action.use)} goes straight on ${told}, neither scuffed nor primed`,
        why: isScuffed
          ? t`Most paints get little hold there even when it is scuffed, and chip at edges and handles.`
          : t`Such a smooth, hard surface gives paint no hold, and it scratches or peels off.`,
        remedy: isScuffed
          ? rusts
            ? t`Put an alkyd primer, or another that keeps rust away, between the two, unless the paint's label says that it needs none.`
            : t`Put a bonding primer between the two, unless the paint's label says that it needs none.`
          : rusts
            ? t`Scuff it lightly with 220 grit, dust it off and put an alkyd primer, or another that keeps rust away, on before the paint.`
            : t`Scuff it lightly with 220 grit, dust it off and put a bonding primer on before the paint.`,
        ...(isScuffed ? {} : { abrades: "surface" as const }),
        related: place ? [related(place, t`What the surface is made of`)] : [],
        fixes: [
          isScuffed
            ? insertAbove(
                "undertaking",
                action,
                rusts ? t`Put an alkyd primer on first` : t`Put a bonding primer on first`,
                primer,
              )
            : insertAbove("undertaking", action, t`Scuff, dust and prime the surface first`, [
                ...scuffLines(action),
                ...primer,
              ]),
        ],
      });
    },
  },
};
