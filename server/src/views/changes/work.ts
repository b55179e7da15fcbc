/**
 * The work of a run in lines for comparison: every step, coat and wait, with titles, in the words of a bench sheet. No
 * line says which coat of how many it is, so that one coat more is one line more.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { formatWork } from "../../core/measure/format-amount.ts";
import type { Action, LayerAction, Takes } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { Stage } from "../../core/surface/state.ts";
import { materialOf } from "../../core/surface/state.ts";
import { ratioText } from "../sheet/procedure.ts";
import { waitTitle } from "../sheet/waits.ts";
import { layerShort, methodOf, stepTitle, titleOf, words } from "../sheet/words.ts";

export const workLines = ({ moments }: SurfaceRun): readonly string[] =>
  moments.map(({ action }) => withTime(lineOf(action), action.takes));

function lineOf(action: Action): string {
  switch (action.op) {
    case "step":
      return stepTitle(action);
    case "layer":
      return layerLine(action);
    case "wait":
      return waitTitle(action);
    case "note":
      return t`Note: ${action.text}`;
    case "open":
      return action.missing === undefined ? t`And so on` : t`Follow ${words(action.missing)} (to be chosen)`;
  }
}

function layerLine(layer: LayerAction): string {
  const method = methodOf(layer);
  const ratio = ratioText(layer);
  const short = layerShort({ ...layer, coat: 1, coats: 1 });
  return [
    layer.session ? t`Session of ${short}` : t`Coat of ${short}`,
    ...(method === undefined || method === "brush" ? [] : [translated(`by ${method}`)]),
    ...(ratio === "" ? [] : [ratio]),
  ].join(", ");
}

const withTime = (line: string, takes: Takes | undefined): string => {
  if (takes === undefined) return line;
  const time = "hours" in takes ? formatWork(takes.hours) : t`${formatWork(takes.hoursPerM2)} per m2`;
  return `${line}, ${time}`;
};

/** Coats on one of the piece. */
export const coatsOf = ({ moments }: SurfaceRun): number =>
  moments.filter(({ action }) => action.op === "layer").length;

/** How long a material has to dry to a stage, in the air that it is put on in. */
export interface DryingWait {
  readonly material: string;
  readonly stage: Stage;
  readonly hours: number;
}

/** What the `wait until` lines of runs come to: the longest of every material and stage, in the order of the work. */
export function dryingWaits(runs: readonly SurfaceRun[]): readonly DryingWait[] {
  const waits = new Map<string, DryingWait>();
  for (const { moments } of runs)
    for (const { action, dries } of moments) {
      const material = dries && materialOf(dries.of);
      if (action.op !== "wait" || !material || !dries.time) continue;
      const { stage, hours } = dries.time;
      const key = `${stage} ${material.name}`;
      const known = waits.get(key);
      if (known === undefined || known.hours < hours)
        waits.set(key, { material: titleOf(material), stage, hours });
    }
  return [...waits.values()];
}

/** `Shelf: board`; empty for a recipe by itself. */
export function placeOf({ piece, surface, label }: SurfaceRun): string {
  const name = surface?.title ?? words(surface?.name ?? label);
  return piece ? `${titleOf(piece)}: ${name}` : name;
}
