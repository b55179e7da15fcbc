import { SOLVENTS, type Solvent } from "../../server/src/core/knowledge/solvents.ts";

/** A solvent of the table by its name. */
export function solventByName(name: string): Solvent | undefined {
  const key = name.trim().toLowerCase();
  return SOLVENTS.find((solvent) => solvent.name.toLowerCase() === key);
}
