/**
 * Rounds totals for printing: lengths, litres, hours and grams to six decimals, money to cents, so that sums of
 * decimal fractions print as people write them. A sum is that of the printed lines.
 */
import { printed, cents as wholeCents } from "../measure/figures.ts";
import { sumOrNull } from "./sums.ts";
import type { JobTotals } from "./types.ts";

const six = <T extends number | null>(value: T): T => (value === null ? value : (printed(value) as T));
const cents = <T extends number | null>(value: T): T => (value === null ? value : (wholeCents(value) as T));

export function printedTotals(totals: JobTotals): JobTotals {
  return {
    name: totals.name,
    area_m2: six(sumOrNull(totals.surfaces.map((s) => six(s.area_m2)))),
    surfaces: totals.surfaces.map((s) => ({
      name: s.name,
      area_m2: six(s.area_m2),
      dry_film_um: six(s.dry_film_um),
    })),
    materials: totals.materials.map((m) => ({
      name: m.name,
      litres: six(m.litres),
      containers: m.containers.map((c) => ({ litres: six(c.litres), count: c.count, price: cents(c.price) })),
      cost: cents(m.cost),
    })),
    hands_on_h: six(totals.hands_on_h),
    elapsed_h: six(totals.elapsed_h),
    finish: totals.finish,
    last_work: totals.last_work,
    light_use: totals.light_use,
    full_use: totals.full_use,
    in_service: totals.in_service,
    voc_g: six(totals.voc_g),
    material_cost: cents(totals.material_cost),
    labour_cost: cents(totals.labour_cost),
    total_cost: cents(totals.total_cost),
    saving: cents(totals.saving),
  };
}
