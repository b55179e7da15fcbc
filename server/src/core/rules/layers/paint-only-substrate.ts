/**
 * A stain on MDF or particleboard, which have no grain to take it. A hint: it does colour, only dull and uneven.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { substrateByName } from "../../knowledge/woods.ts";
import { isBare } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const paintOnlySubstrate: TradeRule = {
  id: "paint-only-substrate",
  group: "layers",
  severity: "hint",
  docs: {
    summary: "A stain goes on bare MDF or particleboard, which is made for paint.",
    why: "There is no grain to show: faces turn a dull, even brown and cut edges drink the stain and turn dark.",
    remedy: "Prime and paint such boards, or glue on a veneer and stain that.",
    sources: ["from memory, confidence medium"],
  },
  failing: [
    {
      title: "Stain on MDF",
      text: `piece shelf "Shelf" {
  surface top {
    shape panel 800 mm x 300 mm
    wood  MDF
  }
}
recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, wiped off #! paint-only-substrate
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
job shelves {
  piece shelf
  apply coloured to top
}
`,
    },
  ],
  passing: [
    {
      title: "Veneered MDF is wood; bare MDF is painted",
      text: `piece shelf "Shelf" {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech, veneer 0.6 mm
  }
  surface back {
    shape panel 800 mm x 300 mm
    wood  MDF
  }
}
recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, wiped off
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
recipe painted {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  shellac_primer
  wait   until recoat
  layer  alkyd_paint
  wait   until cured
}
job shelves {
  piece shelf
  apply coloured to top
  apply painted to back
}
`,
    },
  ],
  looksAt: ({ roles }) => roles.has("stain"),
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      const substrate = run.surface?.substrate;
      if (over?.role !== "stain" || !substrate || substrate.veneerMm !== undefined) return;
      const board = substrateByName(substrate.name);
      // What is slick besides is an error of its own.
      if (!board || board.canBeStained || board.needsScuff || !isBare(before)) return;
      report({
        headline: t`${useName(action.use)} goes on bare ${translated(board.name)}`,
        why: t`Without grain the face turns a dull, even brown, and cut edges drink the stain and turn dark.`,
        remedy: t`Prime and paint it, or stain a veneer instead.`,
        replaces: true,
        related: substrate.place ? [related(substrate.place, t`What the surface is made of`)] : [],
      });
    },
  },
};
