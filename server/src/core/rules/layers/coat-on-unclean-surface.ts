/**
 * A coat on dirt: the grease of a used surface, what a stripper leaves, or sanding dust.
 */
import type { RelatedPlace } from "../../findings.ts";
import { leavesLayer } from "../../knowledge/families.ts";
import { andList } from "../../model/suggest.ts";
import type { SurfaceState } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related, replaceAt, useName } from "../texts.ts";

export const coatOnUncleanSurface: TradeRule = {
  id: "coat-on-unclean-surface",
  group: "layers",
  severity: "warning",
  docs: {
    summary:
      "A coat goes on a used surface that was never cleaned, on what a stripper left, or on sanding dust.",
    why: "Grease and stripper make a coat crawl, dry badly or peel, and dust stays in the film as grit.",
    remedy:
      "Clean a used or stripped surface with `step clean` before anything else goes on, and take off dust with `step dust`.",
    sources: [
      "UFC 3-190-06 section 2.4: clean, dull and sound before recoating",
      "common practice, no source",
    ],
  },
  failing: [
    {
      title: "No dusting after the sanding between coats",
      text: `recipe clear_coats {
  for    wood
  safety dust_mask, ventilate, no_ignition, wet_rags
  layer  oil_polyurethane x 3 { #! coat-on-unclean-surface
    wait until recoat
    step sand 320
  }
  wait   until cured
}
`,
    },
    {
      title: "A stripped surface that was not cleaned",
      text: `recipe bare_again {
  for    wood
  safety gloves, eye_protection, vapour_respirator, ventilate, no_ignition
  step   strip with paint_stripper
  layer  dewaxed_shellac #! coat-on-unclean-surface
  wait   until cured
}
`,
    },
    {
      title: "A used surface; the second coat is not blamed again",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing dewaxed shellac
  }
}
recipe renew {
  safety ventilate, no_ignition
  layer  dewaxed_shellac #! coat-on-unclean-surface
  wait   until recoat
  layer  dewaxed_shellac
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
}
`,
    },
  ],
  passing: [
    {
      title: "Dusted between coats",
      text: `recipe clear_coats {
  for    wood
  safety dust_mask, ventilate, no_ignition, wet_rags
  layer  oil_polyurethane x 3 {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
`,
    },
    {
      title: "Stripped and cleaned; and a surface that was bare has no grease",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
  surface inside {
    shape    panel 300 mm x 200 mm
    wood     beech
  }
}
recipe bare_again {
  safety gloves, eye_protection, vapour_respirator, ventilate, no_ignition
  step   strip with paint_stripper
  step   clean with mineral_spirits
  layer  dewaxed_shellac
  wait   until cured
}
recipe sealed {
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   until cured
}
job boxes {
  piece box
  apply bare_again to lid
  apply sealed to inside
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, report }) => {
      const over = action.use.material?.family;
      if (over && !leavesLayer(over)) return;
      const dirt = dirtOn(before);
      if (dirt.length === 0) return;
      const onlyDust = !before.grease && !before.residue;
      report({
        headline: `${useName(action.use)} goes on ${andList(dirt.map(({ what }) => what))}`,
        why: onlyDust
          ? "The dust stays in the film as grit and keeps it from taking hold."
          : "The coat crawls, dries badly or peels where dirt lies under it.",
        remedy: onlyDust
          ? "Dust the surface before the coat."
          : "Clean the surface first, with `step clean`, and let it dry.",
        related: dirt.map(({ related: place }) => place),
        fixes: fixes(action, onlyDust, before),
      });
    },
  },
};

type LayerContext = Parameters<NonNullable<typeof coatOnUncleanSurface.checks.onLayer>>[0];

interface Dirt {
  readonly what: string;
  readonly related: RelatedPlace;
}

function dirtOn({ grease, residue, dust }: SurfaceState): readonly Dirt[] {
  return [
    ...(grease
      ? [
          {
            what: "a used surface that was never cleaned",
            related: related(grease.place, "A used surface has grease on it"),
          },
        ]
      : []),
    ...(residue
      ? [
          {
            what: "what the stripping left",
            related: related(residue.place, "This leaves the surface to be cleaned"),
          },
        ]
      : []),
    ...(dust ? [{ what: "sanding dust", related: related(dust.place, "This leaves the dust") }] : []),
  ];
}

/** Water raises the grain of stripped wood, so only dust and the grease on a film have a fix. */
function fixes(action: LayerContext["action"], onlyDust: boolean, before: SurfaceState) {
  if (action.coat > 1) {
    const last = action.syntax.block?.at(-1);
    if (!last || !onlyDust || last.kind === "layer") return [];
    const end = last.span.end;
    const place = { ...action.place, span: { start: end, end } };
    return [replaceAt("change", place, "Dust before the next coat", "\n    step dust")];
  }
  if (onlyDust) return [insertAbove("change", action, "Dust the surface first", ["step  dust"])];
  return before.residue || before.layers.length === 0
    ? []
    : [insertAbove("change", action, "Clean the surface first", ["step  clean with soap"])];
}
