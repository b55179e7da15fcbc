/** What a `layer` line comes to in each job: coats, litres with their sum, wet and dry film, fumes by the hour. */
import { t } from "../../../../grammar/src/translate.ts";
import type { LayerStatement } from "../../../../grammar/src/tree.ts";
import { layerRunText } from "../../views/sums/layer-run.ts";
import { bullets, code, firstFew, paragraphs } from "../markdown.ts";
import type { HoverContext } from "./context.ts";
import { fumesOfLine } from "./fumes-line.ts";
import { runsOfLine } from "./runs-of-line.ts";

export function layerCard(ctx: HoverContext, layer: LayerStatement): string {
  const runs = runsOfLine(ctx, layer);
  const name = layer.material ? code(layer.material.text) : t`a material`;
  return paragraphs(
    t`**layer** of ${name}`,
    bullets([...firstFew(runs, layerRunText), ...fumesOfLine(runs)]),
  );
}
