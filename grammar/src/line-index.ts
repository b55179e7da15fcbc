/**
 * Offsets to lines and columns and back, for the edges where positions are spoken: reporters and editors.
 * Lines and columns count from 0; columns are UTF-16 code units, like offsets. A line ends at CRLF, LF or CR.
 */
import { indexAt } from "./binary-search.ts";

export interface LineIndex {
  readonly length: number;
  /** Where each line starts. */
  readonly starts: readonly number[];
  /** Where the text of each line ends, before its line end. */
  readonly ends: readonly number[];
}

export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Finds the lines of a text. */
export function createLineIndex(text: string): LineIndex {
  const starts = [0];
  const ends: number[] = [];
  for (const match of text.matchAll(/\r\n|\n|\r/gu)) {
    ends.push(match.index);
    starts.push(match.index + match[0].length);
  }
  ends.push(text.length);
  return { length: text.length, starts, ends };
}

/** The position of an offset; an offset outside the text is taken to its nearest end. */
export function positionAt(index: LineIndex, offset: number): Position {
  const inside = Math.max(0, Math.min(offset, index.length));
  const line = indexAt(index.starts, inside, (start) => start);
  return { line, column: inside - index.starts[line]! };
}
