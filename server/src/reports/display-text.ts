/**
 * Text as a terminal shows it: how many columns it takes, and broken into lines. What may not reach a terminal at all is
 * seen to in `escape/shown-text.ts`.
 */
import { eastAsianWidth } from "get-east-asian-width";
import { firstIndex } from "../../../grammar/src/binary-search.ts";
import { shownText } from "../escape/shown-text.ts";
import { linesOf } from "../views/text-lines.ts";

/** Marks that sit on the letter before them, and characters without any shape. */
const NARROWEST = /[\p{Mn}\p{Me}\p{Cf}]/u;

const TAB_STOP = 4;

/** Columns that a text takes on a terminal. */
export function displayWidth(text: string): number {
  let width = 0;
  for (const character of text) width += characterWidth(character);
  return width;
}

function characterWidth(character: string): number {
  // Latin letters, figures and signs are nearly all there is; below the first combining mark only the soft hyphen is none.
  if (character < "\u0300" && character !== "\u00ad") return 1;
  // East Asian wide and fullwidth characters, and emoji, take two columns (Unicode Standard Annex #11).
  return NARROWEST.test(character) ? 0 : eastAsianWidth(character.codePointAt(0)!);
}

/** One line, safe to show: tabs as spaces, other control characters as the signs for them. */
export function shownLine(line: string): string {
  const shown: string[] = [];
  let column = 0;
  for (const character of line) {
    const next = character === "\t" ? " ".repeat(TAB_STOP - (column % TAB_STOP)) : shownText(character);
    shown.push(next);
    column += displayWidth(next);
  }
  return shown.join("");
}

/** A line as it is shown, with what is needed to cut any part out of it without going through all of it again. */
export interface MeasuredLine {
  readonly text: string;
  /** By offset in the line as it was written, its end included: where that stands in `text`, and in which column. */
  readonly offsets: Uint32Array;
  readonly columns: Uint32Array;
}

/** Measures a line once. */
export function measureLine(line: string): MeasuredLine {
  const text = shownLine(line);
  const offsets = new Uint32Array(line.length + 1);
  const columns = new Uint32Array(line.length + 1);
  let [offset, shown, column] = [0, 0, 0];
  for (const character of line) {
    const isTab = character === "\t";
    const wide = isTab ? TAB_STOP - (column % TAB_STOP) : displayWidth(shownText(character));
    for (let unit = 0; unit < character.length; unit += 1) {
      offsets[offset + unit] = shown;
      columns[offset + unit] = column;
    }
    offset += character.length;
    shown += isTab ? wide : shownText(character).length;
    column += wide;
  }
  offsets[offset] = shown;
  columns[offset] = column;
  return { text, offsets, columns };
}

/** The first offset of a measured line whose column is at least this one; the line's end where there is none. */
export function offsetOfColumn({ columns }: MeasuredLine, column: number): number {
  return Math.min(
    firstIndex(columns, (each) => each >= column),
    columns.length - 1,
  );
}

/**
 * Breaks running text between words into lines of so many columns at most; a longer word stands alone. A number keeps
 * its unit: `85 % RH` is never torn apart, and what is quoted in backticks stays on one line where it fits on one, so that
 * it can be typed as it stands there.
 */
export const wrap = (text: string, columns: number): readonly string[] =>
  linesOf(quotesWhole(wordsOf(text), columns), columns, displayWidth);

/** Words of one quotation as one word, unless that is longer than a line. */
function quotesWhole(words: readonly string[], columns: number): readonly string[] {
  const whole: string[] = [];
  let open: string[] = [];
  for (const word of words) {
    const isEdge = (word.split("`").length - 1) % 2 === 1;
    if (open.length === 0 && !isEdge) whole.push(word);
    else open.push(word);
    if (!isEdge || open.length < 2) continue;
    const quoted = open.join(" ");
    whole.push(...(displayWidth(quoted) <= columns ? [quoted] : open));
    open = [];
  }
  return [...whole, ...open];
}

/** A number and what is short enough behind it to be its unit: `72 h`, `10 m2/L`, `50 % RH`, `3 days`. */
const FIGURE = /(?<=\d) (?=[%×\p{L}][\p{L}\d/]{0,4}(?![\p{L}\d]))|(?<=%) (?=RH)/gu;

function wordsOf(text: string): readonly string[] {
  return shownText(text)
    .replace(/\s+/gu, " ")
    .replace(FIGURE, "\u00a0")
    .split(" ")
    .filter((word) => word !== "")
    .map((word) => word.replaceAll("\u00a0", " "));
}

/** Fills a text up with spaces on the right, or on the left for figures. */
export const padEnd = (text: string, columns: number): string =>
  text + " ".repeat(Math.max(0, columns - displayWidth(text)));
export const padStart = (text: string, columns: number): string =>
  " ".repeat(Math.max(0, columns - displayWidth(text))) + text;
