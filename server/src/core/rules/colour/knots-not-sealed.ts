/**
 * Light oil paint straight over the knots of softwood: their resin comes through it as surely as through water.
 *
 * Light waterborne paint there is `tannin-bleed`'s business. Veneers hold too little resin to matter, and a recipe that
 * speaks of its knots has seen them.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { shadeOfMaterial } from "../../colour.ts";
import { TEXTBOOK } from "../../knowledge/sources.ts";
import { isFilm } from "../../surface/state.ts";
import { stainBlockLines } from "../coat-queries.ts";
import { woodOf } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { isSpokenOf } from "../spoken-words.ts";
import { insertAbove, related } from "../texts.ts";

const KNOTS = /\bknot/iu;

const FILE = (wood: string, colour: string, steps: string) => `material trim_white "Trim enamel" {
  family alkyd paint
  colour ${colour}
}
piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  ${wood}
  }
}
recipe painted {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 150
  step   dust
${steps}  wait   until cured
}
job shelves {
  piece shelf
  apply painted to top
}
`;

export const knotsNotSealed: TradeRule = {
  id: "knots-not-sealed",
  group: "colour",
  severity: "hint",
  docs: {
    summary:
      "Light solvent-borne paint goes on bare, knotty softwood without shellac or a primer that blocks.",
    why: "The resin of the knots works its way through the paint, and every knot shows as a yellow or brown ring within a year.",
    remedy: "Seal the knots, or the whole surface, with shellac or a shellac primer first.",
    sources: [`${TEXTBOOK}: knots are sealed with shellac before oil paint`],
  },
  failing: [
    {
      title: "White enamel on pine",
      text: FILE("pine", "white", "  layer  trim_white #! knots-not-sealed\n"),
    },
  ],
  passing: [
    {
      title: "Shellac primer first",
      text: FILE(
        "pine",
        "white",
        `  layer  shellac_primer
  wait   until recoat
  layer  trim_white
`,
      ),
    },
    {
      title: "The knots are sealed by themselves",
      text: FILE("spruce", "white", '  note   "Two dabs of shellac on every knot."\n  layer  trim_white\n'),
    },
    { title: "A dark paint", text: FILE("pine", '"#2b3a42"', "  layer  trim_white\n") },
    {
      title: "Wood without knots, or a thin veneer",
      text: FILE("pine, veneer 0.6 mm", "white", "  layer  trim_white\n"),
    },
  ],
  looksAt: ({ roles }) => roles.has("paint"),
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      const wood = woodOf(run);
      if (over?.role !== "paint" || over.drying === "waterborne" || !wood?.knotty) return;
      if (run.surface?.substrate.veneerMm !== undefined) return;
      if (shadeOfMaterial(action.use.material) !== "light") return;
      if (before.openBelow || before.layers.some((coat) => !coat.family || isFilm(coat))) return;
      if (isSpokenOf(run, index, KNOTS)) return;
      report({
        headline: t`The knots of the ${translated(wood.name)} will show through \`${action.use.name}\``,
        why: t`Their resin works its way through oil paint, too, and every knot shows as a yellow ring within a year.`,
        remedy: t`Seal the knots with shellac first, or prime the whole surface with shellac primer.`,
        ...(run.surface?.substrate.place
          ? { related: [related(run.surface.substrate.place, t`The surface is ${translated(wood.name)}`)] }
          : {}),
        fixes:
          action.coat === 1
            ? [insertAbove("undertaking", action, t`Prime with shellac primer`, stainBlockLines(action))]
            : [],
      });
    },
  },
};
