/**
 * Figures that are printed above their sum: rounded so that what a reader adds up is what is printed as the sum.
 *
 * The method of largest remainders (Hamilton's method of apportionment): every part is rounded down to the last printed
 * decimal, and the units that are then missing from the sum go one each to the parts that lost most.
 */
import { roundTo } from "./format-amount.ts";

/**
 * The parts with so many decimals; together they are `total`, or the sum rounded to as many decimals. No part is off by a
 * unit of the last decimal or more where `total` is that sum. Parts that are not finite are returned as they are.
 */
export function roundedParts(
  parts: readonly number[],
  decimals: number,
  total: number = parts.reduce((sum, part) => sum + part, 0),
): readonly number[] {
  const scale = 10 ** decimals;
  const scaled = parts.map((part) => Number((part * scale).toPrecision(14)));
  const target = Math.round(roundTo(total, decimals) * scale);
  if (!scaled.every(Number.isFinite) || !Number.isSafeInteger(target)) return parts;
  const units = scaled.map(Math.floor);
  const missing = target - units.reduce((sum, unit) => sum + unit, 0);
  const order = scaled
    .map((part, index) => ({ index, lost: part - units[index]! }))
    .sort((a, b) => b.lost - a.lost || a.index - b.index);
  for (let given = 0; given < Math.abs(missing) && order.length > 0; given += 1) {
    // The last in the order lost least, so it is the first to give one back.
    const at = missing > 0 ? given % order.length : order.length - 1 - (given % order.length);
    units[order[at]!.index]! += Math.sign(missing);
  }
  return units.map((unit) => unit / scale + 0);
}
