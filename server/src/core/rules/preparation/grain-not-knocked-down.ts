/**
 * Waterborne material on bare wood whose raised grain nobody sanded down.
 *
 * Two moments count: the first waterborne layer on wood that water raised before, and the layer over the first film,
 * when the film or the waterborne stain below it raised the grain. A stain may be sealed first and sanded then, which
 * books call burying the raised grain; and a primer may be sanded together with the first coat of paint over it. So a
 * primer, a wash or a first coat may go on raised grain as well, as long as it is sanded later.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { samePlace } from "../../place.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isSanding, lastIndexOf } from "../../surface/run-index.ts";
import { type Coat, isFilm, type SurfaceState, topCoat } from "../../surface/state.ts";
import { isPorousPaint } from "../coat-queries.ts";
import { isWooden, lastGrit, lastSanding, sandingLines } from "../queries.ts";
import { sandBetweenCoats } from "../remedy-fixes.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { beforeCoat, coatName, insertAbove, layerBelow, related } from "../texts.ts";

export const grainNotKnockedDown: TradeRule = {
  id: "grain-not-knocked-down",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "A waterborne material goes on bare wood, and nothing is sanded after the grain rose.",
    why: "Water swells the cut fibres of bare wood. Under the film they stand up like stubble, and every later coat is rough.",
    remedy:
      "Dampen the wood, let it dry and sand it lightly before the first waterborne coat, or sand after that coat, before the next.",
    sources: [
      "common practice, no source: raise the grain and sand it down, or bury it under one coat and sand that",
    ],
  },
  failing: [
    {
      title: "Dampened and not sanded",
      text: `recipe clear_coats {
  for    wood
  safety dust_mask
  step   sand 80, 120, 180
  step   dust
  step   dampen
  wait   overnight
  layer  waterborne_polyurethane #! grain-not-knocked-down
  wait   until cured
}
`,
    },
    {
      title: "Dampening says by itself that the wood is bare",
      text: `recipe clear_coats {
  for    any
  safety dust_mask
  step   sand 120, 180
  step   dust
  step   dampen
  wait   overnight
  layer  acrylic_paint #! grain-not-knocked-down
  wait   until cured
}
`,
    },
    {
      title: "Three coats without a sanding, on a bare piece",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  maple
  }
}
recipe clear_coats {
  for   wood
  layer waterborne_polyurethane x 3 { #! grain-not-knocked-down
    wait until recoat
  }
  wait  until cured
}
job shelves {
  piece shelf
  apply clear_coats to top
}
`,
    },
    {
      title: "The primer raised the grain, and the paint goes over it",
      text: `recipe painted {
  for    wood
  safety dust_mask
  step   sand 80, 120
  step   dust
  layer  acrylic_primer
  wait   until recoat
  layer  acrylic_paint x 2 { #! grain-not-knocked-down
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "The wood was washed, and neither primer nor paint is sanded",
      text: `recipe painted {
  for    wood
  safety dust_mask
  step   sand 80, 120
  step   clean with soap
  wait   overnight
  layer  acrylic_primer #! grain-not-knocked-down
  wait   until recoat
  layer  acrylic_paint
  wait   until cured
}
`,
    },
    {
      title: "A waterborne stain was sealed, and the seal coat never sanded",
      text: `recipe stained {
  for    wood
  safety dust_mask
  step   sand 80, 120, 180
  step   dust
  layer  waterborne_stain, wiped off
  wait   until recoat
  layer  waterborne_polyurethane x 2 { #! grain-not-knocked-down
    wait until recoat
  }
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Dampened, dried and sanded",
      text: `recipe clear_coats {
  for    wood
  safety dust_mask
  step   sand 80, 120, 180
  step   dust
  step   dampen
  wait   overnight
  step   sand 220
  step   dust
  layer  waterborne_polyurethane x 2 {
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "Sanded between the first coat and the second",
      text: `recipe clear_coats {
  for    wood
  safety dust_mask
  step   sand 80, 120, 180
  step   dust
  layer  waterborne_polyurethane x 3 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}
`,
    },
    {
      title: "The raised grain of the stain is buried under one coat and sanded then",
      text: `recipe stained {
  for    wood
  safety dust_mask
  step   sand 80, 120, 180
  step   dust
  layer  waterborne_stain, wiped off
  wait   until recoat
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}
`,
    },
    {
      title: "Primer and first coat of paint are sanded together",
      text: `recipe painted {
  for    wood
  safety dust_mask
  step   sand 80, 120
  step   dust
  layer  acrylic_primer
  wait   until recoat
  layer  acrylic_paint x 2 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   until cured
}
`,
    },
    {
      title: "The wood was washed, and the primer over its raised grain is sanded",
      text: `recipe painted {
  for    wood
  safety dust_mask
  step   sand 80, 120
  step   clean with soap
  wait   overnight
  layer  acrylic_primer
  wait   until recoat
  step   sand 220
  step   dust
  layer  acrylic_paint
  wait   until cured
}
`,
    },
    {
      title: "A wash over dampened wood, sanded after",
      text: `recipe washed {
  for    wood
  safety dust_mask
  step   sand 120, 150
  step   dust
  step   dampen
  layer  acrylic_paint, by brush, thinned 1:1 with water
  wait   until recoat
  step   sand 220
  step   dust
  layer  waterborne_polyurethane x 2 {
    wait until recoat
  }
  wait   until cured
}
`,
    },
    {
      title: "On a surface of which nothing is known",
      text: `recipe clear_coats {
  for   wood
  step  clean with soap
  layer waterborne_polyurethane x 2 {
    wait until recoat
  }
  wait  until cured
}
`,
    },
  ],
  checks: {
    onLayer: (ctx) => {
      const { action, before, run } = ctx;
      if (!before.raised || isWooden(run) === "no") return;
      if (before.layers.length === 0) reportRaisedWood(ctx);
      else {
        const below = firstFilm(before);
        if (below && action.use.material?.family?.role !== "filler") reportBuried(ctx, below);
      }
    },
  },
};

/** Waterborne on wood that water raised before. */
function reportRaisedWood({ action, before, run, index, report }: MomentContext<LayerAction>): void {
  const over = action.use.material?.family;
  if (over?.drying !== "waterborne" || over.role === "filler" || !isSurelyWood(run, before)) return;
  if (isSandedLater(run, index)) return;
  report({
    headline: t`The raised grain is not sanded down before \`${action.use.name}\``,
    why: t`Water raised the fibres; they harden under the film and leave it rough, however many coats follow.`,
    remedy: t`Once the wood is dry, sand it lightly with the grain and dust it before this layer.`,
    abrades: "surface",
    related: [related(before.raised!.place, t`Water raises the grain here`)],
    fixes:
      action.coat === 1
        ? [
            insertAbove(
              "undertaking",
              action,
              t`Sand the raised grain down`,
              sandingLines(action, ...knockDown(run, index)),
            ),
          ]
        : [],
  });
}

