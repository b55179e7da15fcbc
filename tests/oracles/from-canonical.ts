/** The way back from canonical units, which the program never goes. */
import type { UnitDefinition } from "../../server/src/core/measure/units.ts";

/** The other way: how many of the unit a canonical value is. */
export function fromCanonical(value: number, definition: UnitDefinition): number {
  if (definition.inverse) return definition.multiply / (value * definition.divide);
  return (value * definition.divide) / definition.multiply - (definition.offset ?? 0);
}
