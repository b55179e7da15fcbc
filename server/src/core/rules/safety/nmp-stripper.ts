/**
 * NMP: it goes through skin and many gloves, and harms an unborn child.
 */
import { namesChemical } from "../../knowledge/named-chemicals.ts";
import { usesOf } from "../material-uses.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { related, useName } from "../texts.ts";

export const nmpStripper: TradeRule = {
  id: "nmp-stripper",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A material is used whose title, documentation or name says that it holds NMP (N-methylpyrrolidone).",
    why: "It goes through the skin and through many gloves, and can harm an unborn child. A rule that would limit it is proposed in the United States (89 FR 51134) and not final.",
    remedy: "Use a stripper without it, or the gloves that its safety data sheet names.",
    sources: [
      "89 FR 51134 (14 June 2024), proposed only",
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
  checks: { onStep: check, onLayer: check },
};

function check({ action, report }: MomentContext): void {
  const use = usesOf(action).find(({ material }) => material && namesChemical(material, "NMP"));
  if (!use?.material) return;
  report({
    headline: `${useName(use)} holds NMP (N-methylpyrrolidone), by its own words`,
    why: "It goes through the skin and many gloves, and can harm an unborn child.",
    remedy: "Use a stripper without it, or wear the gloves that its safety data sheet names and no others.",
    ...(action.place.declaration === use.place.declaration ? { at: use.place } : {}),
    related: [related(use.material.namePlace, "The material that says so")],
  });
}
