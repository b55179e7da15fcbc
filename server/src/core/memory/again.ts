/**
 * Lists of what work came to, one for each row of what it is about. A row in which nothing has changed since the last time
 * is not looked into, since a file has thousands and a keystroke changes one of them.
 */
import { type Outcome, outcomeOf } from "../outcome.ts";

/** What the rows of a list are about: columns of one length. Compared by identity. */
export type Columns = readonly (readonly unknown[])[];

/** A list, and what it was made of. */
export interface Kept<T> {
  readonly columns: Columns;
  readonly values: readonly Outcome<T>[];
}

/**
 * The row of the last time that was about the same as one of now; -1 where there is none. Rows that have only moved, as
 * others came or went before them, are found by their distance from the end.
 */
export function rowBefore(before: Kept<unknown> | undefined, columns: Columns, row: number): number {
  if (before === undefined) return -1;
  if (isSameRow(before, row, columns, row)) return row;
  const moved = row + before.columns[0]!.length - columns[0]!.length;
  return moved !== row && moved >= 0 && isSameRow(before, moved, columns, row) ? moved : -1;
}

function isSameRow(before: Kept<unknown>, rowBefore: number, columns: Columns, row: number): boolean {
  for (let column = 0; column < columns.length; column += 1)
    if (before.columns[column]![rowBefore] !== columns[column]![row]) return false;
  return rowBefore < before.values.length;
}

/**
 * Does the work of the rows that are not as they were; a step after each. While nothing comes to anything else, the list is
 * the same as before.
 */
export function* again<T>(
  before: Kept<T> | undefined,
  columns: Columns,
  work: (row: number) => T,
  mayKeep: (value: T) => boolean,
): Generator<void, Kept<T>> {
  const count = columns[0]!.length;
  const values: Outcome<T>[] = [];
  for (let row = 0; row < count; row += 1) {
    const at = rowBefore(before, columns, row);
    const kept = at < 0 ? undefined : before!.values[at]!;
    if (kept && "value" in kept && mayKeep(kept.value)) values.push(kept);
    else {
      values.push(
        sameOutcome(
          before?.values[row],
          outcomeOf(() => work(row)),
        ),
      );
      yield;
    }
  }
  return { columns, values: sameList(before?.values, values) };
}

/** The outcome of before where it has the same value, so that what is made of it may be kept as well. */
export const sameOutcome = <T>(before: Outcome<T> | undefined, now: Outcome<T>): Outcome<T> =>
  before && "value" in before && "value" in now && before.value === now.value ? before : now;

/** The list of before where it has the same in it. */
export function sameList<T>(before: readonly T[] | undefined, now: readonly T[]): readonly T[] {
  if (before === undefined || before.length !== now.length) return now;
  for (let row = 0; row < now.length; row += 1) if (before[row] !== now[row]) return now;
  return before;
}

/** All steps at once. */
export function drained<T>(steps: Generator<void, T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
