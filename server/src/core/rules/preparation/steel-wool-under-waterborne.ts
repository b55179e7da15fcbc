/**
 * Steel wool before a waterborne coat: the bits that break off rust in it. The notation has no word for steel wool, so
 * only a text that plainly says to use it counts.
 */
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isWooden } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { plainlySays, textOf } from "../spoken-words.ts";
import { related, useName } from "../texts.ts";

const STEEL_WOOL =
  /(?<!\b(?:synthetic|nylon|plastic|stainless)[\s-])\b(?:steel|wire)[\s-]?wool\b(?!\s*(?:substitute|replacement))/iu;

export const steelWoolUnderWaterborne: TradeRule = {
  id: "steel-wool-under-waterborne",
  group: "preparation",
  severity: "hint",
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
  ],
  passing: [
    {
      title: "Forbidden, or under oil varnish, or after the last coat",
      text: `recipe clear_coats {
  for    wood
  safety ventilate, no_ignition, wet_rags
  note   "Never steel wool under this clear."
  layer  waterborne_polyurethane
  wait   until cured
  note   "Rub out with 0000 steel wool."
}
recipe varnished {
  for    wood
  safety ventilate, no_ignition, wet_rags
  layer  oil_varnish
  wait   until recoat
  note   "Rub down with 0000 steel wool."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, run, index, report }) => {
      if (action.use.material?.family?.drying !== "waterborne" || isWooden(run) === "no") return;
      const said = steelWoolBelow(run, index);
      if (!said) return;
      report({
        headline: `${useName(action.use)} is waterborne and goes on after steel wool`,
        why: "Slivers of steel stay in the pores, rust in the water of the coat and show as brown or black specks.",
        remedy: "Use a nylon abrasive pad or fine paper there instead.",
        related: [related(said.place, "Steel wool is named here")],
      });
    },
  },
};

/** The line since the coat below that tells to use steel wool. */
function steelWoolBelow(run: SurfaceRun, index: number): Action | undefined {
  let first: Action | undefined;
  for (let at = index - 1; at >= 0; at -= 1) {
    const { action } = run.moments[at]!;
    if (action.op === "layer") break;
    if (plainlySays(textOf(action) ?? "", STEEL_WOOL)) first = action;
  }
  return first;
}
