/**
 * Steel wool on bare oak and its like, stained or not: iron and tannin make ink under any finish. Where the next coat is
 * waterborne it is `steel-wool-under-waterborne`'s.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { HANDBOOK_16 } from "../../knowledge/sources.ts";
import { isFilm } from "../../surface/state.ts";
import { woodOf } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { steelWoolBelow } from "../steel-wool.ts";
import { related } from "../texts.ts";

const FILE = (wood: string, note: string, layer: string) => `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  ${wood}
  }
}
recipe oiled {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  note   "${note}"
  step   dust
  layer  ${layer}
  wait   until cured
}
job shelves {
  piece shelf
  apply oiled to top
}
`;

const STAINED = `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  oil_stain, wiped off
  wait   until cured
  note   "Level the raised fibres with 0000 steel wool."
  step   dust
  layer  oil_varnish #! steel-wool-on-tannin-wood
  wait   until cured
}
job stained_shelves {
  piece shelf
  apply stained to top
}
`;

export const steelWoolOnTanninWood: TradeRule = {
  id: "steel-wool-on-tannin-wood",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "A text tells to use steel wool on bare wood that is rich in tannin.",
    why: "Slivers of steel break off in the open pores. With tannin and the first moisture they turn into black spots, under oil as well as under water.",
    remedy:
      "Use a nylon abrasive pad, bronze wool or fine paper, and keep steel wool for rubbing out the last coat.",
    sources: [`${HANDBOOK_16}: never steel wool, whose particles stain the wood with iron`],
  },
  failing: [
    {
      title: "Before oil on oak",
      text: FILE(
        "oak",
        "Rub with 0000 steel wool until it feels like silk.",
        "drying_oil, wiped off #! steel-wool-on-tannin-wood",
      ),
    },
    {
      title: "Before shellac, and after a stain, which closes no pore",
      text: FILE(
        "white oak",
        "Smooth with wire wool.",
        "dewaxed_shellac #! steel-wool-on-tannin-wood",
      ).concat(STAINED),
    },
  ],
  passing: [
    {
      title: "Beech has hardly any tannin",
      text: FILE("beech", "Rub with 0000 steel wool.", "drying_oil, wiped off"),
    },
    {
      title: "Another kind of wool, and a note that forbids it",
      text: FILE("oak", "Bronze wool, never steel wool.", "drying_oil, wiped off"),
    },
    {
      title: "Wool that takes off old polish with alcohol, before the wood is sanded",
      text: `piece lid {
  surface top {
    shape    area 1 m2
    wood     oak
    existing waxed shellac
  }
}

recipe polished {
  for    any
  safety gloves, eye_protection, ventilate, vapour_respirator, no_ignition, dust_mask, wet_rags
  step   dewax with mineral_spirits
  wait   1 h
  step   strip with alcohol "pads of wire wool"
  step   clean with alcohol
  wait   overnight
  step   sand 150, 180, 220
  step   dust
  layer  dewaxed_shellac, by rubber
  wait   until cured
}

job lids {
  piece lid
  apply polished to top
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const wood = woodOf(run);
      if (action.use.material?.family?.drying === "waterborne" || wood?.tannin !== "rich") return;
      if (before.openBelow || before.layers.some(isFilm)) return;
      const said = steelWoolBelow(run, index);
      if (!said) return;
      report({
        headline: t`Steel wool makes black spots on bare ${translated(wood.name)}`,
        why: t`Slivers of steel stay in the pores and turn black with the tannin, under \`${action.use.name}\` as well.`,
        remedy: t`Use a nylon abrasive pad, bronze wool or fine paper instead.`,
        related: [related(said.place, t`Steel wool is named here`)],
      });
    },
  },
};
