/**
 * The one layout of a recipe file, as the changes that bring a text to it.
 *
 * There are no options.  Only blanks change, and units written with signs that few keyboards have; the rules stand in the
 * language reference.  What has a syntax error is left exactly as it is, and so is a declaration whose braces do not
 * match.  The changes are as small as can be, so that a cursor stays where it is and a range can be formatted by itself.
 */
import { firstIndex } from "./binary-search.ts";
import { applyChanges, composeChanges, movedBy, type TextChange } from "./compose-changes.ts";
import { arrangeLines, type Part } from "./format-columns.ts";
import { type FormatLine, formatLines } from "./format-lines.ts";
import { parseFile } from "./parse.ts";
import { tokensOfBody } from "./tokens-of.ts";
import type { DeclarationTree, FileTree, Span } from "./tree.ts";
import { newlineOf } from "./walk.ts";

export { applyChanges, type TextChange } from "./compose-changes.ts";

export interface Formatting {
  /** In the order of the text; no two of them touch the same character. */
  readonly changes: readonly TextChange[];
  /** The lines that are left as they are because of a syntax error, counted from 0. */
  readonly leftLines: readonly number[];
}

/** How a file is brought to its layout; a formatted file has no changes. */
export function formatFile(tree: FileTree): Formatting {
  const breaks = lineBreaks(tree);
  if (breaks.length === 0) return formatOnItsLines(tree);
  const text = applyChanges(tree.text, breaks);
  const { changes, leftLines } = formatOnItsLines(parseFile(text, tree));
  return {
    changes: composeChanges(tree.text, breaks, changes),
    leftLines: leftLines.map(lineBefore(text, breaks)),
  };
}

/** The line ends that lines written on one are parted by, where no line that is left alone would be cut. */
function lineBreaks({ text, pieces }: FileTree): readonly TextChange[] {
  return pieces.flatMap((piece) => {
    if (piece.kind !== "declaration" || piece.body.breaks.length === 0) return [];
    // What stands in which block is a guess then.
    if (!piece.body.bracesMatch) return [];
    const { offset, body } = piece;
    const own = text.slice(offset, offset + piece.length);
    /** A line, by where the one above it ends. */
    const lineOf = (at: number): number => own.lastIndexOf("\n", at - 1);
    const left = new Set(body.problems.flatMap(({ span }) => [lineOf(span.start), lineOf(span.end)]));
    return body.breaks
      .filter(({ start }) => !left.has(lineOf(start)))
      .map(({ start, end, text: put = "\n  " }) => ({
        span: { start: start + offset, end: end + offset },
        text: put.replace("\n", newlineOf(text)),
      }));
  });
}

/** The number that a line had before lines were parted. */
function lineBefore(text: string, breaks: readonly TextChange[]): (line: number) => number {
  const parted: number[] = [];
  let [at, line, grown] = [0, 0, 0];
  for (const { span, text: put } of breaks) {
    const start = span.start + grown;
    line += text.slice(at, start).split("\n").length - 1;
    at = start;
    if (put.includes("\n")) parted.push(line);
    grown += put.length - (span.end - span.start);
  }
  return (number) => number - firstIndex(parted, (before) => before >= number);
}

function formatOnItsLines(tree: FileTree): Formatting {
  const { lines, isKept, changes, leftLines } = formatAround(tree, new Set());
  const all = joined([...changes, ...lastLineEnd(lines, isKept)]);
  // What is taken out beside the same put in comes to nothing.
  return {
    changes: all.filter(({ span, text }) => tree.text.slice(span.start, span.end) !== text),
    leftLines,
  };
}

/** A syntax error may reach into the declaration behind it, which then is laid out with what is around it. */
function formatAround(tree: FileTree, reached: ReadonlySet<DeclarationTree>): FormattedLines {
  const found = format(tree, (piece) => !reached.has(piece) && formattedApart(piece) !== undefined);
  const more = found.lines.flatMap(({ isBroken, apart }) => (isBroken && apart ? [apart] : []));
  return more.length > 0 ? formatAround(tree, new Set([...reached, ...more])) : found;
}

interface FormattedLines extends Formatting {
  readonly lines: readonly FormatLine[];
  readonly isKept: readonly boolean[];
}

/** Without what only the end of a file needs, and without joining changes that touch. */
function format(tree: FileTree, isApart: (piece: DeclarationTree) => boolean): FormattedLines {
  const lines = formatLines(tree, isApart);
  const parts = arrangeLines(lines);
  const isKept = keptLines(lines);
  const changes: TextChange[] = [];
  const leftLines: number[] = [];
  let number = 0;
  for (const [idx, line] of lines.entries()) {
    const apart = line.apart && formattedApart(line.apart);
    if (apart) {
      for (const change of apart.changes) changes.push(movedBy(change, line.start));
      for (const left of apart.leftLines) leftLines.push(number + left);
      number += apart.lines;
      continue;
    }
    changes.push(...(isKept[idx] ? lineChanges(tree.text, line, parts[idx]!) : [removal(line)]));
    if (line.isBroken && line.role !== "blank") leftLines.push(number);
    number += 1;
  }
  return { lines, isKept, changes, leftLines };
}

