/** What a `layer` line comes to on one surface of a job: coats, litres with their sum, wet and dry film. */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { exactFilm, percentText } from "../../core/measure/figures.ts";
import { formatNumber } from "../../core/measure/format-amount.ts";
import { coatWetUm, laydownOf } from "../../core/quantities/laydown.ts";
import type { LayerAction } from "../../core/surface/actions.ts";
import type { Coat } from "../../core/surface/state.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { type LineRun, plannedText, whereText } from "./line-run.ts";
import { drawsByMaterial, litresSum, vocSum } from "./portion-sums.ts";

/** What one surface of one job takes on this line, with the sums. */
export function layerRunText(line: LineRun): string {
  const coats = line.times.length;
  const first = line.times[0]!;
  const action = first.action as LayerAction;
  const coat = first.after.layers.at(-1);
  const count = coats === 1 ? t`${coats} coat` : t`${coats} coats`;
  const parts = [count, ...drawTexts(line), ...(coat ? filmTexts(action, coat, coats) : [])];
  return `${whereText(line)}${parts.join("; ")}.${plannedText(line)}`;
}

/** The litres of every liquid of the mix, over all coats, and what these give off. */
function drawTexts({ result, run, times }: LineRun): readonly string[] {
  if (!result) return [];
  return drawsByMaterial({ result, run, moments: times }).map((draws) => {
    const { material } = draws[0]!;
    const litres = draws.reduce((sum, draw) => sum + (draw.litres ?? Number.NaN), 0);
    const voc = vocSum(material, Number.isNaN(litres) ? undefined : litres);
    return `${code(material.name)} ${litresSum(draws)}${voc ? t`, VOC ${voc}` : ""}`;
  });
}

function filmTexts(action: LayerAction, coat: Coat, coats: number): readonly string[] {
  if (coat.filmUm === 0) return [t`builds no film`];
  const covers = coat.material?.covers?.value;
  const wet = coatWetUm(action);
  if (wet === undefined) return [];
  const { share, name } = laydownOf(action);
  const laid = share === 1 ? "" : ` × ${formatNumber(share, 2)} (${translated(name)})`;
  const wetText =
    action.wetUm === undefined
      ? t`wet 1000 / ${formatNumber(covers!, 3)}${laid} = ${exactFilm(wet)}`
      : t`wet ${exactFilm(wet)}`;
  if (coat.filmUm === undefined) return [wetText];
  const solids = (coat.filmUm / wet) * 100;
  const dry = t`dry ${formatNumber(wet, 1)} × ${percentText(solids)} = ${exactFilm(coat.filmUm)}`;
  const all = coats === 1 ? "" : t` a coat, ${exactFilm(coat.filmUm * coats)} in all`;
  return [`${wetText}, ${dry}${all}`];
}
