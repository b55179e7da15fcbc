/** Water from the tap: never listed, never bought, no fumes. */
import { isNeverListed } from "../knowledge/built-in-materials.ts";
import type { Material } from "../model/model.ts";

export const isBuiltInWater = (material: Material): boolean =>
  material.builtIn && isNeverListed(material.name);