// ---------------------------------------------------------------------------------------------------------------
// Declarations by themselves

/** The formatting of a declaration at offset 0, on so many lines. */
interface Apart extends Formatting {
  readonly lines: number;
}

/**
 * Most declarations are laid out the same whatever stands around them, so that is worked out once for as long as their
 * text stays. It is not so for those with a syntax error or without a line end, and for those with a comment behind a line that stands
 * in no block, which shares its column with lines of other declarations: undefined.
 */
function formattedApart({ body, length }: DeclarationTree): Apart | undefined {
  const known = APART.get(body);
  if (known !== undefined) return known.apart;
  const apart = formatApart(body, length);
  APART.set(body, { apart });
  return apart;
}

const APART = new WeakMap<DeclarationTree["body"], { readonly apart: Apart | undefined }>();

function formatApart(body: DeclarationTree["body"], length: number): Apart | undefined {
  const tokens = tokensOfBody(body);
  const [first, last] = [tokens[0], tokens.at(-1)];
  if (last?.kind !== "newline" || first?.text === "\ufeff" || body.problems.length > 0) return undefined;
  const { text } = body;
  const piece: DeclarationTree = { kind: "declaration", key: "", offset: 0, length, body };
  const { lines, changes, leftLines } = format({ text, pieces: [piece] }, () => false);
  const isAtEdge = lines[0]?.role === "blank" || lines.at(-1)?.role === "blank";
  const isShared = lines.some(({ block, code, comment }) => block === 0 && code.length > 0 && comment);
  return isAtEdge || isShared ? undefined : { changes, leftLines, lines: lines.length };
}

// ---------------------------------------------------------------------------------------------------------------
// Within a line

/** What changes before, in and behind the parts of a line. */
function lineChanges(text: string, line: FormatLine, parts: readonly Part[]): readonly TextChange[] {
  if (line.isLeft) {
    return [];
  }
  let end = line.start;
  const changes: TextChange[] = [];
  for (const { gap, token, text: put } of parts) {
    changes.push(...smallest(text, { start: end, end: token.start }, gap));
    end = token.end;
    changes.push(...smallest(text, { start: token.start, end }, put));
  }
  return [...changes, ...smallest(text, { start: end, end: line.end }, "")];
}

/** The change without what stays the same at its ends. */
function smallest(text: string, { start, end }: Span, put: string): readonly TextChange[] {
  const before = text.slice(start, end);
  if (before === put) {
    return [];
  }
  const most = Math.min(before.length, put.length);
  let head = 0;
  while (head < most && before[head] === put[head]) {
    head += 1;
  }
  let tail = 0;
  while (tail < most - head && before.at(-1 - tail) === put.at(-1 - tail)) {
    tail += 1;
  }
  return [{ span: { start: start + head, end: end - tail }, text: put.slice(head, put.length - tail) }];
}

/** Changes that touch made one, since not every editor takes them singly. */
function joined(changes: readonly TextChange[]): readonly TextChange[] {
  const result: TextChange[] = [];
  for (const change of changes) {
    const before = result.at(-1);
    if (before?.span.end === change.span.start) {
      const span = { start: before.span.start, end: change.span.end };
      result[result.length - 1] = { span, text: before.text + change.text };
    } else {
      result.push(change);
    }
  }
  return result;
}

// ---------------------------------------------------------------------------------------------------------------
// Blank lines and the end of the file

/** Of blank lines in a row one is kept, and none at the ends of the file and of a block. */
function keptLines(lines: readonly FormatLine[]): readonly boolean[] {
  const nextContent = new Array<FormatLine | undefined>(lines.length);
  let next: FormatLine | undefined;
  for (let idx = lines.length - 1; idx >= 0; idx--) {
    nextContent[idx] = next;
    next = lines[idx]!.role === "blank" ? next : lines[idx];
  }
  let before: FormatLine | undefined;
  return lines.map((line, idx) => {
    const after = nextContent[idx];
    const isBlank = line.role === "blank";
    const isEdge = before === undefined || before.opensBlock || after === undefined;
    const isExtra = isEdge || before?.role === "blank" || after?.role === "closing";
    const isKept = !isBlank || (line.isLeft && after !== undefined) || !isExtra;
    before = isKept ? line : before;
    return isKept;
  });
}

function removal(line: FormatLine): TextChange {
  return { span: { start: line.start, end: line.end + line.lineEnd.length }, text: "" };
}

/** The last line that is kept ends like the lines above it. */
function lastLineEnd(lines: readonly FormatLine[], isKept: readonly boolean[]): readonly TextChange[] {
  const last = lines.findLast((_, idx) => isKept[idx]);
  if (last === undefined || last.lineEnd !== "") {
    return [];
  }
  const lineEnd = lines.find((line) => line.lineEnd !== "")?.lineEnd ?? "\n";
  return [{ span: { start: last.end, end: last.end }, text: lineEnd }];
}
