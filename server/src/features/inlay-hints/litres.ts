/**
 * The litres that a layer line takes, spare included: over all coats, pieces and surfaces, and over all jobs of the
 * file, which is what has to stand on the shelf. Where jobs or a mix need different materials each is named.
 */
import type { Material } from "../../core/model/model.ts";
import { bullets, firstFew } from "../hover/context.ts";
import { layerRunText } from "../hover/layer-card.ts";
import type { LineRun } from "../hover/runs-of-line.ts";
import type { HintText } from "../inlay-hints.ts";
import { litresText } from "../spoken.ts";

/** More of them make a line that nobody reads. */
const MOST_MATERIALS = 2;

export function litresHint(runs: readonly LineRun[]): HintText | undefined {
  const amounts = new Map<Material, number>();
  for (const { result, run, times } of runs) {
    const actions = new Set(times.map(({ action }) => action));
    for (const draw of result?.draws ?? []) {
      if (draw.run !== run || !actions.has(draw.action)) continue;
      // A sum with an unknown part is no sum.
      if (draw.litres === undefined) return undefined;
      amounts.set(draw.material, (amounts.get(draw.material) ?? 0) + draw.litres);
    }
  }
  if (amounts.size === 0) return undefined;
  const texts = [...amounts].map(([material, litres]) =>
    amounts.size === 1 ? litresText(litres) : `${litresText(litres)} ${material.name}`,
  );
  const shown = texts.slice(0, MOST_MATERIALS).join(" + ");
  const jobs = new Set(runs.map(({ result }) => result)).size;
  const more = texts.length > MOST_MATERIALS ? ` + ${texts.length - MOST_MATERIALS} more` : "";
  return {
    text: `${shown}${more}${jobs > 1 ? ` for ${jobs} jobs` : ""}`,
    markdown: bullets(firstFew(runs, layerRunText)),
  };
}
