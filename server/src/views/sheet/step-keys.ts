/** What names the steps of a surface from one state of the recipe to the next. */
import { fingerprintOf } from "./fingerprint.ts";
import type { SheetProcedure } from "./model.ts";

/**
 * Fingerprints of the steps and coats of a surface, by their number: the same as long as what is done there, and how often it
 * was done before, is the same; whenever it is planned, and with whatever else in one go.
 */
export function stepKeys({ title: surface, entries }: SheetProcedure): ReadonlyMap<number, string> {
  const seen = new Map<string, number>();
  const keys = new Map<number, string>();
  for (const entry of entries) {
    if (entry.kind !== "step" || entry.number === undefined) continue;
    const title = entry.englishTitle ?? entry.title;
    const count = (seen.get(title) ?? 0) + 1;
    seen.set(title, count);
    keys.set(entry.number, fingerprintOf([surface, title, String(count)]));
  }
  return keys;
}
