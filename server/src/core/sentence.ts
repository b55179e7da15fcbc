/**
 * The beginning and the end of a sentence: its capital letter and its full stop.
 */

/** The text with its first letter as a capital; a name in backticks that it begins with stays as it is written. */
export const sentence = (text: string): string => text.replace(/^\p{Ll}/u, (first) => first.toUpperCase());

/** The same without its full stop, to stand in a sentence or as a headline. */
export const withoutFullStop = (text: string): string => (text.endsWith(".") ? text.slice(0, -1) : text);
