/**
 * Cuts a text into sections that can be read one by one, by its spelling alone and without lexing it.
 *
 * A line that is the head of a declaration beyond doubt, such as `material name {`, starts a declaration whatever stands
 * above it: every recovery in `layout.ts` and `pieces.ts` gives way to it.  Hence the pieces of a file are the pieces of
 * its sections, one after the other.  Only heads that need no second look are found here; a section may hold more.
 */

const KEYWORD_AND_NAME = String.raw`(?:material|piece|shop|recipe|job)[ \t]+\p{L}[\p{L}\p{M}\p{N}_]*`;
const TITLE = String.raw`"(?:[^"\\\r\n]|\\[^\r\n])*"`;
const CLEAR_HEAD = new RegExp(
  String.raw`^(?:${KEYWORD_AND_NAME}(?:[ \t]+${TITLE})?[ \t]*\{|recipe[ \t]+\p{L}[\p{L}\p{M}\p{N}_]*[ \t]*\(|use[ \t]+${TITLE})`,
  "gmu",
);
const COMMENT_LINE = /[ \t\f\v\u00a0\u2007\u2009\u202f\ufeff]*(##?)/uy;

/** The sections of a text in order; together they are the text. */
export function sectionsOf(text: string): string[] {
  const starts = [0];
  for (const { index } of text.matchAll(CLEAR_HEAD)) {
    const start = isLineStart(text, index) ? docsStart(text, index) : 0;
    if (start > starts.at(-1)!) {
      starts.push(start);
    }
  }
  return starts.map((start, idx) => text.slice(start, starts[idx + 1] ?? text.length));
}

/** Patterns count more characters as line ends than the notation does. */
function isLineStart(text: string, offset: number): boolean {
  const before = text[offset - 1];
  return before === "\n" || before === "\r";
}

/** Where the first of the `##` lines directly above a line starts; plain comments may stand among them. */
function docsStart(text: string, line: number): number {
  let first = line;
  let start = line;
  while (start > 0) {
    start = startOfLineBefore(text, start);
    COMMENT_LINE.lastIndex = start;
    const mark = COMMENT_LINE.exec(text)?.[1];
    if (mark === undefined) {
      break;
    }
    first = mark === "##" ? start : first;
  }
  return first;
}

function startOfLineBefore(text: string, line: number): number {
  let start = line - (text.startsWith("\r\n", line - 2) ? 2 : 1);
  while (start > 0 && !isLineStart(text, start)) {
    start -= 1;
  }
  return start;
}
