/**
 * Loud machines: only where the tables are sure that one is at work.
 */
import { dutyChecks } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";

export const noHearingProtection: TradeRule = {
  id: "no-hearing-protection",
  group: "safety",
  severity: "warning",
  docs: {
    summary: "A layer is sprayed with a loud pump, and the recipe does not state `hearing`.",
    why: "A day beside an airless pump can pass the noise that ears take without harm, and hearing does not come back.",
    remedy: "State `safety hearing`, or put the coat on by hand.",
    sources: [
      "29 CFR 1910.95 and NIOSH 98-126: 85 dBA over a day",
      "that airless pumps reach it: from memory, confidence medium",
    ],
  },
  failing: [
    {
      title: "An airless pump",
      text: `recipe sprayed {
  for    wood
  safety vapour_respirator, eye_protection, ventilate
  layer  waterborne_polyurethane, by airless #! no-hearing-protection
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Ears covered",
      text: `recipe sprayed {
  for    wood
  safety vapour_respirator, eye_protection, ventilate, hearing
  layer  waterborne_polyurethane, by airless
  wait   until cured
}
`,
    },
  ],
  checks: dutyChecks("hearing", "Hearing that is lost beside a loud machine does not come back."),
};
