/**
 * Lye or acid that is left in the wood: it goes on working under the coat, and burns whoever sands it.
 */

import { PRACTICE } from "../../knowledge/sources.ts";
import { residuesBefore } from "../chemical-residues.ts";
import { isWooden } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const causticOrAcidLeftIn: TradeRule = {
  id: "caustic-or-acid-left-in",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A coat goes on wood that was washed with lye or a strong acid and not rinsed since. Rinsed with water alone, it is a hint to neutralise it.",
    why: "Lye and acid crystals go on working in the wood: they soften and discolour the finish over them, and their dust burns eyes and lungs when the wood is sanded.",
    remedy:
      "Rinse with plenty of water. Then neutralise lye with a vinegar rinse and acid with baking soda or borax in water, rinse again, and let the wood dry.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "Oxalic acid for ink spots, oiled the next day",
      text: `material spot_acid "Oxalic acid in water" {
  family cleaner
}

recipe spotted {
  for    wood
  safety gloves, eye_protection, wet_rags
  step   clean with spot_acid
  wait   48 h
  layer  drying_oil, wiped #! caustic-or-acid-left-in
  wait   until cured
}
`,
    },
    {
      title: "Lye rinsed with water alone: a hint",
      text: `material lye_wash "Lye for pale softwood" {
  family cleaner
}

recipe pale {
  for    wood
  safety gloves, eye_protection, wet_rags
  step   clean with lye_wash
  step   clean with water
  wait   72 h
  layer  drying_oil, wiped #! caustic-or-acid-left-in
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Neutralised, rinsed and dried",
      text: `material lye_wash "Lye for pale softwood" {
  family cleaner
}

material sour "Vinegar rinse" {
  family cleaner
}

recipe pale {
  for    wood
  safety gloves, eye_protection, wet_rags
  step   clean with lye_wash
  step   clean with water
  step   clean with sour
  step   clean with water
  wait   72 h
  layer  drying_oil, wiped
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ before, run, index, report }) => {
      // Stripping residue and bleach have findings of their own, which ask for the same rinse.
      if (before.residue || isWooden(run) === "no") return;
      const residue = residuesBefore(run)[index]!.find(
        ({ hazards, neutralised, step }) =>
          step.verb !== "bleach" &&
          !neutralised &&
          (hazards.includes("strong base") || hazards.includes("strong acid")),
      );
      if (!residue) return;
      const isBase = residue.hazards.includes("strong base");
      const neutraliser = isBase ? "a vinegar rinse" : "baking soda or borax in water";
      report({
        severity: residue.rinsed ? "hint" : "warning",
        headline: residue.rinsed
          ? `\`${residue.use.name}\` was rinsed with water but not neutralised`
          : `\`${residue.use.name}\` was never rinsed out of the wood`,
        why: `${isBase ? "Lye" : "Acid"} that stays in the wood discolours and softens the finish, and its dust burns.`,
        remedy: residue.rinsed
          ? `Neutralise it with ${neutraliser} and rinse again, or test the damp wood with indicator paper.`
          : `Rinse it with \`step clean with water\`, neutralise it with ${neutraliser}, rinse again and let the wood dry.`,
        related: [related(residue.step.place, `\`${residue.use.name}\` goes on here`)],
      });
    },
  },
};
