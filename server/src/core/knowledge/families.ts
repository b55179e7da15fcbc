/**
 * The family table: what each kind of material is, how it dries and builds, and what it brings to the shop.
 *
 * The rows stand in one file a group; here they are frozen and indexed once when the module loads (the tests check
 * them against the schema). They are typical figures that a label overrides, and never a statement that a product is safe.
 */

import { CLEAR_FAMILIES } from "./families-clear.ts";
import { COLOUR_FAMILIES } from "./families-colour.ts";
import { PAINT_FAMILIES, PRIMER_FAMILIES } from "./families-paint.ts";
import { AUXILIARY_FAMILIES, PREPARATORY_FAMILIES } from "./families-preparatory.ts";
import { MORE_AUXILIARY_FAMILIES, MORE_CLEAR_FAMILIES } from "./families-two-part.ts";
import { FAMILY_NAMES, type FamilyName } from "./family-names.ts";
import type { Family } from "./family-schema.ts";

/** Every family by name, in the order of the language reference. */
export const FAMILIES: ReadonlyMap<FamilyName, Family> = indexedFamilies([
  ...CLEAR_FAMILIES,
  ...MORE_CLEAR_FAMILIES,
  ...COLOUR_FAMILIES,
  ...PAINT_FAMILIES,
  ...PRIMER_FAMILIES,
  ...PREPARATORY_FAMILIES,
  ...AUXILIARY_FAMILIES,
  ...MORE_AUXILIARY_FAMILIES,
]);

/** The family that these words name, however they are spaced or capitalised. */
export function familyByName(text: string): Family | undefined {
  return FAMILIES.get(text.trim().toLowerCase().replace(/\s+/gu, " ") as FamilyName);
}

/** The family of a name of the closed vocabulary. */
export function family(name: FamilyName): Family {
  return FAMILIES.get(name)!;
}

/** Whether a material of this family stays on the surface as a layer (auxiliaries leave none). */
export function leavesLayer(row: Family): boolean {
  return row.group !== "auxiliary";
}

function indexedFamilies(rows: readonly Family[]): ReadonlyMap<FamilyName, Family> {
  const byName = new Map(rows.map((row) => [row.name, deepFreeze(row)]));
  if (byName.size !== rows.length) throw new Error("a family has two rows");
  return new Map(
    FAMILY_NAMES.map((name) => {
      const row = byName.get(name);
      if (row === undefined) throw new Error(`no row for the family ${name}`);
      return [name, row];
    }),
  );
}

function deepFreeze<T>(value: T): T {
  if (typeof value === "object" && value !== null) {
    for (const part of Object.values(value)) deepFreeze(part);
    Object.freeze(value);
  }
  return value;
}
