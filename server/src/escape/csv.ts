/**
 * Cells and rows of CSV (RFC 4180) that a spreadsheet takes for text.
 *
 * Spreadsheets run a cell that begins with one of `= + - @`, or with a tab or a line break before it; an apostrophe before
 * it makes it text (CWE-1236; OWASP, CSV Injection). Some read `;` as the end of a cell, whatever the file says, and a quotation
 * mark behind it as the beginning of the next, so what follows either is treated like a beginning.
 */
import { shownText } from "./shown-text.ts";

/** A row of the table, its end included. */
export const csvRow = (cells: readonly string[]): string => `${cells.map(csvCell).join(",")}\r\n`;

const FIGURE = /^-?\d+(?:\.\d+)?$/u;
/** Full-width signs are read as the plain ones in some languages of a spreadsheet. */
const FORMULA = /(^|[;"])([ \u00a0\u3000]*)(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/gu;

/** A number stays one; a text that might be run gets an apostrophe before it. */
export function csvCell(text: string): string {
  if (FIGURE.test(text)) return text;
  const inert = shownText(text).replace(FORMULA, "$1'$2");
  return /[",;]|^\s|\s$/u.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert;
}
