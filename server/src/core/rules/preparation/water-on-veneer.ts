/**
 * Water on the bare veneer of an old piece, whose hide glue it softens.
 *
 * Veneer was laid with hide glue until synthetic glues came into workshops about 1950. A damp cloth with soap is
 * everyday work, and on a later veneer raising the grain with water is sound.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { HIDE_GLUE_UNTIL } from "../../knowledge/woods.ts";
import { isBare } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

const FILE = (built: number, wood: string, step: string) => `piece commode {
  built ${built}
  surface top {
    shape    panel 900 mm x 450 mm
    wood     ${wood}
    existing bare
  }
}
recipe raised {
  for    wood
  safety dust_mask, ventilate, no_ignition
  ${step}
  wait   overnight
  step   sand 220
  step   dust
  layer  dewaxed_shellac
  wait   until cured
}
job commodes {
  piece commode
  apply raised to top
}
`;

export const waterOnVeneer: TradeRule = {
  id: "water-on-veneer",
  group: "preparation",
  severity: "hint",
  docs: {
    summary: `Bare veneer on a piece from before about ${HIDE_GLUE_UNTIL} is dampened or cleaned with water.`,
    why: "Hide glue swells and lets go where water stands: blisters come up, edges curl and old repairs open.",
    remedy: "Clean bare old veneer with mineral spirits, and smooth raised grain without wetting it.",
    sources: [
      "hide glue until about 1950, when synthetic resin glues took its place: common practice, no source",
    ],
  },
  failing: [
    {
      title: "A commode of 1870 is dampened",
      text: FILE(1870, "mahogany, veneer 1.2 mm", "step   dampen #! water-on-veneer"),
    },
    {
      title: "One of 1936, too",
      text: FILE(1936, "mahogany, veneer 1.2 mm", "step   dampen #! water-on-veneer"),
    },
    {
      title: "And rinsed with water",
      text: FILE(1870, "mahogany, veneer 1.2 mm", "step   clean with water #! water-on-veneer"),
    },
  ],
  passing: [
    { title: "A later veneer", text: FILE(1965, "mahogany, veneer 1.2 mm", "step   dampen") },
    { title: "Solid wood", text: FILE(1870, "mahogany", "step   dampen") },
    {
      title: "A damp cloth with soap",
      text: FILE(1870, "mahogany, veneer 1.2 mm", "step   clean with soap"),
    },
  ],
  looksAt: ({ verbs }) => verbs.has("dampen") || verbs.has("clean"),
  checks: {
    onStep: ({ action, before, run, report }) => {
      const isWater =
        action.verb === "dampen" ||
        (action.verb === "clean" && action.use?.material?.family?.name === "water");
      const veneer = run.surface?.substrate;
      const built = run.piece?.built;
      if (!isWater || veneer?.veneerMm === undefined || !built || built.value >= HIDE_GLUE_UNTIL) return;
      if (!isBare(before) || before.tests.length > 0) return;
      report({
        headline: t`Water can loosen the bare ${translated(veneer.name)} veneer of ${built.value}`,
        why: t`Veneer of that age is mostly laid with hide glue, which swells and lets go where water stands.`,
        remedy: t`Use mineral spirits, or wring the cloth out well, try it on a hidden spot and dry it at once.`,
        related: [
          ...(veneer.place ? [related(veneer.place, t`The veneer`)] : []),
          ...(built.place ? [related(built.place, t`When it was built`)] : []),
        ],
      });
    },
  },
};
