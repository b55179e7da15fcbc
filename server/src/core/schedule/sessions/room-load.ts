/**
 * How full the air of the room is: whether what tasks give off, with all that has been put down, stays within what the
 * fresh air may carry away in every stretch of time.
 *
 * As the verdict on the air calculates (`fumes/worst-air.ts`): vapour leaves evenly from the beginning of a task until some
 * time after it; the stretches that hold most begin with a release or end with one; none begins while the shop is closed.
 */
import { firstIndex } from "../../../../../grammar/src/binary-search.ts";
import { nextOpening, type ShopTime } from "../calendar.ts";

/** What one task gives off: evenly between two moments. */
export interface Release {
  readonly from: number;
  readonly to: number;
  /** By stretch: the part of what the room may carry away in it. */
  readonly shares: readonly number[];
}

/** A rounding's width over what is allowed. */
const most = 1 + 1e-9;

/** Whether `added` fit into the air with those of `room`. `stretches` are milliseconds. */
export function roomHolds(
  shop: ShopTime,
  stretches: readonly number[],
  room: readonly Release[],
  added: readonly Release[],
): boolean {
  if (added.length === 0) return true;
  const first = Math.min(...added.map(({ from }) => from));
  const last = Math.max(...added.map(({ to }) => to));
  const longest = Math.max(...stretches);
  const near = room.filter(({ from, to }) => to > first - longest && from < last + longest);
  near.push(...added);
  return stretches.every((length, kind) => {
    const sum = near.reduce((all, { shares }) => all + shares[kind]!, 0);
    if (sum <= most) return true;
    const left = leftBy(near, kind);
    const isWithin = (start: number): boolean =>
      start >= last || start + length <= first || left(start + length) - left(start) <= most;
    return near.every(({ from, to }) => isWithin(from) && isWithin(nextOpening(shop, to - length)));
  });
}

/** How much has left by a moment. */
function leftBy(releases: readonly Release[], kind: number): (time: number) => number {
  const changes = releases
    .flatMap(({ from, to, shares }) => {
      const rate = shares[kind]! / (to - from);
      return [
        { at: from, rate },
        { at: to, rate: -rate },
      ];
    })
    .sort((a, b) => a.at - b.at);
  const bends: { readonly at: number; readonly left: number; readonly rate: number }[] = [];
  let [at, left, rate] = [0, 0, 0];
  for (const change of changes) {
    left += rate * (change.at - at);
    at = change.at;
    rate += change.rate;
    bends.push({ at, left, rate });
  }
  return (time) => {
    const bend = bends[firstIndex(bends, (each) => each.at > time) - 1];
    return bend === undefined ? 0 : bend.left + bend.rate * (time - bend.at);
  };
}
