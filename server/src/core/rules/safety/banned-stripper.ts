/**
 * Methylene chloride: strippers with it have killed people in closed rooms, and were taken off sale.
 */
import { namesChemical } from "../../knowledge/named-chemicals.ts";
import { usesOf } from "../material-uses.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const bannedStripper: TradeRule = {
  id: "banned-stripper",
  group: "safety",
  severity: "error",
  docs: {
    summary: "A material is used whose title, documentation or name says that it holds methylene chloride.",
    why: "Its vapour is heavy, stuns before it warns and has killed people who stripped in closed rooms. In the United States consumer paint removers with it may not be sold since 23 November 2019 (84 FR 11420), and most other uses are being ended (89 FR 39254).",
    remedy:
      "Use a stripper without it, or scrape. What to do with an old tin the local rules on hazardous waste say.",
    sources: ["84 FR 11420 (27 March 2019)", "89 FR 39254 (8 May 2024)"],
  },
  failing: [
    {
      title: "The title says so",
      text: `material old_tin "Methylene chloride stripper" {
  family paint stripper
}

recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with old_tin #! banned-stripper
  step   clean with water
}
`,
    },
    {
      title: "The documentation says so, and a job names it",
      text: `## Contains dichloromethane; keep it cool.
material old_tin {
  family paint stripper
}

recipe take_off(stripper: material) {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with stripper #! banned-stripper
  step   clean with water
}

piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}

job lid {
  piece box
  apply take_off(stripper: old_tin) to lid
}
`,
    },
  ],
  passing: [
    {
      title: "A stripper that says it has none",
      text: `## Paste, free of methylene chloride and NMP.
material paste "Stripper without methylene chloride" {
  family paint stripper
}

recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with paste
  step   clean with water
}
`,
    },
  ],
  checks: { onStep: check, onLayer: check },
};

function check({ action, report }: MomentContext): void {
  const use = usesOf(action).find(
    ({ material }) => material && namesChemical(material, "methylene chloride"),
  );
  if (!use?.material) return;
  report({
    headline: `${useName(use)} holds methylene chloride, by its own words`,
    why: "Its vapour has killed people in closed rooms, and US rules took paint removers with it off sale (84 FR 11420, 89 FR 39254).",
    remedy:
      "Use a stripper without it, or scrape; what to do with an old tin the local rules on hazardous waste say.",
    ...(action.place.declaration === use.place.declaration ? { at: use.place } : {}),
    related: [related(use.material.namePlace, "The material that says so")],
  });
}
