/**
 * A brittle film over a soft or flexible one: the lower one gives, and the upper one cracks.
 */

import type { Family } from "../../knowledge/family-schema.ts";
import { HARD_OVER_SOFT_STEPS, relation } from "../../knowledge/layer-relation.ts";
import { familiesOf, reachedCoats } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, layerBelow, useName } from "../texts.ts";

export const hardOverSoft: TradeRule = {
  id: "hard-over-soft",
  group: "layers",
  severity: "warning",
  docs: {
    summary: "A brittle film goes over a soft or flexible one.",
    why: "The lower film moves with the wood and with warmth, the upper one cannot follow, and it checks and cracks.",
    remedy: "Choose a clear as flexible as the layer below, or strip that layer first.",
    sources: [
      "UFC 3-190-06 section 2.4: a rigid topcoat over a flexible undercoat checks",
      "the order of hardness of the families is from memory",
    ],
  },
  failing: [
    {
      title: "Conversion varnish over shellac",
      text: `material hardener "Acid hardener" {
  family alcohol
}
material bar_top "Bar top clear" {
  family conversion varnish
  mix    10:1 with hardener
}
recipe clear_coats {
  for    wood
  safety ventilate, no_ignition, vapour_respirator, gloves, eye_protection
  layer  dewaxed_shellac
  wait   until recoat
  layer  bar_top, by hvlp #! hard-over-soft
  wait   until cured
}
`,
    },
    {
      title: "Lacquer over a flexible spar varnish, which it lifts as well",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing spar varnish
  }
}
recipe renew {
  safety ventilate, no_ignition, dust_mask, vapour_respirator, eye_protection, gloves
  step   clean with soap
  step   scuff 320
  step   dust
  layer  nitrocellulose_lacquer, by hvlp #! hard-over-soft, solvent-lifts-layer
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
      title: "Polyurethane over spar varnish, and lacquer over shellac, are near enough",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing spar varnish
  }
  surface inside {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing dewaxed shellac
  }
}
recipe renew {
  safety ventilate, no_ignition, dust_mask, wet_rags
  step   clean with soap
  step   scuff 320
  step   dust
  layer  oil_polyurethane
  wait   until cured
}
recipe lacquered {
  safety ventilate, no_ignition, dust_mask, vapour_respirator, eye_protection, gloves
  step   clean with soap
  step   scuff 320
  step   dust
  layer  nitrocellulose_lacquer, by hvlp
  wait   until cured
}
job boxes {
  piece box
  apply renew to lid
  apply lacquered to inside
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, report }) => {
      const over = action.use.material?.family;
      if (!over?.buildsFilm) return;
      for (const coat of reachedCoats(before.layers)) {
        const worst = familiesOf(coat).find((below) => cracksOver(over, below));
        if (!worst) continue;
        report({
          what: `${useName(action.use)} is brittle and goes over ${coatName(coat)}, which ${coat.unknown ? `may be ${worst.name} and softer` : "is softer"}.`,
          why: "The soft layer moves with the wood, the hard film cannot follow, and it cracks.",
          remedy: "Choose a clear as flexible as the layer below, or strip that layer first.",
          related: [layerBelow(coat)],
        });
        return;
      }
    },
  },
};

/** A thin glaze moves with what is above it and counts for nothing; oil comes up under the most brittle of clears. */
function cracksOver(over: Family, below: Family): boolean {
  if (below.role === "glaze") return false;
  if (below.role === "oil") return relation(over, below).verdict === "no";
  return below.buildsFilm && over.hardness - below.hardness >= HARD_OVER_SOFT_STEPS;
}
