/** How good a plan is, in words. */
import { t } from "../../../grammar/src/translate.ts";
import { formatDuration } from "../core/measure/format-amount.ts";
import type { Shop } from "../core/model/model.ts";
import type { OverAir, Schedule } from "../core/schedule/types.ts";

/** That more is given off than the room's air carries away, and why the plan does it all the same. */
export function overAirText({ laterHours }: OverAir): string {
  const text =
    laterHours === undefined
      ? t`At times this gives off more vapour than the room's air carries away: no plan that keeps to it was found.`
      : laterHours === 0
        ? t`At times this gives off more vapour than the room's air carries away: keeping to it would make jobs late.`
        : t`At times this gives off more vapour than the room's air carries away: keeping to it would put off the last work by ${formatDuration(laterHours)}.`;
  return `  ${text}`;
}

/** How good the plan is, and in which hours: proven, or by how much a better one could be better; in sessions by the end of the last work. */
export function proofText(
  { exact, lowerBound, gap, lastWorkAt }: Schedule,
  shop: Pick<Shop, "hours"> | undefined,
): string {
  const most = formatDuration(lowerBound * gap);
  if (lastWorkAt === undefined) {
    if (shop === undefined)
      return exact ? t`no plan is shorter` : t`another plan could be at most ${most} shorter`;
    if (shop.hours)
      return exact
        ? t`no plan in the shop's hours is shorter`
        : t`another plan in the shop's hours could be at most ${most} shorter`;
    return exact
      ? t`no plan, working at any hour, is shorter`
      : t`another plan, working at any hour, could be at most ${most} shorter`;
  }
  if (shop === undefined)
    return exact ? t`no plan ends it earlier` : t`another plan could end it at most ${most} earlier`;
  if (shop.hours)
    return exact
      ? t`no plan in the shop's hours ends it earlier`
      : t`another plan in the shop's hours could end it at most ${most} earlier`;
  return exact
    ? t`no plan, working at any hour, ends it earlier`
    : t`another plan, working at any hour, could end it at most ${most} earlier`;
}
