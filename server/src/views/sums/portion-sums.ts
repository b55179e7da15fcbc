/**
 * Sums of a job with their numbers filled in, as several cards show them: litres, hands, film, grams.
 *
 * A reader must be able to do them again, so litres stand here with four decimals where the totals have two.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { vocGrams } from "../../core/fumes/voc.ts";
import { exactArea, exactFilm, exactLitres, gramsText } from "../../core/measure/figures.ts";
import { formatDuration, formatNumber, formatWork } from "../../core/measure/format-amount.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { Moment } from "../../core/surface/state.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { type Draw, drawsFor } from "../../core/totals/needs.ts";
import { actionHours } from "../../core/totals/task-plan.ts";
import { markdownCode as code } from "../../escape/markdown.ts";

/** Longer sums are cut, with a word on how much is left out. */
const MOST_TERMS = 6;

/** What is done to one surface of a job, or a part of it. */
export interface Portion {
  readonly result: JobResult;
  readonly run: SurfaceRun;
  readonly moments: readonly Moment<Action>[];
}

/** `2 m2 / 10 m2/L × 1.1 = 0.22 L`, of a mix `… = 0.22 L × 4/5 = 0.176 L`. */
const drawText = ({ working, part, litres }: Draw): string =>
  part && litres !== undefined ? `${working}${part} = ${exactLitres(litres)}` : working;

/** The sum over draws of one material: `2 × (2 m2 / 10 m2/L × 1.1 = 0.22 L) = 0.44 L`. */
export function litresSum(draws: readonly Draw[]): string {
  const missing = draws.find(({ litres }) => litres === undefined);
  if (missing) return t`not known: ${missing.working}`;
  const groups = new Map<string, number>();
  for (const draw of draws) groups.set(drawText(draw), (groups.get(drawText(draw)) ?? 0) + 1);
  const terms = [...groups].map(([text, times]) => ({ text, times }));
  const [only] = terms;
  if (!only) return exactLitres(0);
  if (terms.length === 1 && only.times === 1) return only.text;
  const total = draws.reduce((sum, { litres }) => sum + litres!, 0);
  const texts = terms.map(({ text, times }) => (times === 1 ? `(${text})` : `${times} × (${text})`));
  return `${joined(texts)} = ${exactLitres(total)}`;
}

function joined(terms: readonly string[]): string {
  const shown = terms.slice(0, MOST_TERMS).join(" + ");
  return terms.length > MOST_TERMS ? t`${shown} + ${terms.length - MOST_TERMS} more` : shown;
}

/** The draws of some actions on one surface, material by material in the order of use. */
export function drawsByMaterial({ result, run, moments }: Portion): readonly (readonly Draw[])[] {
  const own = drawsFor(
    result.draws,
    run,
    moments.map(({ action }) => action),
  );
  const groups = new Map<Draw["material"], Draw[]>();
  for (const draw of own) groups.set(draw.material, [...(groups.get(draw.material) ?? []), draw]);
  return [...groups.values()];
}

/** Equal terms together: `sand 55 min + dust 10 min + 2 × trim 15 min = 1 h 35 min`; on one piece. */
export function handsSum({ run, moments }: Omit<Portion, "result">): string {
  const terms = new Map<string, { readonly label: string; readonly hours: number; times: number }>();
  let total = 0;
  for (const { action } of moments) {
    if (action.op !== "step" && action.op !== "layer") continue;
    const hours = actionHours(run, action);
    const label = action.op === "step" ? action.verb : (action.use.material?.name ?? action.use.name);
    const key = `${label} ${hours}`;
    const term = terms.get(key) ?? { label, hours, times: 0 };
    term.times += 1;
    terms.set(key, term);
    total += hours;
  }
  const texts = [...terms.values()].map(
    ({ label, hours, times }) => `${times > 1 ? `${times} × ` : ""}${label} ${formatDuration(hours)}`,
  );
  if (texts.length === 0) return t`none`;
  const sum = texts.length > MOST_HANDS ? [...texts.slice(0, MOST_HANDS), "…"] : texts;
  return `${sum.join(" + ")} = ${formatDuration(total)}`;
}

/** Kinds of work that a hover still reads well with. */
const MOST_HANDS = 12;

/** `2 × trim 30 um = 60 um`; empty where nothing builds a film. */
export function filmSum(moments: readonly Moment<Action>[]): string {
  const terms = new Map<string, { readonly name: string; readonly um: number; times: number }>();
  let total = 0;
  for (const { action, after } of moments) {
    if (action.op !== "layer") continue;
    const name = action.use.material?.name ?? action.use.name;
    const um = after.layers.at(-1)?.filmUm;
    if (um === undefined) return t`not known: that of ${code(name)} is not`;
    if (um === 0) continue;
    const key = `${name} ${um}`;
    const term = terms.get(key) ?? { name, um, times: 0 };
    term.times += 1;
    terms.set(key, term);
    total += um;
  }
  if (terms.size === 0) return "";
  const texts = [...terms.values()].map(
    ({ name, um, times }) => `${times > 1 ? `${times} × ` : ""}${code(name)} ${exactFilm(um)}`,
  );
  return `${joined(texts)} = ${exactFilm(total)}`;
}

/** `1.3538 L × 300 g/L = 406 g`; undefined where the litres or the VOC is not known. */
export function vocSum(material: Draw["material"], litres: number | undefined): string | undefined {
  const voc = material.voc?.value;
  if (voc === undefined || litres === undefined) return undefined;
  return `${exactLitres(litres)} × ${formatNumber(voc, 0)} g/L = ${gramsText(vocGrams(litres, voc))}`;
}

/** What a portion comes to, line by line: its area, every material, the film and the hands. */
export function portionSums(portion: Portion): readonly string[] {
  const { run, moments } = portion;
  const area = run.surface?.areaM2 ?? 0;
  const many = run.pieces > 1 ? t`, × ${run.pieces} pieces = ${exactArea(area * run.pieces)}` : "";
  const film = filmSum(moments);
  const hours = moments.reduce((sum, { action }) => sum + actionHours(run, action), 0);
  const manyHands = run.pieces > 1 ? t`, × ${run.pieces} pieces = ${formatWork(hours * run.pieces)}` : "";
  return [
    t`area ${exactArea(area)}${many}`,
    ...drawsByMaterial(portion).map((draws) => `${code(draws[0]!.material.name)} ${litresSum(draws)}`),
    ...(film === "" ? [] : [t`dry film ${film}`]),
    t`hands-on ${handsSum(portion)}${manyHands}`,
  ];
}
