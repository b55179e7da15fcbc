/**
 * NMP: it goes through skin and many gloves, and harms an unborn child.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { reportChemicals } from "../chemical-uses.ts";
import type { TradeRule } from "../rule.ts";

export const nmpStripper: TradeRule = {
  id: "nmp-stripper",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A recipe uses a material whose words name NMP (N-methyl-2-pyrrolidone, CAS 872-50-4), or its own words say to use it.",
    why: "It goes through the skin and through many gloves, and can harm an unborn child. A rule that would limit it is proposed in the United States (89 FR 51134).",
    remedy: "Use a stripper without it, or wear the gloves that its safety data sheet names and no others.",
    sources: [
      "89 FR 51134 (14 June 2024), proposed rule",
      "harm to the unborn: from memory, confidence high",
    ],
  },
  failing: [
    {
      title: "The title says so",
      text: `material gel "Safer gel with NMP" {
  family paint stripper
}

recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with gel #! nmp-stripper
  step   clean with water
}
`,
    },
    {
      title: "The chemical name, as a data sheet has it",
      text: `## N-methyl-2-pyrrolidone 30 to 60 %.
material gel {
  family paint stripper
}

recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with gel #! nmp-stripper
  step   clean with water
}
`,
    },
  ],
  passing: [
    {
      title: "NMP-free",
      text: `material gel "NMP-free gel" {
  family paint stripper
}

recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with gel
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
        ({ name }) => name === "NMP",
        ({ row }) => ({
          why: translated(row.harm),
          remedy: t`${translated(row.instead!)}, or wear the gloves that its safety data sheet names and no others.`,
          abrades: "to the wood",
        }),
      ),
  },
};
