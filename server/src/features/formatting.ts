/**
 * Formatting of a file or of some of its lines. The layout itself belongs to the grammar (`format.ts`).
 *
 * A range is formatted as it would be with the whole file: its lines take the columns of their block, and no other line
 * is touched.
 */
import { formatFile, type TextChange } from "../../../grammar/src/format.ts";
import { createLineIndex, type LineIndex, positionAt } from "../../../grammar/src/line-index.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import type { Program } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";

/** What brings a file to its layout, in order; with spans only within the lines that they touch. */
export function formattingOf(program: Program, file: FileId, spans?: readonly Span[]): readonly TextChange[] {
  const tree = program.files.get(file)?.tree;
  if (tree === undefined) return [];
  const { changes } = formatFile(tree);
  if (spans === undefined) return changes;
  const index = createLineIndex(tree.text);
  const parts = spans.map((span) => wholeLines(index, span));
  return changes.filter(({ span }) => parts.some((part) => part.start <= span.start && span.end <= part.end));
}

/** From the start of the first line to the end of the last, line end included. */
function wholeLines(index: LineIndex, span: Span): Span {
  const first = positionAt(index, span.start).line;
  const end = positionAt(index, span.end);
  // A selection of whole lines ends where the next line starts, which is not meant.
  const last = end.column === 0 && end.line > first ? end.line - 1 : end.line;
  return { start: index.starts[first]!, end: index.starts[last + 1] ?? index.length };
}
