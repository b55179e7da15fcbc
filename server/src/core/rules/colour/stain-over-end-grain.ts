/**
 * A dark stain on solid wood whose edges are no finer than 120: end grain drinks it and turns far darker than the face.
 *
 * 120 is fine enough for the face, so this is only a hint, and only where the edges are stated, the stain is dark and
 * nothing says that the ends are looked after. Coarser grits are `grit-too-coarse`'s, blotch-prone woods `blotchy-stain`'s.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { shadeOfMaterial } from "../../colour.ts";
import { COARSEST_BEFORE_FINISH, COARSEST_ON_END_GRAIN } from "../../knowledge/abrasives.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { isBare } from "../../surface/state.ts";
import { lastGrit, lastSanding, sandingLines, woodOf } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { isSpokenOf } from "../spoken-words.ts";
import { insertAbove, related } from "../texts.ts";

const ENDS = /\bend[\s-]?grain|\bends?\b|\bedges?\b/iu;

const FILE = (shape: string, wood: string, grits: string, mark = "") => `material dark_oak "Dark oak stain" {
  family oil stain
  colour "#3b2a1c"
}
piece table {
  surface top {
    shape ${shape}
    wood  ${wood}
  }
}
recipe stained {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand ${grits}
  step   dust
  layer  dark_oak, wiped off${mark}
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
job tables {
  piece table
  apply stained to top
}
`;

export const stainOverEndGrain: TradeRule = {
  id: "stain-over-end-grain",
  group: "colour",
  severity: "hint",
  docs: {
    summary:
      "A dark penetrating stain goes on a solid top with its edges, and the last grit before it is coarser than 150.",
    why: "End grain is a bundle of open pipes: it drinks several times what the face drinks, and the ends turn nearly black.",
    remedy:
      "Sand the ends finer than the face, or put a conditioner or a thin washcoat of dewaxed shellac on them first.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "A beech top with its edges, sanded to 120",
      text: FILE("panel 1200 mm x 700 mm x 25 mm", "beech", "80, 120", " #! stain-over-end-grain"),
    },
  ],
  passing: [
    {
      title: "150 is fine enough",
      text: FILE("panel 1200 mm x 700 mm x 25 mm", "beech", "80, 120, 150"),
    },
    { title: "Only the face", text: FILE("panel 1200 mm x 700 mm", "beech", "80, 120") },
    {
      title: "Veneer has no end grain to speak of",
      text: FILE("disc 900 mm x 25 mm", "walnut, veneer 0.9 mm", "120"),
    },
  ],
  looksAt: ({ roles }) => roles.has("stain"),
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      if (over?.role !== "stain" || !over.penetrating || over.name === "gel stain" || action.toner) return;
      const wood = woodOf(run);
      if (!wood || wood.blotchProne || run.surface?.substrate.veneerMm !== undefined) return;
      const shape = run.surface?.shapes.find(({ edges }) => edges);
      const sanding = lastSanding(run, index);
      const last = lastGrit(sanding);
      if (!shape || !sanding || last === undefined || !isBare(before)) return;
      if (last < COARSEST_BEFORE_FINISH || last >= COARSEST_ON_END_GRAIN) return;
      if (shadeOfMaterial(action.use.material) !== "dark" || isSpokenOf(run, index, ENDS)) return;
      report({
        headline: t`The end grain will turn nearly black under \`${action.use.name}\``,
        why: t`End grain of solid ${translated(wood.name)} sanded to ${last} drinks several times what the face drinks.`,
        remedy: t`Sand the ends to ${COARSEST_ON_END_GRAIN} or finer, or put a thin washcoat (\`layer dewaxed_shellac, thinned 1:2 with alcohol\`) on them first.`,
        abrades: "surface",
        related: [
          related(shape.place, t`The edges are counted in here`),
          related(sanding.place, t`Sanded to ${last} here`),
        ],
        fixes:
          action.coat === 1
            ? [
                insertAbove(
                  "undertaking",
                  action,
                  t`Sand on to ${COARSEST_ON_END_GRAIN}`,
                  sandingLines(action, COARSEST_ON_END_GRAIN),
                ),
              ]
            : [],
      });
    },
  },
};
