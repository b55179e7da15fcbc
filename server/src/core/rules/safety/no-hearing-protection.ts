/**
 * Loud machines: only where the tables are sure that one is at work.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Moment } from "../../surface/state.ts";
import { dutyChecks, type Need, needFor } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";
import { clauseNaming, LOUD_MACHINE } from "../work-words.ts";

export const noHearingProtection: TradeRule = {
  id: "no-hearing-protection",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A layer is sprayed with a loud pump, or a note or a step's words name a loud machine (sander, grinder, planer, saw, compressor, blasting), and the recipe does not state `hearing`.",
    why: "A day beside such a machine can pass the noise that ears take without harm, and hearing does not come back.",
    remedy: "Wear ear protection and state `safety hearing`, or do it by hand.",
    sources: [
      "29 CFR 1910.95 and NIOSH 98-126: 85 dBA over a day",
      "that sanders, planers, saws, compressors and airless pumps reach it: from memory, confidence medium",
    ],
  },
  failing: [
    {
      title: "An airless pump",
      text: `recipe sprayed {
  for    wood
  safety vapour_respirator, eye_protection, ventilate
  note   "The airless pump stands beside you all day." #! no-hearing-protection
  layer  waterborne_polyurethane, by airless
  wait   until cured
}
`,
    },
    {
      title: "A belt sander in a note, and another in the words of a step",
      text: `recipe flat {
  for    wood
  safety dust_mask
  note   "Two hours with the belt sander." #! no-hearing-protection
  step   sand 80, 120, 150
  step   dust
}

recipe flatter {
  for    wood
  safety dust_mask
  step   sand 80, 120 "random-orbit sander" #! no-hearing-protection
  step   dust
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
    {
      title: "Stated below the note and above the work; and words that rule a machine out",
      text: `recipe flat {
  for    wood
  note   "Two hours with the belt sander."
  safety dust_mask, hearing
  step   sand 80, 120, 150
  step   dust
}

recipe by_hand {
  for    wood
  safety dust_mask
  note   "The mask goes on before the sander starts."
  note   "By hand with a block: no belt sander on veneer."
  step   sand 150
  step   dust
}
`,
    },
  ],
  checks: dutyChecks(
    "hearing",
    () => t`Hearing that is lost beside a loud machine does not come back.`,
    need,
  ),
};

function need({ action }: Moment<Action>, run: SurfaceRun): Need | undefined {
  const brought = needFor(action, "hearing");
  if (brought) return brought;
  const clause = clauseNaming((textOf(action) ?? "").replace(POINT_IN_TIME, " "), LOUD_MACHINE);
  if (clause === undefined || isStatedNext(run, action)) return undefined;
  return { who: t`this line`, reason: t`speaks of a loud machine ("${shortened(clause)}")` };
}

/** "Mask before the sander, not after the first cough" says when, and not how long anybody stands beside it. */
const POINT_IN_TIME =
  /\bbefore\s+(?:the|a|any)\s+(?:[\p{L}-]+\s+)?(?:sanders?|grinders?|planers?|routers?|saws?|compressors?)\b/giu;

/** A note may stand above the `safety` line of the work that it speaks of. */
const isStatedNext = ({ moments }: SurfaceRun, action: Action): boolean =>
  action.op === "note" &&
  moments
    .slice(action.index + 1)
    .find((moment) => moment.action.op !== "note")
    ?.action.duties.has("hearing") === true;

const shortened = (clause: string): string => {
  const words = clause.trim().split(/\s+/u);
  return words.length > 8 ? `${words.slice(0, 8).join(" ")} …` : words.join(" ");
};
