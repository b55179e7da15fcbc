/**
 * Coatings of two parts, and whether their hardener holds isocyanate. Hardeners of urethanes mostly do, and a hardener
 * that is only called "Hardener" says nothing, so what is not ruled out counts.
 */

import { SPRAY_METHODS } from "../../../../grammar/src/vocabulary.ts";
import type { Family, Role } from "../knowledge/family-schema.ts";
import { deniesChemical, holdsHazard } from "../knowledge/named-chemicals.ts";
import { clausesOf } from "../knowledge/text-words.ts";
import type { Material } from "../model/model.ts";
import { onceFor } from "../once.ts";
import type { Action, LayerAction, MaterialUse } from "../surface/actions.ts";

/** Acid and amine cure these; casein and lime are powders that are mixed with water. */
const CURED_OTHERWISE: ReadonlySet<Family["binder"]> = new Set([
  "amino-alkyd",
  "epoxy",
  "polyester",
  "nitrocellulose",
  "casein",
  "mineral",
  "dye",
]);

/** The part that makes the layer set: water and solvents only thin, whatever `mix` calls them. */
export const hardenerOf = ({ hardener }: LayerAction): MaterialUse | undefined =>
  hardener && !ONLY_THINS.has(hardener.use.material?.family?.role ?? "hardener") ? hardener.use : undefined;

const ONLY_THINS: ReadonlySet<Role> = new Set(["cleaner", "solvent", "stripper", "bleach", "glue"]);

/** Whether a layer is mixed from two parts that react: by its mix, its family, its words, or a pot life that it states. */
export function isTwoPart(layer: LayerAction): boolean {
  const { material } = layer.use;
  if (!material?.family) return hardenerOf(layer) !== undefined;
  if (layer.hardener) return hardenerOf(layer) !== undefined;
  if (material.family.twoPart) return true;
  if (CURED_OTHERWISE.has(material.family.binder)) return false;
  return material.mix !== undefined || material.potLife?.origin === "stated" || saysTwoParts(material);
}

/** "Two-component", "2-part", "two pack", "2K". Every duty asks of every layer. */
const saysTwoParts = onceFor(({ title = "", docs, name }: Material): boolean =>
  [title, docs, name.replaceAll("_", " ")].some((text) =>
    clausesOf(text).some((words) =>
      words.some(({ key }, at) => {
        const next = words[at + 1]?.key ?? "";
        const isTwo = key === "2k" || ((key === "two" || key === "2") && TWO_WHAT.has(next));
        return isTwo && !["no", "not", "non"].includes(words[at - 1]?.key ?? "");
      }),
    ),
  ),
);

const TWO_WHAT: ReadonlySet<string> = new Set(["part", "component", "pack", "k"]);

/**
 * What a sprayed layer has of isocyanate: the material that names it, or "not ruled out" for two parts of which neither
 * says that it holds none.
 */
export function isocyanateIn(
  layer: LayerAction,
): { readonly use: MaterialUse; readonly material: Material } | "not ruled out" | undefined {
  const parts = [layer.use, hardenerOf(layer)].flatMap((use) =>
    use?.material ? [{ use, material: use.material }] : [],
  );
  const named = parts.find(
    ({ material }) => material.family?.name === "isocyanate hardener" || holdsHazard(material, "isocyanate"),
  );
  if (named) return named;
  if (!isTwoPart(layer) || parts.some(({ material }) => deniesChemical(material, "isocyanate")))
    return undefined;
  const binder = layer.use.material?.family?.binder;
  return binder !== undefined && CURED_OTHERWISE.has(binder) ? undefined : "not ruled out";
}

/** Whether a layer goes on as a mist. */
export const isSprayed = (action: Action): boolean =>
  action.op === "layer" && SPRAY_METHODS.has(action.method);

/** Whether nothing less than air from outside will do. */
export const needsSuppliedAir = (layer: LayerAction): boolean =>
  isSprayed(layer) && isocyanateIn(layer) !== undefined;
