/**
 * Steel wool before a waterborne coat: the bits that break off rust in it, and in bare wood there is no
 * getting them out.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { isWooden } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { steelWoolBelow } from "../steel-wool.ts";
import { related } from "../texts.ts";

export const steelWoolUnderWaterborne: TradeRule = {
  id: "steel-wool-under-waterborne",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "A text tells to use steel wool, and the next coat is waterborne.",
    why: "Slivers of steel stay in the pores and corners, rust in the water of the coat and show as brown specks; on oak and other woods with tannin they turn black.",
    remedy: "Use a nylon abrasive pad or fine paper, and keep steel wool for rubbing out the last coat.",
    sources: [
      "Wood Handbook FPL-GTR-190 chapter 16: never steel wool, whose particles stain the wood with iron",
      "under waterborne coats: finishing textbooks, from memory, confidence high",
    ],
  },
  failing: [
    {
      title: "Between two waterborne coats",
      text: `recipe clear_coats {
  for   wood
  layer waterborne_polyurethane
  wait  until recoat
  note  "Rub down with 0000 steel wool and wipe."
  layer waterborne_polyurethane #! steel-wool-under-waterborne
  wait  until cured
}
`,
    },
    {
      title: "On bare walnut",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  walnut
  }
}
recipe clear_coat {
  for    wood
  safety dust_mask
  step   sand 120, 180
  note   "Wire wool with the grain."
  step   dust
  layer  waterborne_polyurethane #! steel-wool-under-waterborne
  wait   until cured
}
job shelves {
  piece shelf
  apply clear_coat to top
}
`,
    },
  ],
  passing: [
    {
      title: "Forbidden, or under oil varnish, or after the last coat",
      text: `recipe clear_coats {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Never steel wool under this clear."
  layer  waterborne_polyurethane
  wait   until cured
  note   "Rub out with 0000 steel wool."
}
recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish
  wait   until recoat
  note   "Rub down with 0000 steel wool."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onLayer: ({ action, run, index, report }) => {
      if (action.use.material?.family?.drying !== "waterborne" || isWooden(run) === "no") return;
      const said = steelWoolBelow(run, index);
      if (!said) return;
      report({
        headline: t`Steel wool leaves rust spots under \`${action.use.name}\``,
        why: t`Slivers of steel stay in pores, corners and scratches and rust in the water of the coat, black where there is tannin.`,
        remedy: t`Use a nylon abrasive pad or fine paper there instead.`,
        related: [related(said.place, t`Steel wool is named here`)],
      });
    },
  },
};
