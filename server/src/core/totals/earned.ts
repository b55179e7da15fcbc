/** What the work of a job is worth to who does it: what stays over, and what an hour of it brings. */
import type { JobTotals, MaterialTotals } from "./types.ts";

/**
 * What an hour of one's own work brings, in the shop's money: what new pieces would cost less all costs but labour, by the
 * hours of work. Negative where new ones are cheaper than what is spent. `null` where the price of a new one, a cost or the
 * hours are not known, and where nothing is done by hand.
 */
export function earnedPerHour({
  saving,
  labour_cost,
  hands_on_h,
}: Pick<JobTotals, "saving" | "labour_cost" | "hands_on_h">): number | null {
  if (saving === null || hands_on_h === null || hands_on_h <= 0) return null;
  return (saving + (labour_cost ?? 0)) / hands_on_h;
}

/** What is on hand and bought of a material, and what is used. */
interface Stocked {
  readonly onHand: number;
  readonly totals: Pick<MaterialTotals, "litres" | "cost" | "containers">;
}

/** Litres that are there for later jobs; what is not known to be used or bought counts as none. */
export function litresForLater({ onHand, totals: { litres, containers } }: Stocked): number {
  const bought = containers.reduce((total, can) => total + can.litres * can.count, 0);
  return Math.max(0, onHand + bought - (litres ?? 0));
}

/** Litres that are left of what is on hand and bought; `null` where it is not known how much is used or bought. */
export const litresLeftOver = (need: Stocked): number | null =>
  need.totals.litres === null || need.totals.cost === null ? null : litresForLater(need);
