/**
 * The capital letter at the beginning of a sentence.
 */

/** The text with its first letter as a capital; a name in backticks that it begins with stays as it is written. */
export const sentence = (text: string): string => text.replace(/^\p{Ll}/u, (first) => first.toUpperCase());
