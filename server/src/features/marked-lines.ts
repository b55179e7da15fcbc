/**
 * The lines that a span touches, numbered, each with a marker under the part that is meant: for pages and for tests.
 */
import type { Span } from "../../../grammar/src/tree.ts";

/** So many lines of a long span are shown; the rest is dots. */
const SHOWN = 4;

/** `4 |   step dewax` and `  |   ^^^^^^^^^^` below it, for every line of the span; no colours, no cutting. */
export function markedLines(text: string, span: Span): readonly string[] {
  const lines = text.split("\n");
  const width = String(lineOf(text, span.end)).length;
  let start = 0;
  const touched = lines.flatMap((line, index) => {
    const at = start;
    start += line.length + 1;
    const from = Math.max(span.start, at + /^\s*/u.exec(line)![0].length);
    const to = Math.min(Math.max(span.end, span.start + 1), at + line.length);
    const isEmpty = span.start === span.end && span.start >= at && span.start <= at + line.length;
    if (isEmpty) return [{ index, line, column: span.start - at, wide: 1 }];
    return from < to ? [{ index, line, column: from - at, wide: to - from }] : [];
  });
  const blocks = touched.map(({ index, line, column, wide }) => [
    `${String(index + 1).padStart(width)} | ${line.trimEnd()}`,
    `${" ".repeat(width)} | ${" ".repeat(column)}${"^".repeat(wide)}`,
  ]);
  return blocks.length <= SHOWN
    ? blocks.flat()
    : [...blocks.slice(0, SHOWN - 1).flat(), `${" ".repeat(width)} | …`, ...blocks.at(-1)!];
}

const lineOf = (text: string, offset: number): number => text.slice(0, offset).split("\n").length;
