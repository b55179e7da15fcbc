/**
 * Milk paint is made for bare wood: on a film, scuffed or not, it flakes unless something helps it to bond. A hint,
 * since some want it to flake.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { flakesOn } from "../../knowledge/layer-relation.ts";
import { isAbradedSince, isFilm, topCoat } from "../../surface/state.ts";
import { familiesOf } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, layerBelow, useName } from "../texts.ts";

export const milkPaintOnFilm: TradeRule = {
  id: "milk-paint-on-film",
  group: "layers",
  severity: "hint",
  docs: {
    summary: "Milk paint goes on a scuffed film without a primer.",
    why: "Casein paint soaks in to hold; on a film it shrinks as it dries and comes off in flakes.",
    remedy:
      "Put a bonding or shellac primer between the two, or stir the maker's bonding agent into the first coat; leave it where flaking is wanted.",
    sources: ["common practice, no source"],
  },
  failing: [
    {
      title: "Milk paint on old varnish",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}
recipe painted {
  safety dust_mask, no_ignition
  step   clean with soap
  step   scuff 220
  step   dust
  layer  milk_paint #! milk-paint-on-film
  wait   until recoat
  layer  paste_wax
  wait   until cured
}
job boxes {
  piece box
  apply painted to lid
}
`,
    },
  ],
  passing: [
    {
      title: "A shellac primer between the two",
      text: `piece box "Box" {
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}
recipe painted {
  safety dust_mask, no_ignition, ventilate
  step   clean with soap
  step   scuff 220
  step   dust
  layer  shellac_primer
  wait   until recoat
  layer  milk_paint
  wait   until recoat
  layer  paste_wax
  wait   until cured
}
job boxes {
  piece box
  apply painted to lid
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, report }) => {
      const over = action.use.material?.family;
      const below = topCoat(before);
      if (over?.binder !== "casein" || !below || !isFilm(below)) return;
      if (!familiesOf(below).some((each) => flakesOn(over, each))) return;
      // Without scuffing `coat-on-unscuffed-surface` says the first thing to do; bonding is mixed in as a tint.
      if ((below.origin !== "new" && !isAbradedSince(below)) || action.tinted) return;
      report({
        headline: t`${useName(action.use)} goes on ${coatName(below)} without a primer`,
        why: t`Milk paint soaks in to hold, and on a film it shrinks as it dries and comes off in flakes.`,
        remedy: t`Put a bonding or shellac primer between the two, or stir the maker's bonding agent into the first coat.`,
        related: [layerBelow(below)],
      });
    },
  },
};
