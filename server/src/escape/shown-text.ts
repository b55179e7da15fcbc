/**
 * Text as it may reach a person's screen: nothing in it drives a terminal, ends a line unasked or turns the direction in
 * which the rest is read.
 *
 * A recipe, its name and its folder may come from anybody. Every character is shown as one character, so that places
 * counted in the text still hold in what is shown.
 */

/**
 * Control characters (C0, C1 and DEL; category Cc of Unicode), line and paragraph separators, the marks, embeddings,
 * overrides and isolates of the bidirectional algorithm (Unicode Standard Annex 9, section 2), and halves of surrogate
 * pairs, which no encoding can hold.
 */
const UNSAFE = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/gu;

/** One line: breaks and tabs as spaces, control characters as the signs for them, everything else unsafe as `\ufffd`. */
export const shownText = (text: string): string => text.replace(UNSAFE, signOf);

/** The same for texts of several lines: line feeds stay. */
export const shownLines = (text: string): string =>
  text.replace(/\r\n?/g, "\n").split("\n").map(shownText).join("\n");

function signOf(character: string): string {
  const code = character.charCodeAt(0);
  if (code === 0x09 || code === 0x0a || code === 0x0d || code === 0x2028 || code === 0x2029) return " ";
  if (code < 0x20) return String.fromCharCode(0x2400 + code);
  return code === 0x7f ? "\u2421" : "\ufffd";
}
