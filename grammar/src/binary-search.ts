/** Looking for a place in what is in order, by halving: the one binary search of the program. */

/** Index of the first item that fulfils what all after it fulfil as well; their number if none does. */
export function firstIndex<T>(sorted: ArrayLike<T>, fulfils: (item: T) => boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (fulfils(sorted[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Index of the last item that is at `offset` or before it, of items in the order of where they are; the first, if none is. */
export function indexAt<T>(sorted: ArrayLike<T>, offset: number, startOf: (item: T) => number): number {
  return Math.max(0, firstIndex(sorted, (item) => startOf(item) > offset) - 1);
}
