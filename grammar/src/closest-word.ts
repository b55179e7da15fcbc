/**
 * The word that was probably meant: the nearest of a closed list, if any is near enough to be worth naming.
 *
 * Distance is that of Damerau and Levenshtein in its restricted form (one insertion, deletion, substitution, or swap
 * of neighbours costs 1), blind to case except to break ties. A wild guess is worse than none, so a third of the letters
 * (rounded up) may differ and no more. What is only half typed is the beginning of what is meant: a candidate that begins
 * with the word wins, and where it is the only one, any number of letters may be missing.
 */

/** Longer words are no slips of a finger; comparing them letter by letter would take the square of their length. */
const LONGEST_WORD = 64;

/** A word of fewer letters is the beginning of too much. */
const SHORTEST_BEGINNING = 3;

/**
 * The nearest candidate that begins with the word, else the nearest of all, the first of equals; undefined when none is
 * near, or the word is longer than 64 letters.
 */
export function closestWord(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  const limit = Math.max(1, Math.ceil(word.length / 3));
  const plain = word.toLowerCase();
  const begun: string[] = [];
  let best: { readonly text: string; readonly distance: number } | undefined;
  for (const text of candidates) {
    const isBegun = text.length > word.length && text.toLowerCase().startsWith(plain);
    if (isBegun && word.length >= SHORTEST_BEGINNING) begun.push(text);
    // Each letter more is one change at least.
    if (Math.abs(text.length - word.length) > limit) continue;
    const blind = editDistance(plain, text.toLowerCase(), limit);
    const distance = blind + (blind > 0 && word[0] !== text[0] ? 0.25 : 0);
    // One letter changed in a word of one or two letters leaves nothing of it: `x` is not near `m`.
    const tooShort = blind > 0 && Math.max(word.length, text.length) < 3;
    if (blind <= limit && !tooShort && (best === undefined || distance < best.distance))
      best = { text, distance };
  }
  // Nothing is nearer than the word itself in other letters: `Oval`.
  if (best?.distance === 0) return best.text;
  return finished(word, begun, limit) ?? best?.text;
}

/** The word that was half typed: the only one that begins so, or the shortest where little is missing. */
function finished(word: string, begun: readonly string[], limit: number): string | undefined {
  const [shortest] = begun.toSorted((a, b) => a.length - b.length);
  if (shortest === undefined || begun.length === 1) return shortest;
  return shortest.length - word.length <= limit ? shortest : undefined;
}

/** Restricted Damerau–Levenshtein distance; infinite where it is more than a limit. */
export function editDistance(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  let beforeLast: number[] = [];
  let leastOfLast = 0;
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    let least = row;
    for (let column = 1; column <= b.length; column++) {
      const substitution = last[column - 1]! + (a[row - 1] === b[column - 1] ? 0 : 1);
      let distance = Math.min(substitution, last[column]! + 1, current[column - 1]! + 1);
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) distance = Math.min(distance, beforeLast[column - 2]! + 1);
      current.push(distance);
      if (distance < least) least = distance;
    }
    // From here on it only grows: every way leads over this row, or by a swap over it from the one before.
    if (least > limit && leastOfLast > limit) return Number.POSITIVE_INFINITY;
    leastOfLast = least;
    beforeLast = last;
    last = current;
  }
  return last[b.length]! > limit ? Number.POSITIVE_INFINITY : last[b.length]!;
}
