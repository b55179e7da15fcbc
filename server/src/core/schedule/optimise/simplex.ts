/**
 * The restricted master program: a linear program whose columns are not all written down, solved by the revised simplex
 * method with its inverse kept whole (Dantzig, "Linear Programming and Extensions", 1963).
 *
 * Least `scale` such that a mixture of columns, weights of each group adding up to one, loads no row with more than
 * `scale`. Whoever asks brings one column a group to begin with and offers further ones by the rows' prices.
 */

/** Loads by row; rows that are not named carry nothing. */
export interface Column {
  readonly group: number;
  readonly rows: readonly number[];
  readonly loads: readonly number[];
}

export interface Master {
  /** The least scale so far. */
  readonly scale: () => number;
  /** By row, then by group: what a load, and what a column of the group, is worth at this point. */
  readonly prices: () => { readonly rows: Float64Array; readonly groups: Float64Array };
  /** Takes a column in, if that betters the scale at the present prices. */
  readonly offer: (column: Column) => void;
  /** The columns that are mixed now, with their weights. */
  readonly mixture: () => readonly { readonly column: Column; readonly weight: number }[];
}

const tiny = 1e-9;

type Basic = Column | "scale" | number; // a number is the row whose rest is left free

/** `first` has one column of every group, by group. */
export function startMaster(nRows: number, first: readonly Column[]): Master {
  const size = nRows + first.length;
  const basic: Basic[] = [...Array.from({ length: nRows }, (_, row) => row), ...first];
  const values = new Float64Array(size);
  const inverse = new Float64Array(size * size);
  for (let place = 0; place < size; place++) inverse[place * size + place] = 1;
  for (const [group, { rows, loads }] of first.entries()) {
    values[nRows + group] = 1;
    for (const [at, row] of rows.entries()) {
      values[row]! -= loads[at]!;
      inverse[row * size + nRows + group]! -= loads[at]!;
    }
  }
  // The rows' rests are below nothing as yet; the scale comes in for the fullest.
  let scaleAt = 0;
  for (let row = 1; row < nRows; row++) if (values[row]! < values[scaleAt]!) scaleAt = row;
  pivot(new Float64Array(size).fill(-1, 0, nRows), scaleAt, "scale");

  function pivot(column: Float64Array, leaving: number, entering: Basic): void {
    const by = column[leaving]!;
    const base = leaving * size;
    for (let at = 0; at < size; at++) inverse[base + at]! /= by;
    values[leaving]! /= by;
    for (let row = 0; row < size; row++) {
      const factor = column[row]!;
      if (row === leaving || factor === 0) continue;
      const start = row * size;
      for (let at = 0; at < size; at++) inverse[start + at]! -= factor * inverse[base + at]!;
      values[row]! -= factor * values[leaving]!;
      if (values[row]! < 0 && values[row]! > -tiny) values[row] = 0;
    }
    basic[leaving] = entering;
    if (entering === "scale") scaleAt = leaving;
  }

  /** Brings a variable in; its column is that of the inverse for a row's rest, else made of its loads. */
  function enter(entering: Column | number): void {
    const column = new Float64Array(size);
    const at = typeof entering === "number" ? [entering] : [...entering.rows, nRows + entering.group];
    const loads = typeof entering === "number" ? [1] : [...entering.loads, 1];
    for (let row = 0, base = 0; row < size; row++, base += size) {
      let sum = 0;
      for (let place = 0; place < at.length; place++) sum += loads[place]! * inverse[base + at[place]!]!;
      column[row] = sum;
    }
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < size; row++) {
      if (row === scaleAt || column[row]! <= tiny) continue;
      const ratio = values[row]! / column[row]!;
      if (ratio < least) {
        least = ratio;
        leaving = row;
      }
    }
    if (leaving >= 0) pivot(column, leaving, entering);
  }

  /** Lets rows free whose price has the wrong sign. */
  function free(): void {
    for (let round = 0; round < size; round++) {
      let worst = -1;
      for (let row = 0; row < nRows; row++) {
        const price = inverse[scaleAt * size + row]!;
        if (price > tiny && (worst < 0 || price > inverse[scaleAt * size + worst]!)) worst = row;
      }
      if (worst < 0) return;
      enter(worst);
    }
  }

  return {
    scale: () => values[scaleAt]!,
    prices: () => {
      free();
      const rows = new Float64Array(nRows);
      for (let row = 0; row < nRows; row++) rows[row] = Math.max(0, -inverse[scaleAt * size + row]!);
      return { rows, groups: inverse.slice(scaleAt * size + nRows, (scaleAt + 1) * size) };
    },
    offer: (column) => {
      let cost = -inverse[scaleAt * size + nRows + column.group]!;
      for (const [at, row] of column.rows.entries())
        cost -= inverse[scaleAt * size + row]! * column.loads[at]!;
      if (cost < -tiny) enter(column);
    },
    mixture: () =>
      basic.flatMap((each, place) =>
        typeof each === "object" && values[place]! > tiny ? [{ column: each, weight: values[place]! }] : [],
      ),
  };
}
