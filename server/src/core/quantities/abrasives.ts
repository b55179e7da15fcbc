/**
 * How much abrasive paper a sanding uses up: an estimate for the shopping list.
 *
 * The basis is how much bare hardwood a whole sheet of 230 mm × 280 mm sands before it is dull, which falls with the
 * coarseness of the cut: coarse grits take off more wood and clog on old finish. A disc of 125 mm has a fifth of a
 * sheet's face. Common practice, no source: shops differ by a factor of two either way, so the estimate is rounded up
 * to whole sheets and never enters a cost unless the text states `supplies`.
 */

export interface AbrasiveUse {
  readonly grit: number;
  /** Hand sheets of 230 mm × 280 mm, rounded up; or, instead of them, */
  readonly sheets: number;
  /** discs of 125 mm, rounded up. */
  readonly discs: number;
  readonly basis: string;
}

/** Paper for one pass of each grit over an area (all pieces together, and times coats for a scuff between coats). */
export function abrasiveUse(areaM2: number, grits: readonly number[]): readonly AbrasiveUse[] {
  return grits.map((grit) => {
    const perSheet = m2PerSheet(grit);
    const sheets = areaM2 / perSheet;
    return {
      grit,
      sheets: roundUp(sheets),
      discs: roundUp(sheets / DISC_OF_SHEET),
      basis: `${perSheet} m2 a sheet at grit ${grit}: common practice, no source`,
    };
  });
}

/** Area in m2 that a sheet sands at a grit. Common practice, no source. */
export function m2PerSheet(grit: number): number {
  if (grit <= 60) return 0.6;
  if (grit <= 100) return 1;
  if (grit <= 180) return 1.5;
  if (grit <= 240) return 2;
  return 2.5;
}

/** Face of a 125 mm disc over that of a 230 mm × 280 mm sheet, π · 62.5² / (230 · 280). */
const DISC_OF_SHEET = (Math.PI * 62.5 ** 2) / (230 * 280);

const roundUp = (count: number): number => Math.ceil(count - 1e-9);
