/** Sums of figures of which some may be unknown. */

export const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** `null` as soon as one part is: a sum with a hole in it would be taken for the whole. */
export const sumOrNull = (values: readonly (number | null)[]): number | null =>
  values.every((value) => value !== null) ? sum(values as readonly number[]) : null;
