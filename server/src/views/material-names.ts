/**
 * Names of materials for lists: two materials can have one name, a declared one and the built-in one that it shadows, or
 * those of two files.
 */
import { t } from "../../../grammar/src/translate.ts";
import type { Material } from "../core/model/model.ts";

/** One name for each, in order, no two alike: `mineral_spirits`, and where that is there twice, `… (built in)` or its file. */
export function distinctNames(materials: readonly Material[]): readonly string[] {
  return materials.map((material) => {
    const { name } = material;
    const namesakes = materials.filter((each) => each.name === name);
    if (namesakes.length < 2) return name;
    if (material.builtIn) return t`${name} (built in)`;
    return namesakes.every((each) => each === material || each.builtIn)
      ? name
      : `${name} (${fileName(material)})`;
  });
}

const fileName = ({ file }: Material): string => file.split(/[\\/]/u).at(-1)!;
