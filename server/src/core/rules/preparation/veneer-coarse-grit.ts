/**
 * A coarse first grit on thin veneer, where one pass takes more than a third of it. What goes through is
 * `sand-through`'s, for the whole run.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { COARSE_ON_VENEER, materialTakenMm, VENEER_SHARE } from "../../knowledge/abrasives.ts";
import { BY_DEFINITION, PRACTICE } from "../../knowledge/sources.ts";
import { thicknessText } from "../../measure/figures.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

/** Thicker veneer is sawn, and sands like a board. */
const THIN_MM = 1;
/** Share of the veneer that one pass may take before it is called coarse. */
const PASS_SHARE = 1 / 3;

const FILE = (veneer: string, grits: string) => `piece cabinet {
  surface top {
    shape panel 800 mm x 400 mm
    wood  walnut, veneer ${veneer}
  }
}
recipe bare_wood {
  for    wood
  safety dust_mask
  step   sand ${grits}
  step   dust
}
job cabinets {
  piece cabinet
  apply bare_wood to top
}
`;

export const veneerCoarseGrit: TradeRule = {
  id: "veneer-coarse-grit",
  group: "preparation",
  severity: "hint",
  docs: {
    summary:
      "The first grit on a veneer under 1 mm is 60 or coarser and takes more than a third of it in one pass.",
    why: "Machine and hand never press evenly: at an edge or over a bump such a grit is through before you see it.",
    remedy: "Begin with 100 or 120 on veneer, and take an old finish off with a stripper or a scraper.",
    sources: [`${BY_DEFINITION}: a grit G takes 10/G mm`, PRACTICE],
  },
  failing: [
    {
      title: "40 on a veneer of 0.6 mm",
      text: FILE("0.6 mm", "40, 60 #! veneer-coarse-grit"),
    },
  ],
  passing: [
    { title: "60 on the same veneer takes 0.17 mm", text: FILE("0.6 mm", "60, 100, 150") },
    { title: "A sawn veneer", text: FILE("1.5 mm", "40, 60, 100") },
  ],
  looksAt: ({ verbs }) => verbs.has("sand"),
  checks: {
    onStep: ({ action, before, after, run, report }) => {
      const veneer = run.surface?.substrate;
      const grit = action.grits[0];
      if (action.verb !== "sand" || grit === undefined || !action.gritsKnown) return;
      if (veneer?.veneerMm === undefined || veneer.veneerMm >= THIN_MM || grit > COARSE_ON_VENEER) return;
      const taken = materialTakenMm(grit);
      if (taken <= veneer.veneerMm * PASS_SHARE || after.woodTakenMm <= before.woodTakenMm) return;
      if (before.woodTakenMm > run.initial.woodTakenMm) return;
      if (run.final.woodTakenMm > VENEER_SHARE * veneer.veneerMm) return;
      report({
        headline: t`Grit ${grit} takes ${thicknessText(taken)} of a ${thicknessText(veneer.veneerMm)} veneer in one pass`,
        why: t`No hand presses evenly, and at an edge or bump a grit this coarse is through before you see it.`,
        remedy: t`Begin with 100 or 120, and take an old finish off with a stripper or a scraper.`,
        abrades: "to the wood",
        at: { ...action.place, span: action.syntax.grits[0]!.span },
        related: veneer.place
          ? [related(veneer.place, t`The veneer is ${thicknessText(veneer.veneerMm)} thick`)]
          : [],
      });
    },
  },
};
