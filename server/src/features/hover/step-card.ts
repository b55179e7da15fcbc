/** What a `step` line takes in each job: hands-on time with its sum, and litres where a material is used. */

import { t, translated } from "../../../../grammar/src/translate.ts";
import type { StepStatement } from "../../../../grammar/src/tree.ts";
import { VERBS } from "../../../../grammar/src/vocabulary.ts";
import { materialTakenMm, medianUm } from "../../core/knowledge/abrasives.ts";
import { exactArea, filmText, thicknessText } from "../../core/measure/figures.ts";
import { formatDuration, formatNumber } from "../../core/measure/format-amount.ts";
import { taskTime } from "../../core/quantities/abrasives.ts";
import type { StepAction } from "../../core/surface/actions.ts";
import { workedAreaM2 } from "../../core/surface/part-of-surface.ts";
import { actionHours } from "../../core/totals/task-plan.ts";
import { type LineRun, plannedText, whereText } from "../../views/sums/line-run.ts";
import { drawsByMaterial, litresSum } from "../../views/sums/portion-sums.ts";
import { bullets, code, firstFew, paragraphs } from "../markdown.ts";
import type { HoverContext } from "./context.ts";
import { fumesOfLine } from "./fumes-line.ts";
import { runsOfLine } from "./runs-of-line.ts";

export function stepCard(ctx: HoverContext, step: StepStatement): string {
  const verb = step.verb?.text;
  const doc = verb && Object.hasOwn(VERBS, verb) ? VERBS[verb]!.doc : "";
  const runs = runsOfLine(ctx, step);
  const inJobs = runs.filter(({ result }) => result);
  const grits = runs[0]?.times[0]?.action as StepAction | undefined;
  return paragraphs(
    `**step${verb ? ` ${verb}` : ""}**${doc ? `: ${translated(doc)}` : ""}`,
    grits ? gritText(grits) : "",
    bullets([...firstFew(inJobs, stepRunText), ...fumesOfLine(inJobs)]),
    inJobs.length > 0 || !verb || step.tails.some(({ kind }) => kind === "takes")
      ? ""
      : t`Where nothing is said: ${tableText(verb)}.`,
  );
}

/** The row of the tool's own table: `5 min + 6 min/m2`. */
export function tableText(verb: string): string {
  const { fixedMin, minPerM2, source } = taskTime(verb);
  const time = `${fixedMin} min${minPerM2 > 0 ? ` + ${minPerM2} min/m2` : ""}`;
  return verb === "sand" || verb === "scuff"
    ? t`${time} for each grit (${translated(source)})`
    : `${time} (${translated(source)})`;
}

function gritText({ grits, verb }: StepAction): string {
  if (grits.length === 0) return "";
  const sizes = grits.flatMap((grit) => {
    const size = medianUm(grit);
    return size === undefined ? [] : [`${grit}: ${filmText(size)}`];
  });
  const taken = verb === "sand" ? grits.reduce((sum, grit) => sum + materialTakenMm(grit), 0) : 0;
  return taken > 0
    ? t`Grain size ${sizes.join(", ")}; takes about ${thicknessText(taken)} of bare wood (10 / grit mm each).`
    : t`Grain size ${sizes.join(", ")}.`;
}

/** What one surface of one job takes on this line, with the sums. */
export function stepRunText(line: LineRun): string {
  const { result, run, times } = line;
  const action = times[0]!.action as StepAction;
  const often = times.length > 1 ? t`${times.length} times ` : "";
  const pieces = run.pieces > 1 ? t` for each piece` : "";
  const time = `${often}${formatDuration(actionHours(run, action))}${pieces} (${howText(line, action)})`;
  const draws = result ? drawsByMaterial({ result, run, moments: times }) : [];
  const litres = draws.map((list) => `${code(list[0]!.material.name)} ${litresSum(list)}`);
  return `${whereText(line)}${[time, ...litres].join("; ")}.${plannedText(line)}`;
}

/** Stated, or the tool's own table with its numbers filled in. */
function howText({ run }: LineRun, action: StepAction): string {
  const area = workedAreaM2(run.surface, action.part);
  if (action.takes) {
    if ("hours" in action.takes) return t`stated`;
    return t`stated: ${formatNumber(action.takes.hoursPerM2 * 60, 1)} min/m2 × ${exactArea(area)}`;
  }
  const { fixedMin, minPerM2 } = taskTime(action.verb);
  const rounds =
    (action.verb === "sand" || action.verb === "scuff") && action.grits.length > 1
      ? `${action.grits.length} × `
      : "";
  const sum = minPerM2 > 0 ? `(${fixedMin} + ${minPerM2} × ${exactArea(area)}) min` : t`${fixedMin} min`;
  return t`estimated: ${rounds}${sum}, rounded up to five minutes`;
}
