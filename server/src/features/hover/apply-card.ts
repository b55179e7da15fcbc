/** What an `apply` line comes to: its surfaces with their areas, and what the recipe puts on each. */
import type { ApplyStatement } from "../../../../grammar/src/tree.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { actionHours } from "../../core/totals/task-plan.ts";
import { areaText, filmText, litresText } from "../spoken.ts";
import { bullets, code, type HoverContext, isHere, paragraphs } from "./context.ts";

export function applyCard(ctx: HoverContext, apply: ApplyStatement): string {
  const { model } = ctx.declaration.lowered;
  const result = model?.kind === "job" ? ctx.checker.job(model) : undefined;
  const runs = (result?.runs ?? []).filter((run) =>
    run.applied.some(({ apply: place }) => place && isHere(ctx, place, apply.span)),
  );
  const name = apply.call ? code(apply.call.name.text) : "a recipe";
  return paragraphs(
    `**apply** ${name}`,
    bullets(
      runs.map((run) => {
        const own = run.moments.filter(({ action }) => {
          const [outermost] = action.frames;
          return outermost !== undefined && isHere(ctx, outermost, apply.span);
        });
        const actions = new Set(own.map(({ action }) => action));
        const litres = new Map<string, number>();
        for (const draw of result?.draws ?? []) {
          if (draw.run !== run || !actions.has(draw.action)) continue;
          litres.set(draw.material.name, (litres.get(draw.material.name) ?? 0) + (draw.litres ?? 0));
        }
        const hours = own.reduce((sum, { action }) => sum + actionHours(run, action), 0);
        const films = own.map(({ action, after }) =>
          action.op === "layer" ? after.layers.at(-1)?.filmUm : 0,
        );
        const film = films.every((each) => each !== undefined)
          ? films.reduce((sum: number, each) => sum + (each ?? 0), 0)
          : undefined;
        const pieces = run.pieces > 1 ? ` × ${run.pieces} pieces` : "";
        return [
          `${code(run.label)}: ${areaText(run.surface?.areaM2 ?? 0)}${pieces}`,
          ...[...litres].map(([material, amount]) => `${litresText(amount)} ${code(material)}`),
          ...(film === undefined ? [] : [`${filmText(film)} dry film`]),
          `${formatDuration(hours)} of hands${run.pieces > 1 ? " for each piece" : ""}`,
        ].join(", ");
      }),
    ),
  );
}
