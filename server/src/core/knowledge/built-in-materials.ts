/**
 * The generic materials that every file can name: one per family, and `soap`.
 *
 * A built-in material is a family under a name of the notation; it states nothing itself, so every figure of it is the
 * family's. A file may shadow a name with a material of its own.
 */
import { FAMILIES } from "./families.ts";
import type { FamilyName } from "./family-names.ts";
import type { Family } from "./family-schema.ts";

const BY_NAME: ReadonlyMap<string, Family> = new Map([
  ...[...FAMILIES.values()].map((family) => [builtInName(family.name), family] as const),
  ["soap", FAMILIES.get("cleaner")!] as const,
]);

/** The name of the built-in material of a family: its words joined by `_`. */
export function builtInName(family: FamilyName): string {
  return family.replaceAll(" ", "_");
}

/** All names that are in scope without being declared, in the order of the families. */
export function builtInMaterialNames(): readonly string[] {
  return [...BY_NAME.keys()];
}

/** The family of a built-in material. */
export function builtInFamily(name: string): Family | undefined {
  return BY_NAME.get(name);
}

/** Built-in materials that no shopping list names: water from the tap, and soap. */
export function isNeverListed(name: string): boolean {
  return name === "soap" || name === "water";
}
