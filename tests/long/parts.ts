/** A long run in parts: which of so many is done now. */

export interface Part {
  /** From 1. */
  readonly part: number;
  readonly of: number;
}

const WHOLE: Part = { part: 1, of: 1 };

/** `2/5`; without an argument all of it. */
export function readPart(given: readonly string[]): Part {
  const [text, ...more] = given;
  if (text === undefined) return WHOLE;
  const [, part, of] = /^([1-9]\d{0,2})\/([1-9]\d{0,2})$/u.exec(text) ?? [];
  if (more.length > 0 || part === undefined || of === undefined || Number(part) > Number(of))
    throw new Error(`A part is said as 2/5, the second of five, and got "${given.join(" ")}".`);
  return { part: Number(part), of: Number(of) };
}

/** What falls to a part, the last of a list to the last part: files of tests are dealt out from the first. */
export const partOf = <T>(all: readonly T[], { part, of }: Part): readonly T[] =>
  all.filter((_, index) => (all.length - 1 - index) % of === of - part);
