/**
 * Waterborne enamel straight on MDF with its cut edges, which drink it, swell and stay rough. A first coat that is
 * thinned, a filling or a word about the edges shows that somebody has thought of them.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { MEMORY_MEDIUM } from "../../knowledge/sources.ts";
import { isBare } from "../../surface/state.ts";
import { stainBlockLines } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import { isSpokenOf } from "../spoken-words.ts";
import { insertAbove, related } from "../texts.ts";

const EDGES = /\bedges?\b|\bseal/iu;

const FILE = (shape: string, steps: string) => `piece shelf {
  surface board {
    shape ${shape}
    wood  MDF
  }
}
recipe painted {
  for    wood
  safety dust_mask, ventilate, no_ignition
${steps}  wait   until recoat
  step   sand 220
  step   dust
  layer  acrylic_paint
  wait   until cured
}
job shelves {
  piece shelf
  apply painted to board
}
`;

export const mdfEdgeUnsealed: TradeRule = {
  id: "mdf-edge-unsealed",
  group: "preparation",
  severity: "hint",
  docs: {
    summary: "Waterborne paint goes on bare MDF with its edges, without a primer or sealer.",
    why: "The open core at the edges drinks the paint, swells and dries rough and dull, however many coats follow.",
    remedy: "Seal the edges with shellac primer or another sealer, sand them, and then paint.",
    sources: [MEMORY_MEDIUM],
  },
  failing: [
    {
      title: "Enamel straight on a board with its edges",
      text: FILE("panel 800 mm x 300 mm x 18 mm", "  layer  acrylic_paint #! mdf-edge-unsealed\n"),
    },
  ],
  passing: [
    {
      title: "Primed first",
      text: FILE("panel 800 mm x 300 mm x 18 mm", "  layer  shellac_primer\n"),
    },
    { title: "No edge is painted", text: FILE("panel 800 mm x 300 mm", "  layer  acrylic_paint\n") },
  ],
  looksAt: ({ roles }) => roles.has("paint"),
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      const board = run.surface?.substrate;
      const shape = run.surface?.shapes.find(({ edges }) => edges);
      if (board?.kind !== "MDF" || board.veneerMm !== undefined || !shape || !isBare(before)) return;
      if (over?.role !== "paint" || over.drying !== "waterborne" || over.needsClear) return;
      if (action.thinned || before.fillings.length > 0 || isSpokenOf(run, index, EDGES)) return;
      report({
        headline: t`The bare MDF edges are not sealed before \`${action.use.name}\``,
        why: t`The open core at the edges drinks waterborne paint, swells and dries rough and dull.`,
        remedy: t`Seal the edges with shellac primer or another sealer and sand them before the paint.`,
        related: [related(shape.place, t`The edges are counted in here`)],
        fixes:
          action.coat === 1
            ? [insertAbove("undertaking", action, t`Seal with shellac primer`, stainBlockLines(action))]
            : [],
      });
    },
  },
};
