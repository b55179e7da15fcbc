/** What a `layer` line comes to in each job: litres with their sum, wet and dry film, coats, drying in the shop's air. */
import type { LayerStatement } from "../../../../grammar/src/tree.ts";
import { coatFumes } from "../../core/fumes/job-fumes.ts";
import { formatNumber } from "../../core/measure/format-amount.ts";
import { wetFilmUm } from "../../core/quantities/film.ts";
import type { LayerAction } from "../../core/surface/actions.ts";
import type { Coat } from "../../core/surface/state.ts";
import type { Draw } from "../../core/totals/needs.ts";
import { coatAir } from "../fumes-facts.ts";
import { litresText } from "../spoken.ts";
import { bullets, code, firstFew, type HoverContext, paragraphs } from "./context.ts";
import { type LineRun, plannedText, runsOfLine, whereText } from "./runs-of-line.ts";

export function layerCard(ctx: HoverContext, layer: LayerStatement): string {
  const runs = runsOfLine(ctx, layer);
  const name = layer.material ? code(layer.material.text) : "a material";
  return paragraphs(`**layer** of ${name}`, bullets(firstFew(runs, layerRunText)));
}

/** What one surface of one job takes on this line, with the sums. */
export function layerRunText(line: LineRun): string {
  const coats = line.times.length;
  const first = line.times[0]!;
  const action = first.action as LayerAction;
  const coat = first.after.layers.at(-1);
  const count = `${coats} coat${coats === 1 ? "" : "s"}`;
  const parts = [
    count,
    ...drawTexts(line, coats),
    ...(coat ? filmTexts(action, coat, coats) : []),
    ...fumesTexts(line, action),
  ];
  return `${whereText(line)}${parts.join("; ")}.${plannedText(line)}`;
}

/** The litres of every liquid of the mix; one coat's sum, and what all coats take. */
function drawTexts({ result, run, times }: LineRun, coats: number): readonly string[] {
  if (!result) return [];
  const actions = new Set(times.map(({ action }) => action));
  const draws = result.draws.filter((draw) => draw.run === run && actions.has(draw.action));
  const materials = [...new Set(draws.map(({ material }) => material))];
  const [first] = draws;
  if (!first) return [];
  if (first.litres === undefined) return [`litres not known: ${first.working}`];
  const all = materials.map((material) => {
    const litres = draws.reduce(
      (sum, draw: Draw) => sum + (draw.material === material ? (draw.litres ?? 0) : 0),
      0,
    );
    return `${litresText(litres)} ${code(material.name)}`;
  });
  const each = coats === 1 ? "" : " a coat";
  return [
    `${first.working}${each}${coats > 1 || materials.length > 1 ? `, together ${all.join(" and ")}` : ""}`,
  ];
}

/** What a coat gives off, with the air that it asks for where the room is known. */
function fumesTexts({ result }: LineRun, action: LayerAction): readonly string[] {
  if (!result) return [];
  const coat = coatFumes(result.draws).find(({ parts }) => parts.some((part) => part.action === action));
  if (!coat?.grams) return [];
  const air = coatAir(result, coat);
  return [`VOC ${Math.round(coat.grams)} g${action.coats > 1 ? " a coat" : ""}${air ? `, ${air}` : ""}`];
}

function filmTexts(action: LayerAction, coat: Coat, coats: number): readonly string[] {
  if (coat.filmUm === 0) return ["builds no film"];
  const covers = coat.material?.covers?.value;
  const wet = action.wetUm ?? (covers === undefined ? undefined : wetFilmUm(covers));
  if (wet === undefined) return [];
  const wetText =
    action.wetUm === undefined
      ? `wet 1000 / ${formatNumber(covers!, 3)} = ${formatNumber(wet, 1)} um`
      : `wet ${formatNumber(wet, 1)} um`;
  if (coat.filmUm === undefined) return [wetText];
  const solids = (coat.filmUm / wet) * 100;
  const dry = `dry ${formatNumber(wet, 1)} × ${formatNumber(solids, 1)} % = ${formatNumber(coat.filmUm, 1)} um`;
  const all = coats === 1 ? "" : ` a coat, ${formatNumber(coat.filmUm * coats, 1)} um in all`;
  return [`${wetText}, ${dry}${all}`];
}
