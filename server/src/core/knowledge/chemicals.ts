/**
 * The one table of chemicals, in the order of its parts, and its rows by name and by hazard.
 */
import type { Chemical, Hazard } from "./chemical-schema.ts";
import { CORROSIVE_CHEMICALS } from "./chemicals-corrosives.ts";
import { OLD_CHEMICALS } from "./chemicals-old.ts";
import { SOLVENT_CHEMICALS } from "./chemicals-solvents.ts";

const ROWS = [...SOLVENT_CHEMICALS, ...CORROSIVE_CHEMICALS, ...OLD_CHEMICALS] as const;

export type ChemicalName = (typeof ROWS)[number]["name"];

/** A row under a name that is known to the compiler. */
export type KnownChemical = Chemical & { readonly name: ChemicalName };

export const CHEMICALS: readonly KnownChemical[] = ROWS.map((row): KnownChemical => row as KnownChemical);

const byName = new Map(CHEMICALS.map((row) => [row.name, row]));

/** The row of a name of the table. */
export const chemical = (name: ChemicalName): KnownChemical => byName.get(name)!;

export const isA = (row: Chemical, ...hazards: readonly Hazard[]): boolean =>
  hazards.some((hazard) => row.hazards.includes(hazard));
