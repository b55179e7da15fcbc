/**
 * Lists of what work came to, one for each row of what it is about. A file has thousands of rows and a keystroke changes one
 * of them, so what has changed is found by comparing columns, and of the rest not a row is looked into: it is carried over
 * with the list.
 */
import { type Outcome, outcomeOf } from "../outcome.ts";

/** What the rows of a list are about: columns of one length. Compared by identity. */
export type Columns = readonly (readonly unknown[])[];

/** A list, and what it was made of. */
export interface Kept<T> {
  readonly columns: Columns;
  readonly values: readonly Outcome<T>[];
  /** Rows that are worked out again in any case, in their order. */
  readonly open: readonly number[];
}

/** What of a list of the last time stands for the rows of now. */
export interface Carried {
  /** By row of now the row of the last time that was about the same, -1 for none; undefined where all stand as they stood. */
  readonly from: readonly number[] | undefined;
  /** The rows that are about something else, and those that are open, in their order. */
  readonly rows: readonly number[];
}

/**
 * Rows that have only moved, as others came or went before them, are found by their distance from the end. `also` tells of
 * more rows of the last time that do not stand.
 */
export function carriedOver(
  before: Kept<unknown> | undefined,
  columns: Columns,
  also: readonly number[] = [],
): Carried {
  const count = columns[0]!.length;
  if (before?.values.length === count && before.columns[0]!.length === count) {
    const rows = new Set([...before.open, ...also]);
    for (let column = 0; column < columns.length; column += 1)
      addDifferent(rows, before.columns[column]!, columns[column]!);
    return { from: undefined, rows: [...rows].sort((a, b) => a - b) };
  }
  const open = new Set(before ? [...before.open, ...also] : []);
  const from: number[] = [];
  const rows: number[] = [];
  for (let row = 0; row < count; row += 1) {
    const at = rowBefore(before, columns, row);
    from.push(at);
    if (at < 0 || open.has(at)) rows.push(row);
  }
  return { from, rows };
}

function addDifferent(rows: Set<number>, before: readonly unknown[], now: readonly unknown[]): void {
  if (before === now) return;
  for (let row = 0; row < now.length; row += 1) if (before[row] !== now[row]) rows.add(row);
}

function rowBefore(before: Kept<unknown> | undefined, columns: Columns, row: number): number {
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

/** A list of the last time with each entry at the row that it belongs to now; `none` where there is none. */
export const carry = <T>(
  before: readonly T[] | undefined,
  from: readonly number[] | undefined,
  none: T,
): T[] => (from ? from.map((at) => (at < 0 ? none : before![at]!)) : (before?.slice() ?? []));

/**
 * Does the work of the rows that are not as they were; a step after each. While nothing comes to anything else, the list is
 * the same as before. What `mayKeep` says no to is worked out again the next time.
 */
export function* again<T>(
  before: Kept<T> | undefined,
  columns: Columns,
  work: (row: number) => T,
  mayKeep?: (value: T) => boolean,
): Generator<void, Kept<T>> {
  const { from, rows } = carriedOver(before, columns);
  if (before && from === undefined && rows.length === 0)
    return { columns, values: before.values, open: rows };
  const values = carry(before?.values, from, NOT_YET);
  const open: number[] = [];
  let isSame = before !== undefined && from === undefined;
  for (const row of rows) {
    const outcome = outcomeOf(() => work(row));
    values[row] = sameOutcome(before?.values[row], outcome);
    isSame &&= values[row] === before!.values[row];
    if (!("value" in outcome) || mayKeep?.(outcome.value) === false) open.push(row);
    yield;
  }
  return { columns, values: isSame ? before!.values : values, open };
}

/** Stands in a list until its row is worked out. */
export const NOT_YET: Outcome<never> = { error: undefined };

/** The outcome of before where it has the same value, so that what is made of it may be kept as well. */
export const sameOutcome = <T>(before: Outcome<T> | undefined, now: Outcome<T>): Outcome<T> =>
  before && "value" in before && "value" in now && before.value === now.value ? before : now;

/** All steps at once. */
export function drained<T>(steps: Generator<void, T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
