/**
 * Why a plan fails, in words: a plan is made where nobody knows the language of the reader.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { formatDuration } from "../measure/format-amount.ts";
import type { ConflictReason } from "./types.ts";

/** As a clause: without the capital and the full stop of a sentence. */
export function conflictText(reason: ConflictReason): string {
  switch (reason.why) {
    case "never open":
      return t`the shop never opens`;
    case "no date":
      return t`the start is not a date`;
    case "crew":
      return t`the crew cannot keep all windows`;
    case "shop":
      return t`the jobs of the shop cannot be planned together`;
    case "batch":
      return t`what is to be done together would come after its time to the next coat`;
    case "hours":
      return t`no opening hours let the work begin within the ${formatDuration(reason.within)} of its window`;
    case "window":
      return t`the window closes after ${formatDuration(reason.within)}, but ${formatDuration(reason.needed)} of waits and work lie between`;
    case "opening":
      return t`${reason.pieces} pieces together take ${formatDuration(reason.taken)}, and no opening is longer than ${formatDuration(reason.within)}`;
    case "mix":
      return t`${reason.pieces} pieces together take ${formatDuration(reason.taken)}, and the mix can be used for ${formatDuration(reason.within)}`;
  }
}
