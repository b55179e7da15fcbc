/**
 * Where rows stand that each want to be level with something and may not lie over each other: in their order, and all
 * together as near to what they want as can be (least squares by the pool-adjacent-violators algorithm).
 */

export interface WantedRow {
  /** Of its middle, px. */
  readonly y: number;
  readonly height: number;
  /** How much it matters that it is level, beside the others. */
  readonly weight: number;
}

export interface LevelledRows {
  /** Upper edges, 0 and more. */
  readonly tops: readonly number[];
  /** By which all that the rows are level with goes down, so that the first row has room. */
  readonly shift: number;
  /** Of rows and drawing together. */
  readonly height: number;
}

/** `rows` from the top down; `drawn` is the height of what they stand beside. */
export function levelled(rows: readonly WantedRow[], drawn: number): LevelledRows {
  // Without what lies before it in a row of rows without gaps, each wants a place that may not be above the one before.
  let before = 0;
  const wants = rows.map(({ y, height, weight }) => {
    const want = y - height / 2 - before;
    before += height;
    return { want, weight };
  });
  const pools: Pool[] = [];
  for (const { want, weight } of wants) {
    let pool: Pool = { sum: want * weight, weight, count: 1 };
    for (let above = pools.at(-1); above && mean(above) > mean(pool); above = pools.at(-1)) {
      pools.pop();
      pool = {
        sum: above.sum + pool.sum,
        weight: above.weight + pool.weight,
        count: above.count + pool.count,
      };
    }
    pools.push(pool);
  }
  const places = pools.flatMap((pool) => Array.from({ length: pool.count }, () => mean(pool)));
  const shift = Math.max(0, -(places[0] ?? 0));
  let sum = 0;
  const tops = rows.map(({ height }, i) => {
    const top = Math.round((places[i]! + sum + shift) * 2) / 2;
    sum += height;
    return top;
  });
  const bottom = (tops.at(-1) ?? 0) + (rows.at(-1)?.height ?? 0);
  return { tops, shift, height: Math.ceil(Math.max(bottom, drawn + shift)) };
}

/** Rows that lie against each other. */
interface Pool {
  readonly sum: number;
  readonly weight: number;
  readonly count: number;
}

const mean = ({ sum, weight }: Pool): number => sum / weight;
