/**
 * A short recipe to publish: what the pieces of a job were finished with, and how, step by step.
 *
 * As on a care card there are titles only, and no notes, names of files or anything else that was written for the
 * workshop. Coats that are put on in the same way are one step, with what is done between them.
 */
import { t } from "../../../grammar/src/translate.ts";
import { exactDuration, formatDuration, roundedUpHours } from "../core/measure/format-amount.ts";
import type { Action, LayerAction, WaitAction } from "../core/surface/actions.ts";
import type { SurfaceRun } from "../core/surface/run.ts";
import type { Moment } from "../core/surface/state.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import type { HandedOn } from "./handed-on.ts";
import { handedOnFacts } from "./handed-on-facts.ts";
import type { Sheet } from "./sheet/model.ts";
import { ratioText } from "./sheet/procedure.ts";
import { waitTitle } from "./sheet/waits.ts";
import { capital, layerTitle, stepTitle, titleOf, words } from "./sheet/words.ts";

export interface ShortRecipe {
  /** The pieces, by their titles. */
  readonly title: string;
  readonly handedOn: readonly RecipeFact[];
  readonly parts: readonly RecipePart[];
  /** `Satin clear`, `waterborne polyurethane, satin, clear` */
  readonly materials: readonly RecipeFact[];
  /** The air that the waits are for; undefined where none is stated. */
  readonly air?: string;
  /** What to see to: `Gloves`, `Wear gloves of the kind …`. */
  readonly duties: readonly RecipeFact[];
  readonly cautions: readonly string[];
}

export interface RecipeFact {
  readonly name: string;
  readonly text: string;
}

/** The work on surfaces on which the same is done. */
export interface RecipePart {
  readonly surfaces: readonly string[];
  /** `Top`, `red oak, veneer 0.6 mm, on it nitrocellulose lacquer, paste wax` */
  readonly made: readonly RecipeFact[];
  readonly steps: readonly string[];
}

/** `sheet`: that of the same job. */
export function shortRecipe(
  result: JobResult,
  sheet: Sheet,
  handedOn: readonly HandedOn[] = [],
): ShortRecipe {
  const pieces = [...new Set(result.runs.flatMap(({ piece }) => piece ?? []))];
  const air = sheet.facts.find(({ name }) => name === t`Air`)?.text;
  return {
    title: pieces.map((piece) => capital(titleOf(piece))).join(", "),
    handedOn: handedOnFacts(result, handedOn),
    parts: partsOf(result, sheet, pieces.length > 1),
    materials: sheet.materials.map(({ title, sort }) => ({ name: title, text: sort })),
    ...(air === undefined ? {} : { air }),
    duties: sheet.duties.map(({ label, doc }) => ({ name: label, text: doc })),
    cautions: [...leadCautions(sheet), ...mistakes(sheet)],
  };
}

/** A test of one piece says nothing of another, and who follows a recipe has another. */
function leadCautions({ pieces }: Sheet): readonly string[] {
  const cautions = [...new Set(pieces.flatMap((piece) => piece.cautions))];
  if (cautions.length === 0) return [];
  return [
    ...cautions,
    t`That is said of this piece alone. Have an old coating on yours tested before anything rubs or dissolves it; where lead is found, local codes and licensed practice say how to go on.`,
  ];
}

/** What is wrong in a recipe goes with it, as a number: the findings name lines of the workshop's text. */
function mistakes({ findings }: Sheet): readonly string[] {
  const errors = findings.filter(({ severity }) => severity === "error").length;
  if (errors === 0) return [];
  return [
    errors === 1
      ? t`The check of this recipe found an error not put right here. Do not follow it before that is done.`
      : t`The check of this recipe found ${errors} errors not put right here. Do not follow it before that is done.`,
  ];
}

