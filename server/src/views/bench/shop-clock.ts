/** When a shop is open and shut, in hours after the start of a job. */
import { hoursBetween } from "../../core/measure/iso-dates.ts";
import type { Shop } from "../../core/model/model.ts";
import {
  dayMs,
  dayNumber,
  hourMs,
  makeShopTime,
  pausesBetween,
  workingTimeBetween,
} from "../../core/schedule/calendar.ts";

export interface ShopClock {
  /** How long it is open. */
  openHours(from: number, to: number): number;
  /** From one closing to the next opening each. */
  shutBetween(from: number, to: number): readonly { readonly from: number; readonly to: number }[];
}

/** `first`: the earliest hour that is asked for. Undefined where the shop states no hours, or the job has no date. */
export function shopClock(
  shop: Shop | undefined,
  startAt: string | undefined,
  first: number,
): ShopClock | undefined {
  const day = startAt && dayNumber(startAt.slice(0, 10));
  if (!shop?.hours || typeof day !== "number") return undefined;
  const daysBefore = Math.max(0, Math.ceil(-first / 24)) + 1;
  const shopTime = makeShopTime(shop, day - daysBefore);
  const zero = hoursBetween(`${startAt!.slice(0, 10)}T00:00`, startAt!) * hourMs + daysBefore * dayMs;
  const at = (hours: number): number => zero + hours * hourMs;
  return {
    openHours: (from, to) => workingTimeBetween(shopTime, at(from), at(to)) / hourMs,
    shutBetween: (from, to) =>
      pausesBetween(shopTime, at(from), at(to)).map(({ start, end }) => ({
        from: (start - zero) / hourMs,
        to: (end - zero) / hourMs,
      })),
  };
}
