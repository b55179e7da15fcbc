/** Blocks of the notation in the standard layout, as far as a new recipe has any. */

/** A line, by its first word and the rest; a comment, by `#` and its text; or a block in the block. */
export type Line = readonly [word: string, rest: string] | readonly [head: string, lines: readonly Line[]];

/** A block with its braces. */
export function block(head: string, lines: readonly Line[]): string {
  return [`${head} {`, ...blockLines(lines).map((line) => `  ${line}`), "}"].join("\n");
}

/** The values of a block start in one column. */
function blockLines(lines: readonly Line[]): readonly string[] {
  const column = Math.max(0, ...lines.map(([word]) => (word === "#" ? 0 : word.split(" ")[0]!.length)));
  return lines.flatMap((line) => {
    const [word, rest] = line;
    if (typeof rest !== "string") return block(headIn(word, column), rest).split("\n");
    return [word === "#" ? `# ${rest}` : `${word.padEnd(column)} ${rest}`];
  });
}

/** `surface top`, its name in the column of the values. */
function headIn(head: string, column: number): string {
  const [word = "", ...names] = head.split(" ");
  return [word.padEnd(column), ...names].join(" ");
}
