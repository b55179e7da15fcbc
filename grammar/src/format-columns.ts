/**
 * Where the parts of each line stand: indentation, the column of the values of a block, and that of comments.
 *
 * Values share one column over the whole block, because a block is read as a table.  Comments at line ends share one over
 * a run of lines of the same block without a blank line, because a far-off line should not push them away.
 */
import type { CodeToken, FormatLine } from "./format-lines.ts";
import { gapBefore, plainTokenText } from "./format-spacing.ts";

/** A token in its line, with the blanks before it. */
export interface Part {
  readonly gap: string;
  readonly token: CodeToken;
  /** What the token becomes. */
  readonly text: string;
}

const INDENT = 2;
/** How much further in than the value of its statement a continued line starts. */
const CONTINUATION = 2;
/** Between the longest line of a run and the comments. */
const COMMENT_GAP = 2;

/** The parts of every line; those of a line that is left alone are not to be used. */
export function arrangeLines(lines: readonly FormatLine[]): readonly (readonly Part[])[] {
  const widths = keywordWidths(lines);
  const codes = lines.map((line, idx) => codeParts(line, indentOf(lines, idx, widths), widths));
  const columns = commentColumns(lines, codes);
  return lines.map((line, idx) => {
    const { comment } = line;
    const code = codes[idx]!;
    if (comment === undefined) {
      return code;
    }
    const gap = code.length === 0 ? indentOf(lines, idx, widths) : (columns[idx] ?? 0) - widthOf(code);
    const token = { ...comment, end: comment.start + comment.text.length };
    return [...code, { gap: " ".repeat(Math.max(0, gap)), token, text: comment.text.trimEnd() }];
  });
}

/** The longest first word of the statements of each block. */
function keywordWidths(lines: readonly FormatLine[]): ReadonlyMap<number, number> {
  const widths = new Map<number, number>();
  for (const line of lines) {
    if (line.role === "statement" && line.depth > 0 && !line.isLeft) {
      const width = line.code[0]!.text.length;
      widths.set(line.block, Math.max(width, widths.get(line.block) ?? 0));
    }
  }
  return widths;
}

function keywordWidth(line: FormatLine, widths: ReadonlyMap<number, number>): number {
  return Math.max(widths.get(line.block) ?? 0, line.code[0]!.text.length);
}

function indentOf(lines: readonly FormatLine[], idx: number, widths: ReadonlyMap<number, number>): number {
  const { depth, continues } = lines[idx]!;
  if (continues === undefined) {
    return depth * INDENT;
  }
  return continues.depth * INDENT + keywordWidth(continues, widths) + 1 + CONTINUATION;
}

function codeParts(line: FormatLine, indent: number, widths: ReadonlyMap<number, number>): readonly Part[] {
  return line.code.map((token, idx) => {
    const before = line.code[idx - 1];
    const gap = before === undefined ? " ".repeat(indent) : gapBefore(line.code, idx);
    const isValue = idx === 1 && gap !== "" && line.role === "statement" && line.depth > 0;
    const fill = isValue ? keywordWidth(line, widths) - before!.text.length : 0;
    return { gap: gap + " ".repeat(fill), token, text: plainTokenText(token) };
  });
}

/** The column of the comment of each line that has one behind something. */
function commentColumns(
  lines: readonly FormatLine[],
  codes: readonly (readonly Part[])[],
): readonly (number | undefined)[] {
  const columns = new Array<number | undefined>(lines.length);
  for (const run of commentRuns(lines)) {
    const column = Math.max(...run.map((idx) => widthOf(codes[idx]!))) + COMMENT_GAP;
    for (const idx of run) {
      columns[idx] = column;
    }
  }
  return columns;
}

/** The lines with a comment behind something, by runs of lines of one block. */
function commentRuns(lines: readonly FormatLine[]): readonly (readonly number[])[] {
  const runs: number[][] = [];
  let before: FormatLine | undefined;
  for (const [idx, line] of lines.entries()) {
    const goesOn = before?.block === line.block && line.role !== "blank" && before.role !== "blank";
    if (!goesOn) {
      runs.push([]);
    }
    if (line.comment !== undefined && line.code.length > 0 && !line.isLeft) {
      runs.at(-1)!.push(idx);
    }
    before = line;
  }
  return runs.filter((run) => run.length > 0);
}

function widthOf(parts: readonly Part[]): number {
  return parts.reduce((width, { gap, text }) => width + gap.length + text.length, 0);
}
