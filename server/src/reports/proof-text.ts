/** How good a plan is, in words. */
import { percentText } from "../core/measure/figures.ts";
import { formatDuration } from "../core/measure/format-amount.ts";
import type { Schedule } from "../core/schedule/types.ts";

/** How good the plan is: proven, or within which gap of what is proven; in sessions by the end of the last work. */
export function proofText({ exact, lowerBound, gap, lastWorkAt }: Schedule): string {
  const gapText = `(a gap of ${percentText(gap * 100)})`;
  if (lastWorkAt !== undefined)
    return exact
      ? "no plan ends it earlier"
      : `no plan ends it within ${formatDuration(lowerBound)} ${gapText}`;
  return exact ? "no plan is shorter" : `no plan is shorter than ${formatDuration(lowerBound)} ${gapText}`;
}
