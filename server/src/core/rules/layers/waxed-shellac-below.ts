/**
 * Polyurethane and waterborne clears do not hold on the wax of natural shellac, nor on the soap of a sanding sealer.
 */

import { lowerFirst, t, translated } from "../../../../../grammar/src/translate.ts";
import { shunsWax } from "../../knowledge/layer-relation.ts";
import { COMPATIBILITY_LIST } from "../../knowledge/sources.ts";
import { topCoat } from "../../surface/state.ts";
import { barrierLines, familiesOf } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, insertAbove, layerBelow, useName } from "../texts.ts";

export const waxedShellacBelow: TradeRule = {
  id: "waxed-shellac-below",
  group: "layers",
  severity: "warning",
  docs: {
    summary: "A polyurethane or a waterborne clear goes over waxed shellac or a stearated sealer.",
    why: "The wax of natural shellac and the stearate of a sanding sealer lie in the surface of the dry film, and these clears peel from them.",
    remedy: "Use dewaxed shellac, or put a coat of it between the two.",
    sources: [
      "finishing textbooks, from memory: polyurethane over shellac with wax, and over stearated sealer",
      `${COMPATIBILITY_LIST}: polyurethane goes over shellac, of whose wax it does not speak`,
    ],
  },
  failing: [
    {
      title: "Waxed shellac as a sealer under polyurethane",
      text: `recipe clear_coats {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  waxed_shellac
  wait   until recoat
  layer  oil_polyurethane #! waxed-shellac-below
  wait   until cured
}
`,
    },
    {
      title: "A stearated sealer under a waterborne clear",
      text: `recipe clear_coats {
  for    wood
  safety ventilate, no_ignition, vapour_respirator, gloves
  layer  sanding_sealer
  wait   until recoat
  layer  waterborne_lacquer #! waxed-shellac-below
  wait   until cured
}
`,
    },
    {
      title: "An unknown clear may be waxed shellac",
      text: `piece box "Box" {
  built 1920
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing unknown clear
  }
}
recipe renew {
  safety dust_mask
  step   clean with soap
  step   scuff 320
  step   dust
  layer  waterborne_polyurethane #! waxed-shellac-below
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
      title: "Dewaxed shellac between the two",
      text: `recipe clear_coats {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  waxed_shellac
  wait   until recoat
  layer  dewaxed_shellac
  wait   until recoat
  layer  oil_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "Varnish without polyurethane, and lacquer over its sealer",
      text: `recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  waxed_shellac
  wait   until recoat
  layer  oil_varnish
  wait   until cured
}
recipe lacquered {
  for    wood
  safety ventilate, no_ignition, vapour_respirator, gloves, eye_protection
  layer  sanding_sealer, by hvlp
  wait   until recoat
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, report }) => {
      const over = action.use.material?.family;
      const below = topCoat(before);
      if (!over || !below || !shunsWax(over)) return;
      const worst = familiesOf(below).find((candidate) => candidate.waxBearing);
      if (!worst) return;
      const why =
        worst.role === "sealer"
          ? t`Polyurethane and waterborne clears peel off stearate in flakes or in sheets.`
          : t`Polyurethane and waterborne clears peel off wax in flakes or in sheets.`;
      report({
        headline: t`${useName(action.use)} does not hold on ${coatName(below)}`,
        why: below.unknown ? t`It may be ${translated(worst.name)}: ${lowerFirst(why)}` : why,
        remedy: t`Put a coat of dewaxed shellac between the two, or use dewaxed shellac from the start.`,
        related: [layerBelow(below)],
        fixes: [
          insertAbove("undertaking", action, t`Put dewaxed shellac between the two`, barrierLines(action)),
        ],
      });
    },
  },
};
