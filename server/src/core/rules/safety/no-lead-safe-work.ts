/**
 * Work on lead paint, wet or with a HEPA filter as it should be, without the rest: filter, sheeting, cleaning up.
 */

import { lookUp } from "../../../../../grammar/src/look-up.ts";
import { t } from "../../../../../grammar/src/translate.ts";
import { leadNote } from "../../knowledge/lead.ts";
import { onceFor } from "../../once.ts";
import type { Action } from "../../surface/actions.ts";
import { leadFactsOf } from "../../surface/lead.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Moment } from "../../surface/state.ts";
import { dutyChecks, type Need } from "../duty-check.ts";
import { isOldClear, leadReached, waitsForLaboratory } from "../lead-caution.ts";
import type { TradeRule } from "../rule.ts";
import { spokenLines, textOf } from "../spoken-words.ts";
import { coatName, related } from "../texts.ts";

const VERBS: Readonly<Record<string, () => string>> = {
  sand: () => t`sanding`,
  scuff: () => t`scuffing`,
  scrape: () => t`scraping`,
  strip: () => t`stripping`,
  distress: () => t`distressing`,
};

export const noLeadSafeWork: TradeRule = {
  id: "no-lead-safe-work",
  group: "safety",
  severity: "warning",
  speaksOfLead: true,
  docs: {
    summary:
      "Lead paint, or an old clear that comes off, with lead found or presumed, is abraded, or paint in which lead was found is stripped, and the recipe does not state `lead_safe`.",
    why: "Wet work and filters keep most of the lead down; what still comes off is carried about on shoes, clothes and hands.",
    remedy:
      "Wear a P100 respirator, lay plastic sheeting, clean up wet and with a HEPA vacuum, wash before you eat, and state `safety lead_safe`. A note that names the filter and the sheeting counts as well.",
    sources: [
      "40 CFR 745.85 on containment and cleaning, for housing, by analogy",
      "24 CFR 35.1345 and 35.1350 on worksite and safe work practices (from memory)",
      "29 CFR 1926.62 on respirators for lead (from memory)",
    ],
  },
  failing: [
    {
      title: "Wet, but nothing is said of the rest",
      text: `recipe prepare {
  for    wood
  safety lead_test
  step   clean with soap
  step   scuff wet 180 #! no-lead-safe-work
  step   clean with water
}

piece table {
  built 1936
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing alkyd paint, 2 coats
  }
}

job legs {
  piece table
  apply prepare to legs
}
`,
    },
    {
      title: "An old lacquer taken off wet, with the laboratory's result still to come",
      text: `recipe take_off {
  for    wood
  safety lead_test
  step   clean with soap
  wait   overnight
  step   sand wet 80, 120, 180 #! no-lead-safe-work
  step   clean with water
}

piece table {
  built 1952
  surface top {
    shape    panel 600 mm x 400 mm
    wood     beech
    existing nitrocellulose lacquer
  }
}

job tables {
  piece table
  apply take_off to top
}
`,
    },
  ],
  passing: [
    {
      title: "Sound old shellac, scuffed lightly for a fresh polish",
      text: `recipe polished {
  for    wood
  safety lead_test, ventilate, no_ignition
  step   clean with soap
  step   scuff wet 320
  step   clean with water
  wait   overnight
  layer  dewaxed_shellac
  wait   until cured
}

piece table {
  built 1910
  surface top {
    shape    panel 600 mm x 400 mm
    wood     beech
    existing dewaxed shellac
  }
}

job tables {
  piece table
  apply polished to top
}
`,
    },
    {
      title: "A note names filter and sheeting",
      text: `recipe prepare {
  for    wood
  safety lead_test
  note   "P100 filter, plastic sheeting on the floor, HEPA vacuum and wet cloths after."
  step   clean with soap
  step   scuff wet 180
  step   clean with water
}

piece table {
  built 1936
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing alkyd paint, 2 coats
  }
}

job legs {
  piece table
  apply prepare to legs
}
`,
    },
  ],
  checks: dutyChecks(
    "lead_safe",
    (run) => t`${leadNote(leadFactsOf(run))} A plain dust mask is not enough for it.`,
    need,
  ),
};

function need({ action, before }: Moment<Action>, run: SurfaceRun): Need | undefined {
  if (action.op !== "step" || lookUp(VERBS, action.verb) === undefined) return undefined;
  const matter = leadReached(run, action, before);
  if (!matter || matter.status === "possible" || waitsForLaboratory(run) || saysSo(run)) return undefined;
  if (matter.status === "presumed" && !isTestedAndClean(action)) return undefined;
  // Of a clear only what takes it off counts: polishing sound shellac with a light scuff does not go through it.
  if (matter.status === "presumed" && matter.kind === "clear" && !isOldClear(run, matter, action))
    return undefined;
  const coat = matter.coat;
  return {
    who: VERBS[action.verb]!(),
    reason: coat ? t`goes into ${coatName(coat)}` : t`goes into paint that holds lead`,
    ...(coat ? { cause: related(coat.place, t`The old coating`) } : {}),
  };
}

/** Dry and untested work has a graver finding of its own, and a stripper leaves no dust. */
const isTestedAndClean = (step: Extract<Action, { op: "step" }>): boolean =>
  step.duties.has("lead_test") && step.verb !== "strip" && (step.wet || step.what !== undefined);

const FILTER = /\b(?:P\s?100|N100|FFP3|P3|HEPA)\b/iu;
const SHEETING =
  /\b(?:plastic|poly(?:thene|ethylene)?|sheeting|drop\s?cloths?|contain(?:ment|ed)?|tent(?:ed)?)\b/iu;

/** Whether the recipe's own words name a filter and what is laid under the work. */
const saysSo = onceFor((run: SurfaceRun): boolean => {
  const texts = spokenLines(run).map(textOf).join(". ");
  return FILTER.test(texts) && SHEETING.test(texts);
});
