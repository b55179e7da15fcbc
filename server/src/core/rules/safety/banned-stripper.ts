/**
 * Methylene chloride: strippers with it have killed people in closed rooms, and were taken off sale.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { reportChemicals } from "../chemical-uses.ts";
import type { TradeRule } from "../rule.ts";

export const bannedStripper: TradeRule = {
  id: "banned-stripper",
  group: "safety",
  severity: "error",
  docs: {
    summary:
      "A recipe uses a material whose words name methylene chloride (dichloromethane, DCM, CAS 75-09-2), or its own words say to use it.",
    why: "Its vapour is heavy, stuns before you notice it and has killed people who stripped in closed rooms. No cartridge holds it back: at work only air from outside is allowed (29 CFR 1910.1052). In the United States consumer paint removers with it may not be sold since 23 November 2019 (84 FR 11420), and most other uses are being ended (40 CFR 751 subpart B, 89 FR 39254).",
    remedy:
      "Use a stripper without it, or scrape. Your local waste service says where to take an old tin. Words such as `free of` or `never use` beside the name are heeded.",
    sources: [
      "84 FR 11420 (27 March 2019)",
      "40 CFR 751 subpart B; 89 FR 39254 (8 May 2024)",
      "29 CFR 1910.1052, by way of appendix E of the NIOSH Pocket Guide to Chemical Hazards",
    ],
  },
  failing: [
    {
      title: "The title says so",
      text: `material old_tin "Methylene chloride stripper" {
  family paint stripper
}

recipe take_off {
  for    wood
  safety gloves, eye_protection, ventilate
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
    {
      title: "An abbreviation, a CAS number and a note",
      text: `material quick "Quick remover, 80 % DCM" {
  family paint stripper
}

## Active part: CAS 75-09-2.
material gel {
  family paint stripper
}

recipe take_off {
  for    wood
  safety gloves, eye_protection, ventilate
  step   strip with quick #! banned-stripper
  step   strip with gel #! banned-stripper
  note   "Works fastest with methylene-chloride remover from an old tin." #! banned-stripper
  step   clean with water
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
    {
      title: "Words that forbid it",
      text: `recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  note   "Never use a stripper with methylene chloride: DCM has killed people in rooms like this."
  step   strip with paint_stripper
  step   clean with water
}
`,
    },
  ],
  looksAt: ({ namesChemicals }) => namesChemicals,
  checks: {
    onRun: (ctx) =>
      reportChemicals(
        ctx,
        ({ name }) => name === "methylene chloride",
        ({ row }) => ({
          why: t`${translated(row.harm)} US rules took paint removers with it off sale (84 FR 11420, 40 CFR 751 subpart B).`,
          remedy: t`${translated(row.instead!)}; ask your local waste service where to take an old tin.`,
          abrades: "to the wood",
        }),
      ),
  },
};
