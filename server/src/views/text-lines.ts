/** Running text in lines, for whoever shows it where none is broken. */

/** Words, with a blank between two, in lines of so many columns at most; a longer word has a line of its own. */
export function linesOf(
  words: readonly string[],
  columns: number,
  widthOf: (word: string) => number = ({ length }) => length,
): readonly string[] {
  const lines: string[][] = [];
  let width = 0;
  for (const word of words) {
    const longer = widthOf(word);
    const line = lines.at(-1);
    if (line === undefined || width + 1 + longer > columns) {
      lines.push([word]);
      width = longer;
    } else {
      line.push(word);
      width += 1 + longer;
    }
  }
  return lines.map((line) => line.join(" "));
}
