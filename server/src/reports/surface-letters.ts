/** Letters that tell the steps of one surface from those of another where they stand in one list: `A3`, `B1`. */

/** By title; no letters where there is one surface alone. */
export function surfaceLetters(titles: readonly string[]): ReadonlyMap<string, string> {
  const all = [...new Set(titles)];
  return new Map(all.length < 2 ? [] : all.map((title, i) => [title, letterAt(i)]));
}

/** `A` to `Z`, then `AA`, `AB`: as columns of a sheet are counted. */
function letterAt(index: number): string {
  const before = Math.floor(index / LETTERS.length);
  return `${before === 0 ? "" : letterAt(before - 1)}${LETTERS[index % LETTERS.length]}`;
}

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
