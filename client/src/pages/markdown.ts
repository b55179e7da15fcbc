/**
 * The Markdown of our own pages (rules, the language, what goes with them) as blocks. They are written by this project, so
 * this reads what they have and nothing else: headings, paragraphs, flat lists, tables, quotes, fenced code and what is
 * folded away in `details`.
 */
export type Block =
  | { readonly kind: "heading"; readonly level: number; readonly text: string }
  | { readonly kind: "paragraph"; readonly text: string }
  | { readonly kind: "list"; readonly isOrdered: boolean; readonly items: readonly string[] }
  | {
      readonly kind: "table";
      readonly head: readonly string[];
      readonly rows: readonly (readonly string[])[];
    }
  | { readonly kind: "quote"; readonly paragraphs: readonly string[] }
  | { readonly kind: "code"; readonly language: string; readonly lines: readonly string[] }
  | { readonly kind: "details"; readonly summary: string; readonly blocks: readonly Block[] };

const HEADING = /^(#{1,6}) (.+)$/u;
const FENCE = /^```([a-z]*)$/u;
const ITEM = /^(?:-|(\d+)\.) (.+)$/u;
const SUMMARY = /^<summary>(.*)<\/summary>$/u;

/** The blocks of a page; comments are left out. */
export const blocksOf = (markdown: string): readonly Block[] => read(markdown.split("\n"));

function read(lines: readonly string[]): readonly Block[] {
  const blocks: Block[] = [];
  let at = 0;
  /** The lines from here on that are so. */
  const take = (isSo: (line: string) => boolean): readonly string[] => {
    const from = at;
    while (at < lines.length && isSo(lines[at]!)) at += 1;
    return lines.slice(from, at);
  };
  while (at < lines.length) {
    const line = lines[at]!;
    const heading = HEADING.exec(line);
    const fence = FENCE.exec(line);
    if (line === "" || line.startsWith("<!--")) at += 1;
    else if (heading) {
      blocks.push({ kind: "heading", level: heading[1]!.length, text: heading[2]! });
      at += 1;
    } else if (fence) {
      at += 1;
      const code = take((each) => each !== "```");
      blocks.push({ kind: "code", language: fence[1]!, lines: code });
      at += 1;
    } else if (line === "<details>") {
      at += 1;
      const [first = "", ...inside] = take((each) => each !== "</details>");
      blocks.push({ kind: "details", summary: SUMMARY.exec(first)?.[1] ?? "", blocks: read(inside) });
      at += 1;
    } else if (line.startsWith("|")) {
      const [head = "", , ...rows] = take((each) => each.startsWith("|"));
      blocks.push({ kind: "table", head: cellsOf(head), rows: rows.map(cellsOf) });
    } else if (line.startsWith(">")) {
      const quoted = take((each) => each.startsWith(">")).map((each) => each.slice(2));
      blocks.push({ kind: "quote", paragraphs: quoted.filter((each) => each !== "") });
    } else if (ITEM.test(line)) {
      const items = take((each) => ITEM.test(each)).map((each) => ITEM.exec(each)![2]!);
      blocks.push({ kind: "list", isOrdered: ITEM.exec(line)![1] !== undefined, items });
    } else {
      const text = take((each) => each !== "" && !opensAnother(each));
      blocks.push({ kind: "paragraph", text: text.join(" ") });
    }
  }
  return blocks;
}

const opensAnother = (line: string): boolean =>
  HEADING.test(line) || FENCE.test(line) || ITEM.test(line) || /^[>|]|^<(?:details>|!--)/u.test(line);

/** A bar with a backslash before it is a sign of the cell. */
function cellsOf(row: string): readonly string[] {
  const cells: string[] = [];
  let cell = "";
  for (let i = 1; i < row.length; i += 1) {
    if (row.startsWith("\\|", i)) {
      cell += "|";
      i += 1;
    } else if (row[i] === "|") {
      cells.push(cell.trim());
      cell = "";
    } else cell += row[i];
  }
  return cells;
}
