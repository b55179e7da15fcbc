/** The air of a job on its sheet: first whether it can be relied on, in one blunt line, and then the figures behind that. */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { AirVerdict } from "../../core/fumes/job-air.ts";
import { gramsText } from "../../core/measure/figures.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { fumesBasis, worstAir } from "../fumes/fumes-facts.ts";
import type { SheetFumes } from "./model.ts";
import { titleOf } from "./words.ts";

/** Undefined where no air is computed. */
export function sheetFumes(result: JobResult): SheetFumes | undefined {
  const worst = worstAir(result, titleOf);
  const verdict = result.air?.worst?.coat.verdict;
  if (worst === undefined || verdict === undefined) return undefined;
  return {
    gist: translated(verdict === "enough" && worst.isPartial ? NOT_ALL_COUNTED : GISTS[verdict]),
    text: t`${gramsText(worst.grams)} in the ${worst.name}, ${worst.air} (${fumesBasis()}).`,
  };
}

export const NOT_ALL_COUNTED = "Do not rely on the air of this room: not all of the vapour is counted.";

export const GISTS: Readonly<Record<AirVerdict, string>> = {
  enough: "Keep the air moving until it is dry: by this estimate it is enough, and no more than that.",
  unnamed: "Do not rely on the air of this room: it is enough only if the solvent is a mild one.",
  unmeasured: "Do not rely on the air of this room: it is not known to be enough.",
  masked: "The air of this room is too little: do not breathe it without the respirator.",
  short: "The air of this room is too little: bring in more, or do less in a day.",
};
