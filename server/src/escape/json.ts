/**
 * JSON that may be looked at on a terminal or in an editor: the same data, with every character that drives either
 * written as an escape (RFC 8259, section 7, allows it for any).
 */

/** What `JSON.stringify` leaves as it is though it is no plain text: DEL and C1 controls, separators, directions. */
const UNSAFE = /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g;

/** Two spaces a level, a line feed at the end. Lone surrogates are escaped by `JSON.stringify` itself. */
export const jsonText = (value: unknown): string =>
  `${JSON.stringify(value, null, 2).replace(
    UNSAFE,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  )}\n`;
