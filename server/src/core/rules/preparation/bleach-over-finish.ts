/**
 * Bleach works in the wood; on a finish it does nothing to the colour and harms the film.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { isFilm, topCoat } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, related } from "../texts.ts";

export const bleachOverFinish: TradeRule = {
  id: "bleach-over-finish",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "Wood is to be bleached while a finish is still on it.",
    why: "Bleach lightens only what it soaks into. On a film or wax it stands in drops, spoils the finish and leaves the wood in patches.",
    remedy: "Strip or sand to bare wood and clean it before bleaching.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "The old lacquer is still there",
      text: `piece shelf {
  built 1990
  surface top {
    shape panel 800 mm x 300 mm
    wood  oak
    existing nitrocellulose lacquer
  }
}
recipe pale_wood {
  for    wood
  safety gloves, eye_protection
  step   clean with soap
  step   bleach with wood_bleach #! bleach-over-finish
  wait   overnight
  step   clean with water
}
job shelves {
  piece shelf
  apply pale_wood to top
}
`,
    },
  ],
  passing: [
    {
      title: "Sanded to bare wood first",
      text: `piece shelf {
  built 1990
  surface top {
    shape panel 800 mm x 300 mm
    wood  oak
    existing nitrocellulose lacquer
  }
}
recipe pale_wood {
  for    wood
  safety gloves, eye_protection, dust_mask
  step   clean with soap
  step   sand 80, 120, 180
  step   dust
  step   bleach with wood_bleach
  wait   overnight
  step   clean with water
}
job shelves {
  piece shelf
  apply pale_wood to top
}
`,
    },
  ],
  looksAt: ({ verbs }) => verbs.has("bleach"),
  checks: {
    onStep: ({ action, before, report }) => {
      const coat = topCoat(before);
      if (action.verb !== "bleach" || !coat) return;
      if (!isFilm(coat) && coat.family?.role !== "wax") return;
      report({
        headline: t`The bleach goes on ${coatName(coat)}, not on bare wood`,
        why: t`Bleach lightens only bare wood; on a finish it stands in drops, spoils the film and leaves patches.`,
        remedy: t`Strip or sand to bare wood and clean it above this line.`,
        abrades: "to the wood",
        related: [related(coat.place, t`The finish that is still on`)],
      });
    },
  },
};
