/** From lines and columns back to offsets, to hold the way there against. */
import type { LineIndex, Position } from "../../grammar/src/line-index.ts";

/** The offset of a position; a column beyond the line is taken to the end of its text. */
export function offsetAt(index: LineIndex, position: Position): number {
  if (position.line < 0) {
    return 0;
  }
  const start = index.starts[position.line];
  if (start === undefined) {
    return index.length;
  }
  return Math.max(start, Math.min(start + position.column, index.ends[position.line]!));
}
