/**
 * The totals of a job, as `totals --format json` prints them. Areas, litres, grams and money are for all pieces
 * together. `null` means: not computed, because the text does not state what it depends on, or it cannot be read. Money
 * is in whole cents line by line, and sums are those of the lines.
 */

export interface SurfaceTotals {
  readonly name: string;
  readonly area_m2: number | null;
  readonly dry_film_um: number | null;
}

export interface ContainerCount {
  readonly litres: number;
  readonly count: number;
  readonly price: number;
}

export interface MaterialTotals {
  readonly name: string;
  readonly litres: number | null;
  readonly containers: readonly ContainerCount[];
  readonly cost: number | null;
}

export interface JobTotals {
  readonly name: string;
  readonly area_m2: number | null;
  readonly surfaces: readonly SurfaceTotals[];
  readonly materials: readonly MaterialTotals[];
  readonly hands_on_h: number | null;
  readonly elapsed_h: number | null;
  readonly finish: string | null;
  /** See `use-dates.ts`; `full_use` and `in_service` are the same. */
  readonly last_work: string | null;
  readonly light_use: string | null;
  readonly full_use: string | null;
  readonly in_service: string | null;
  readonly voc_g: number | null;
  readonly material_cost: number | null;
  readonly labour_cost: number | null;
  readonly total_cost: number | null;
  readonly saving: number | null;
}
