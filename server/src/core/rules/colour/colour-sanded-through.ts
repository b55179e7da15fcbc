/**
 * Coarse paper on a stain or glaze, or on a film over it that is thinner than the grains are large.
 *
 * Finishers agree on coarse paper alone: 180 and finer stays silent, dye that is sanded back on purpose too, and so does
 * a sanding that is followed by colour again. Where the last grit is too coarse as well, `grit-too-coarse` says so at
 * the next coat.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { COARSEST_BETWEEN_COATS, medianUm } from "../../knowledge/abrasives.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { filmText } from "../../measure/figures.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { type Coat, isFilm, type SurfaceState } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, layerBelow } from "../texts.ts";

/** Share of a grain's size down to which its scratches reach; common practice, no source. */
const SCRATCH_SHARE = 1 / 2;

const FILE = (lines: string) => `recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  oil_stain, wiped off
  wait   72 h
${lines}  step   dust
  layer  oil_varnish
  wait   until cured
}
`;

export const colourSandedThrough: TradeRule = {
  id: "colour-sanded-through",
  group: "colour",
  severity: "hint",
  docs: {
    summary:
      "A stain or glaze, or the one thin coat over it, is sanded with a grit coarser than 180; as a warning, a filler in it is sanded flush with one coarser than 220.",
    why: "A stain colours no more than the topmost fibres, and the paper takes them off: edges and high spots turn pale first, and no clear brings the colour back.",
    remedy:
      "Seal the colour before anything is sanded and smooth that coat with 320, or knock raised fibres down with 220 by hand.",
    sources: [PRACTICE, "sizes of the grains: ISO 6344"],
  },
  failing: [
    {
      title: "The stain itself, with 120 and 220",
      text: FILE("  step   sand 120, 220 #! colour-sanded-through\n"),
    },
    {
      title: "One thin coat over it",
      text: FILE(`  layer  oil_varnish
  wait   until recoat
  step   sand 120, 220 #! colour-sanded-through
`),
    },
    {
      title: "Holes filled after the stain and sanded flush",
      text: FILE(`  step   fill with wood_filler, uses 20 mL
  wait   overnight
  step   sand 150, 180 #! colour-sanded-through
`),
    },
  ],
  passing: [
    { title: "Raised fibres knocked down with 220", text: FILE("  step   sand 220\n") },
    {
      title: "180 between the coats",
      text: FILE(`  layer  oil_varnish
  wait   until recoat
  step   sand 180
`),
    },
    {
      title: "Sanded back and stained again",
      text: FILE(`  step   sand 150, 220
  step   dust
  layer  oil_stain, wiped off
  wait   72 h
  step   scuff 320
`),
    },
  ],
  looksAt: ({ verbs }) => verbs.has("sand"),
  checks: {
    onStep: ({ action, before, run, index, report }) => {
      if (action.verb !== "sand" || !action.gritsKnown || action.grits.length === 0) return;
      const coarsest = Math.min(...action.grits);
      // To sand all of it with coarse paper is to begin anew, unless a filler is what is to be sanded flush.
      const filled = wasFilledSince(run, index);
      const isOutOfOrder = action.grits.length > 1 && !wasSandedBefore(run, index);
      const beginsAnew = action.grits.at(-1)! < COARSEST_BETWEEN_COATS && !filled && !isOutOfOrder;
      if (coarsest >= (filled ? FINE_ENOUGH_FLUSH : COARSEST_BETWEEN_COATS) || beginsAnew) return;
      const reached = colourWithin(before, coarsest);
      if (!reached || !isClearedNext(run, index)) return;
      const { colour, filmUm } = reached;
      const grit = action.syntax.grits[action.grits.indexOf(coarsest)]!;
      report({
        ...(filled || isOutOfOrder ? { severity: "warning" as const } : {}),
        headline:
          filmUm === 0
            ? t`Grit ${coarsest} cuts into the colour of ${coatName(colour)}`
            : t`Grit ${coarsest} cuts through the film over ${coatName(colour)}`,
        why:
          filmUm === 0
            ? t`The colour lies in the topmost fibres only, and pale patches show where they are sanded off, at edges first.`
            : t`The film is only ${filmText(filmUm)} thick, and pale patches show where the colour below is sanded off.`,
        remedy: isOutOfOrder
          ? t`Sand the bare wood first, to the last grit, and stain it then.`
          : filled
            ? t`Fill and sand before the stain, or fill last with a wax or putty that is only wiped flush.`
            : t`Use 220 or finer here, by hand, or seal the colour first and smooth that coat with 320.`,
        abrades: "surface",
        at: { ...action.place, span: grit.span },
        related: [layerBelow(colour)],
      });
    },
  },
};

/** Whether the wood was sanded before the colour: what is sanded after it only then may be sanded back on purpose. */
function wasSandedBefore({ moments, preceded }: SurfaceRun, index: number): boolean {
  const first = moments.findIndex(({ action }) => action.op === "layer");
  return (
    preceded === true ||
    moments
      .slice(0, Math.min(first, index))
      .some(
        ({ action }) =>
          action.op === "step" && ["sand", "scrape", "strip", "plane", "scuff"].includes(action.verb),
      )
  );
}

/** The coarsest grit that may take a filler flush on a colour. */
const FINE_ENOUGH_FLUSH = 220;

/** Whether holes were filled after the last layer: what is sanded flush there is on the colour. */
function wasFilledSince({ moments }: SurfaceRun, index: number): boolean {
  const from = moments.slice(0, index).findLastIndex(({ action }) => action.op === "layer");
  return moments.slice(from + 1, index).some(({ action }) => action.op === "step" && action.verb === "fill");
}

/** The new colour that scratches of this grit reach, and the film over it, micrometres. */
function colourWithin(
  { layers }: SurfaceState,
  grit: number,
): { readonly colour: Coat; readonly filmUm: number } | undefined {
  const at = layers.findLastIndex(isColour);
  const colour = layers[at];
  // What fills holes lies in them, and nothing of it over the colour.
  const above = layers.slice(at + 1).filter(({ family }) => family?.role !== "filler");
  if (!colour || !above.every((coat) => coat.filmUm !== undefined && isFilm(coat))) return undefined;
  const filmUm = above.reduce((sum, coat) => sum + coat.filmUm!, 0);
  const reach = (medianUm(grit) ?? 0) * SCRATCH_SHARE;
  return filmUm < reach ? { colour, filmUm } : undefined;
}

/** Dye is not counted: it goes deeper, and sanding it back is a way of bringing a figure out. */
const isColour = ({ origin, family }: Coat): boolean =>
  origin === "new" && (family?.role === "stain" || family?.role === "glaze") && family.binder !== "dye";

/** What comes next shows the colour as it is, and does not cover or renew it. */
function isClearedNext(run: SurfaceRun, index: number): boolean {
  const next = run.moments.slice(index + 1).find(({ action }) => action.op === "layer")?.action;
  const role = next?.op === "layer" ? next.use.material?.family?.role : undefined;
  return role === "clear" || role === "oil" || role === "wax" || role === "sealer";
}
