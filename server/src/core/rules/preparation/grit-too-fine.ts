/**
 * Wood sanded so fine that a stain no longer soaks in, or a paint finds no hold.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import {
  FINEST_BEFORE_PAINT_ON_FILM,
  FINEST_BEFORE_PAINT_ON_WOOD,
  FINEST_BEFORE_STAIN,
  GRIT_THRESHOLDS_SOURCE,
} from "../../knowledge/abrasives.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import type { LayerAction, StepAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isBare, type SurfaceState, topCoat } from "../../surface/state.ts";
import { lastGrit, lastSanding } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { related, replaceAt } from "../texts.ts";

export const gritTooFine: TradeRule = {
  id: "grit-too-fine",
  group: "preparation",
  severity: "warning",
  docs: {
    summary:
      "The last grit is finer than 240 before a penetrating stain, or too fine for paint to hold (finer than 320 on bare wood, than 400 on a film).",
    why: "Very fine paper burnishes the wood and closes its pores: the stain stays pale and patchy. Paint finds no scratches to hold in.",
    remedy: "Stop at 180 to 240 before a stain, and at 220 to 320 before paint.",
    sources: [GRIT_THRESHOLDS_SOURCE, "paint: common practice, no source"],
  },
  failing: [
    {
      title: "Sanded in one recipe, stained in the next",
      text: `piece shelf {
  surface board {
    shape panel 900 mm x 300 mm
    wood  walnut
  }
}

recipe smoothed {
  for    wood
  safety dust_mask
  step   sand 150, 220, 320
  step   dust
}

recipe stained {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, wiped off #! grit-too-fine
  wait   until cured
  layer  oil_varnish
  wait   until cured
}

job shelves {
  piece shelf
  apply smoothed to board
  apply stained to board
}
`,
    },
    {
      title: "320 before an oil stain",
      text: `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180, 320
  step   dust
  layer  oil_stain, wiped off #! grit-too-fine
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "A scuff with 600 before paint",
      text: `recipe painted {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 600
  step   dust
  layer  acrylic_paint #! grit-too-fine
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Raised grain is taken off with 320 before the stain",
      text: `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180, 220
  step   dust
  step   dampen
  wait   12 h
  step   sand 320
  step   dust
  layer  oil_stain, wiped off
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "Scuffed: that is done to a film, and the stain's trouble is another one there",
      text: `recipe restained {
  for    any
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   clean with soap
  step   scuff 320
  step   dust
  layer  oil_stain, wiped off
  wait   until cured
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "The washcoat that is sanded stands in another recipe",
      text: `recipe washed {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves
  step   sand 120, 180
  step   dust
  layer  dewaxed_shellac, thinned 1:2 with alcohol
  wait   2 h
}

recipe stained {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 320
  step   dust
  layer  oil_stain, wiped off
  wait   until cured
  layer  oil_varnish
  wait   until cured
}

recipe whole {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  follow washed
  follow stained
}
`,
    },
    {
      title: "The washcoat that is sanded is the work of the same job",
      text: `piece shelf {
  surface board {
    shape panel 900 mm x 300 mm
    wood  pine
  }
}

recipe washed {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves
  step   sand 120, 180
  step   dust
  layer  dewaxed_shellac, thinned 1:2 with alcohol
  wait   2 h
}

recipe stained {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 320
  step   dust
  layer  oil_stain, wiped off
  wait   until cured
  layer  oil_varnish
  wait   until cured
}

job shelves {
  piece shelf
  apply washed to board
  apply stained to board
}
`,
    },
    {
      title: "240 before an oil stain",
      text: `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180, 240
  step   dust
  layer  oil_stain, wiped off
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "A film rubbed with 320 under a toner, and with 400 under the last coat",
      text: `recipe toned {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  layer  waterborne_polyurethane
  wait   until recoat
  step   sand 320
  step   dust
  layer  gel_stain, as toner
  wait   72 h
  layer  waterborne_polyurethane
  wait   until recoat
  step   sand 400
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
      const sanding = lastSanding(run, index);
      const last = lastGrit(sanding);
      if (!over || !sanding || last === undefined) return;
      // What is scuffed is a film, and where others did something before, a washcoat may lie there.
      const mayBeOnFilm = before.openBelow && (sanding.verb === "scuff" || run.preceded);
      if (over.role === "stain" && mayBeOnFilm) return;
      const finest = finestBefore(action, over, before);
      if (finest === undefined || last <= finest) return;
      const onWood = over.role === "stain" && last <= FINEST_ON_RAISED_GRAIN;
      if (onWood && foundRaisedGrain(run, sanding)) return;
      const grit = sanding.syntax.grits.at(-1)!;
      report({
        // Dye colours the fibre itself and needs no open pores.
        ...(onWood && over.binder === "dye" ? { severity: "hint" as const } : {}),
        headline: t`Grit ${last} is too fine before \`${action.use.name}\`: stop at ${finest}`,
        why:
          over.role === "stain"
            ? t`Paper this fine closes the pores of the wood, and the stain comes out pale and patchy.`
            : t`Paper this fine leaves no scratches for the paint to hold in, and it chips off.`,
        remedy: t`Stop sanding at ${finest} or coarser.`,
        related: [related({ ...sanding.place, span: grit.span }, t`Sanded to ${last} here`)],
        fixes: [
          replaceAt("change", { ...sanding.place, span: grit.span }, t`Stop at ${finest}`, `${finest}`),
        ],
      });
    },
  },
};

/** Paper this fine only takes off the fibres that water raised, and does not burnish the wood: common practice, no source. */
const FINEST_ON_RAISED_GRAIN = 320;

const foundRaisedGrain = (run: SurfaceRun, sanding: StepAction): boolean =>
  run.moments.some(({ action, before }) => action === sanding && before.raised !== undefined);

/** The finest last grit; undefined where none is too fine. Toners and washcoats lie on films, which may be smooth. */
function finestBefore(action: LayerAction, over: Family, before: SurfaceState): number | undefined {
  const top = topCoat(before);
  if (over.role === "stain") {
    const onFilm = top !== undefined && top.family?.role !== "filler" && top.family?.role !== "conditioner";
    return over.penetrating && !action.toner && !onFilm ? FINEST_BEFORE_STAIN : undefined;
  }
  if (over.role !== "paint" && over.role !== "primer") return undefined;
  return isBare(before) ? FINEST_BEFORE_PAINT_ON_WOOD : FINEST_BEFORE_PAINT_ON_FILM;
}
