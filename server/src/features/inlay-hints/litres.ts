/**
 * The litres that a layer line takes, spare included: over all coats, pieces and surfaces, and over all jobs of the
 * file, which is what has to stand on the shelf. Where jobs or a mix need different materials each is named.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { ShownFigures } from "../../core/measure/shown-figures.ts";
import type { Material } from "../../core/model/model.ts";
import { drawsFor } from "../../core/totals/needs.ts";
import { layerRunText } from "../../views/sums/layer-run.ts";
import type { LineRun } from "../../views/sums/line-run.ts";
import { bullets, firstFew } from "../markdown.ts";
import { type HintText, MOST_CHARACTERS } from "./hint-text.ts";

/** More of them make a line that nobody reads. */
const MOST_MATERIALS = 2;

export function litresHint(runs: readonly LineRun[], say: ShownFigures["litres"]): HintText | undefined {
  const amounts = new Map<Material, number>();
  for (const { result, run, times } of runs) {
    const actions = times.map(({ action }) => action);
    for (const draw of drawsFor(result?.draws ?? [], run, actions)) {
      // A sum with an unknown part is no sum.
      if (draw.litres === undefined) return undefined;
      amounts.set(draw.material, (amounts.get(draw.material) ?? 0) + draw.litres);
    }
  }
  if (amounts.size === 0) return undefined;
  const jobs = new Set(runs.map(({ result }) => result)).size;
  const end = jobs > 1 ? t` for ${jobs} jobs` : "";
  const named = `${sumText(amounts, amounts.size > 1, say)}${end}`;
  return {
    text: named.length <= MOST_CHARACTERS ? named : `${sumText(amounts, false, say)}${end}`,
    markdown: bullets(firstFew(runs, layerRunText)),
  };
}

/** `0.88 L satin + 0.37 L walnut`, or without the names where these take too much room. */
function sumText(
  amounts: ReadonlyMap<Material, number>,
  withNames: boolean,
  say: ShownFigures["litres"],
): string {
  const texts = [...amounts].map(([material, litres]) =>
    withNames ? `${say(litres)} ${material.name}` : say(litres),
  );
  const more = texts.length > MOST_MATERIALS ? t` + ${texts.length - MOST_MATERIALS} more` : "";
  return `${texts.slice(0, MOST_MATERIALS).join(" + ")}${more}`;
}