/** The second film over a waterborne layer that raised the grain, with no sanding since. */
function reportBuried({ action, before, run, index, report }: MomentContext<LayerAction>, below: Coat): void {
  const raiser = before.layers.find(
    (coat) => samePlace(coat.place, before.raised!.place) && coat.family?.drying === "waterborne",
  );
  if (!raiser || wasReported(run, index, raiser) || !isSurelyWood(run, before)) return;
  if (isSandedLater(run, index)) return;
  const isRustic = before.layers.every(isPorousPaint);
  report({
    // Chalky and milk paint dry matt and a little rough, and are liked so: common practice, no source.
    ...(isRustic ? { severity: "hint" as const } : {}),
    headline: t`The grain that \`${raiser.what}\` raised is not sanded down`,
    why: t`Raised fibres harden under the film and leave it rough, however many coats follow.`,
    remedy:
      action.coats > 1
        ? t`Sand lightly with 220 once ${coatName(below)} is dry, and dust, ${beforeCoat(action.coat)}`
        : t`Sand lightly with 220 once ${coatName(below)} is dry, and dust, before this coat.`,
    abrades: "surface",
    related: [layerBelow(raiser)],
    fixes:
      action.coat === 1
        ? [insertAbove("undertaking", action, t`Sand the raised grain down`, sandingLines(action, 220))]
        : sandBetweenCoats(action, t`Sand the raised grain down between the coats`, 220),
  });
}

/** The first film on the wood, where it is the top coat and new. */
function firstFilm(state: SurfaceState): Coat | undefined {
  const top = topCoat(state);
  if (top?.origin !== "new" || !isFilm(top)) return undefined;
  return state.layers.filter(isFilm).length === 1 ? top : undefined;
}

/** A later sanding, between the coats that follow, still takes the fibres. */
const isSandedLater = (run: SurfaceRun, index: number): boolean => lastIndexOf(run, isSanding) > index;

/** The wood had been raised before this coat, so the finding stands on the coat's own line already. */
function wasReported(run: SurfaceRun, index: number, raiser: Coat): boolean {
  const moment = run.moments.findLast(
    ({ action }, at) =>
      at < index && action.op === "layer" && action.coat === 1 && samePlace(action.place, raiser.place),
  );
  return moment?.before.raised !== undefined;
}

/** In a recipe for any surface only dampening says that the surface is of wood. */
function isSurelyWood(run: SurfaceRun, state: SurfaceState): boolean {
  if (isWooden(run) === "yes") return true;
  if (run.preceded) return false;
  return run.moments.some(
    ({ action }) =>
      action.op === "step" && action.verb === "dampen" && samePlace(action.place, state.raised!.place),
  );
}

/** Grits that knock the grain down without a jump from the last sanding. */
function knockDown(run: SurfaceRun, index: number): readonly number[] {
  const last = lastGrit(lastSanding(run, index));
  if (last === undefined || last >= 120)
    return last !== undefined && last < 220 ? [Math.max(last, 180)] : [220];
  return last >= 100 ? [180] : [120, 180];
}