function partsOf({ runs }: JobResult, sheet: Sheet, severalPieces: boolean): readonly RecipePart[] {
  const parts = new Map<string, RecipePart>();
  for (const [at, run] of runs.entries()) {
    const { substrate, existing } = sheet.surfaces[at]!;
    const surface = capital(run.surface ? titleOf(run.surface) : words(run.label));
    const name = severalPieces && run.piece ? `${capital(titleOf(run.piece))}, ${surface}` : surface;
    const steps = stepsOf(run);
    const key = steps.join("\n");
    const before = parts.get(key);
    const made = {
      name,
      text:
        run.initial.layers.length === 0 ? `${substrate}, ${existing}` : t`${substrate}, on it ${existing}`,
    };
    parts.set(key, {
      surfaces: [...(before?.surfaces ?? []), name],
      made: [...(before?.made ?? []), made],
      steps,
    });
  }
  return [...parts.values()];
}

/** One line of the work; a coat has what is the same of all coats that go on like it. */
interface Line {
  readonly text: string;
  readonly coat?: { readonly of: LayerAction["syntax"]; readonly noun: string; readonly rest: string };
}

/** A line each, in the order in which they are done, with the coats that the record has beyond the recipe. */
export function stepsOf(run: SurfaceRun): readonly string[] {
  const lines = run.moments.flatMap(lineOf);
  const steps: string[] = [];
  for (let at = 0; at < lines.length; ) {
    const row = rowAt(lines, at);
    steps.push(row?.text ?? lines[at]!.text);
    at = row?.end ?? at + 1;
  }
  return steps;
}

function lineOf(moment: Moment<Action>): readonly Line[] {
  const { action } = moment;
  switch (action.op) {
    case "step":
      return [{ text: stepTitle(action) }];
    case "wait":
      return [{ text: waitText(action, moment) }];
    case "layer": {
      // `One coat: Satin clear, by pad`
      const title = layerTitle({ ...action, coats: 1 });
      const colon = title.indexOf(": ");
      const rest = [title.slice(colon + 2), ratioText(action)].filter((part) => part !== "").join(", ");
      const noun = action.session ? "sessions" : "coats";
      return [{ text: `${title.slice(0, colon)}: ${rest}`, coat: { of: action.syntax, noun, rest } }];
    }
    case "open":
      return [
        {
          text: action.missing
            ? t`The steps of “${words(action.missing)}”, which are not written`
            : t`More steps than are told here`,
        },
      ];
    case "note":
      return [];
  }
}

/** `Wait until the next coat can go on: 2 h by its label, 2 h 41 min in that air` */
function waitText(action: WaitAction, { dries }: Moment<Action>): string {
  const title = waitTitle(action);
  const time = action.until ? dries?.time : undefined;
  if (!time) return title;
  const { label, factor, hours, isTypical } = time;
  const source = isTypical
    ? t`${formatDuration(label)} as is typical of its kind, the label decides`
    : t`${formatDuration(label)} by its label`;
  const here = factor > 1 ? t`, ${exactDuration(roundedUpHours(hours))} in that air` : "";
  return `${title}: ${source}${here}`;
}

/**
 * The coats from a line on that go on alike, with the same work between any two of them, as one step, and where they end.
 * Undefined where there is one alone.
 */
function rowAt(
  lines: readonly Line[],
  start: number,
): { readonly text: string; readonly end: number } | undefined {
  const { coat } = lines[start]!;
  if (!coat) return undefined;
  const isNext = (at: number): boolean =>
    lines[at]?.coat?.of === coat.of && lines[at]?.coat?.rest === coat.rest;
  const second = lines.findIndex((line, at) => at > start && line.coat !== undefined);
  if (second < 0 || !isNext(second)) return undefined;
  const step = second - start;
  const between = lines.slice(start + 1, second).map(({ text }) => text);
  let [count, last] = [2, second];
  while (
    isNext(last + step) &&
    between.every((text, at) => !lines[last + 1 + at]!.coat && lines[last + 1 + at]!.text === text)
  ) {
    count += 1;
    last += step;
  }
  const work = between.map((text) => text.replace(/^\p{Lu}(?=\p{Ll})/u, (first) => first.toLowerCase()));
  const meanwhile = work.length > 0 ? `. Between two of them: ${work.join("; ")}` : "";
  return { text: `${count} ${coat.noun}: ${coat.rest}${meanwhile}`, end: last + 1 };
}
