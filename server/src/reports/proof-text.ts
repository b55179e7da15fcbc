/** How good a plan is, in words. */
import { percentText } from "../core/measure/figures.ts";
import { formatDuration } from "../core/measure/format-amount.ts";
import type { Shop } from "../core/model/model.ts";
import type { OverAir, Schedule } from "../core/schedule/types.ts";

/** That more is given off than the room's air carries away, and why the plan does it all the same. */
export function overAirText({ laterHours }: OverAir): string {
  const over = "  At times this gives off more vapour than the room's air carries away";
  if (laterHours === undefined) return `${over}: no plan that keeps to it was found.`;
  if (laterHours === 0) return `${over}: keeping to it would make jobs late.`;
  return `${over}: keeping to it would put off the last work by ${formatDuration(laterHours)}.`;
}

/** How good the plan is, and in which hours: proven, or within which gap of what is proven; in sessions by the end of the last work. */
export function proofText(
  { exact, lowerBound, gap, lastWorkAt }: Schedule,
  shop: Pick<Shop, "hours"> | undefined,
): string {
  const hours = shop === undefined ? "" : shop.hours ? " in the shop's hours" : ", working at any hour,";
  const gapText = `(a gap of ${percentText(gap * 100)})`;
  if (lastWorkAt !== undefined)
    return exact
      ? `no plan${hours} ends it earlier`
      : `no plan${hours} ends it within ${formatDuration(lowerBound)} ${gapText}`;
  return exact
    ? `no plan${hours} is shorter`
    : `no plan${hours} is shorter than ${formatDuration(lowerBound)} ${gapText}`;
}
