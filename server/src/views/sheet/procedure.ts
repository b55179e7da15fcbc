/**
 * The work on one surface as a numbered list: every step, coat and wait in its order, with what it takes, when the plan
 * has it, which duties begin there, and which findings stand on its line.
 */

import { inEnglish, t } from "../../../../grammar/src/translate.ts";
import { leadStatus } from "../../core/knowledge/lead.ts";
import { filmText, percentText } from "../../core/measure/figures.ts";
import { formatDuration, formatNumber } from "../../core/measure/format-amount.ts";
import type { ShownFigures } from "../../core/measure/shown-figures.ts";
import type { Material, Recipe } from "../../core/model/model.ts";
import { andList } from "../../core/model/suggest.ts";
import { type Place, placeKey } from "../../core/place.ts";
import { coatWetUm } from "../../core/quantities/laydown.ts";
import { NIGHT_H } from "../../core/schedule/night.ts";
import type { Schedule } from "../../core/schedule/types.ts";
import type { Action, LayerAction, StepAction, WaitAction } from "../../core/surface/actions.ts";
import { leadFactsOf } from "../../core/surface/lead.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import { type Moment, stageHours } from "../../core/surface/state.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { Draw } from "../../core/totals/needs.ts";
import { coatMix } from "../../core/totals/needs.ts";
import { itemOf } from "../../core/totals/planned-tasks.ts";
import { actionHours } from "../../core/totals/task-plan.ts";
import { fullUseAfter, lightUseAfter } from "../../core/totals/use-dates.ts";
import { isDated, sessionsOf } from "../schedule/job-plan.ts";
import { cautionsOf, type DutySpan, dutySpans, type LineDuties, lineDuties } from "./duties.ts";
import { THIN_VENEER } from "./gear.ts";
import type { PlannedTime, SheetEntry, SheetPart, SheetProcedure, SheetStep } from "./model.ts";
import { isPartOfStrip, stripAt } from "./strip-parts.ts";
import { isOnVeneer } from "./thin-veneer.ts";
import { waitWords, windowAfter } from "./waits.ts";
import { capital, docsOf, layerShort, layerTitle, methodOf, stepTitle, titleOf, useTitle } from "./words.ts";

export interface ProcedureInput {
  readonly run: SurfaceRun;
  /** The job's; a recipe by itself has none. */
  readonly result?: JobResult;
  /** The job's plan, where it has dates. */
  readonly plan?: Schedule;
  readonly title: string;
  /** See `SheetProcedure`. */
  readonly piece?: string;
  readonly surface: string;
  /** Numbers of the findings that stand on the line of an action of this run. */
  readonly findingsAt: (action: Action) => readonly number[];
  /** What the job draws for an action of this run. */
  readonly drawsAt: (action: Action) => readonly Draw[];
  readonly recipeAt: (place: Place) => Recipe | undefined;
  readonly say: ShownFigures;
}

export interface Procedure {
  readonly sheet: SheetProcedure;
  readonly spans: readonly DutySpan[];
}

export function procedureOf(input: ProcedureInput): Procedure {
  const { run } = input;
  const numbers = stepNumbers(run);
  const steps = run.moments.flatMap(({ action }, index) =>
    action.op === "note" || action.op === "open" ? [] : [{ index, action }],
  );
  const isTested = leadStatus(leadFactsOf(run)) === "none_found";
  const spans = dutySpans(steps, (word) => word === "lead_test" && isTested);
  const minds = lineDuties(spans, steps);
  const explained = new Set<Material>();
  const partsAt = partHeads(input);
  const entries = run.moments.flatMap((moment, index): readonly SheetEntry[] => {
    const heads = partsAt(moment.action);
    const { op } = moment.action;
    if (isPartOfStrip(run, index)) return heads;
    if (op === "note" || op === "open") return [...heads, ...unnumbered(moment.action)];
    return [...heads, stepOf(input, index, numbers[index], explained, minds)];
  });
  const { title, piece, surface } = input;
  return {
    sheet: { title, pieces: run.pieces, ...(piece === undefined ? {} : { piece }), surface, entries },
    spans,
  };
}

/** The number of every moment that is something to do, from 1; nobody does a wait. */
export function stepNumbers(run: SurfaceRun): readonly (number | undefined)[] {
  let last = 0;
  return run.moments.map(({ action: { op } }) => {
    if (op !== "step" && op !== "layer") return undefined;
    last += 1;
    return last;
  });
}

function unnumbered(action: Action): readonly SheetEntry[] {
  if (action.op === "note") return [{ kind: "note", text: action.text }];
  if (action.op !== "open") return [];
  const name = action.missing;
  return [
    {
      kind: "open",
      text: name
        ? t`Here the steps of “${name}” are done, which is still to be chosen or written.`
        : t`The recipe goes on from here with more steps than a sheet can hold.`,
    },
  ];
}

/**
 * Tells, of one action after the other, the heads of the recipes that begin with it: that of every `apply` line, where
 * there are several or there is something to say about it, and that of a followed recipe with words of its own, once.
 */
function partHeads({ run, recipeAt }: ProcedureInput): (action: Action) => readonly SheetPart[] {
  const appliedAt = new Map(
    run.applied.flatMap((each) => (each.apply ? [[placeKey(each.apply), each] as const] : [])),
  );
  const headed = new Set<string>();
  const seen = new Set<Place>();
  return ({ frames }) => {
    const [outer] = frames;
    const key = outer ? placeKey(outer) : "";
    const applied = appliedAt.get(key);
    const parts: SheetPart[] = [];
    if (applied && !headed.has(key)) {
      headed.add(key);
      headed.add(recipeKey(applied.recipe));
      parts.push(partOf(applied.recipe));
    }
    for (const place of frames.slice(applied ? 1 : 0)) {
      // Deep in recipes that follow each other most of the way is that of the action before.
      if (seen.has(place)) continue;
      seen.add(place);
      const recipe = recipeAt(place);
      if (!recipe || recipe === run.recipe || headed.has(recipeKey(recipe))) continue;
      headed.add(recipeKey(recipe));
      if (recipe.docs.trim() !== "" || recipe.title) parts.push(partOf(recipe));
    }
    return parts;
  };
}

const recipeKey = ({ file, declaration }: Recipe): string => `${file}\u0000${declaration}`;

const partOf = (recipe: Recipe): SheetPart => ({
  kind: "part",
  title: capital(titleOf(recipe)),
  docs: docsOf(recipe),
});

// ---------------------------------------------------------------------------------------------------------------
// One step

function stepOf(
  input: ProcedureInput,
  index: number,
  number: number | undefined,
  explained: Set<Material>,
  minds: ReturnType<typeof lineDuties>,
): SheetStep {
  const moment = input.run.moments[index]!;
  const { action } = moment;
  return {
    kind: "step",
    op: action.op === "layer" || action.op === "wait" ? action.op : "step",
    index,
    ...(number === undefined ? {} : { number }),
    ...wordsOf(input, index, moment, explained),
    cautions: cautionsOf(action),
    ...withVeneer(minds(index, action), isOnVeneer(input.run, index)),
    planned: plannedTimes(input, index, isPartOfStrip(input.run, index + 1) ? index + 1 : index),
    findings: input.findingsAt(action),
    ...litresOf(input, action),
    ...doneOf(input.run, index),
    ...stripOf(input.run, index),
    ...canOf(action),
    ...afterOf(moment),
    ...(action.op === "wait" ? { wait: waitOf(action, moment, windowAfter(input.run, index)) } : {}),
  };
}

const withVeneer = ({ wear, dangers }: LineDuties, isThin: boolean): LineDuties => ({
  wear,
  dangers: isThin ? [...dangers, THIN_VENEER] : dangers,
});

/** Of a coat: the time to the next one, for which it is not touched, and when it may be used. */
function afterOf({ action, after }: Moment<Action>): Pick<SheetStep, "after"> {
  const coat = action.op === "layer" ? after.layers.at(-1) : undefined;
  if (!coat?.material) return {};
  const touch = stageHours(coat, "recoat") ?? stageHours(coat, "touch");
  const [light, full] = [lightUseAfter(coat)?.hours, fullUseAfter(coat)?.hours];
  return {
    after: {
      ...(touch === undefined ? {} : { touch }),
      ...(light === undefined ? {} : { light }),
      ...(full === undefined ? {} : { full }),
    },
  };
}

function canOf(action: Action): Pick<SheetStep, "can" | "coat" | "coats"> {
  if (action.op !== "layer") return {};
  const { coat, coats: count, session, use } = action;
  const coats = { material: useTitle(use), count, each: session ? "session" : "coat" } as const;
  return { coat, coats, ...(use.material ? { can: `${use.material.file}\u0000${use.material.name}` } : {}) };
}

function stripOf(run: SurfaceRun, index: number): Pick<SheetStep, "strip"> {
  const strip = stripAt(run, index);
  return strip ? { strip } : {};
}

function doneOf({ record }: SurfaceRun, index: number): Pick<SheetStep, "done"> {
  const done = (record?.done ?? []).flatMap((ofPiece, at) => {
    const one = ofPiece.get(index);
    return one && !one.leftOut ? [{ piece: at + 1, at: one.record.at }] : [];
  });
  return done.length > 0 ? { done } : {};
}

function litresOf({ result, run, drawsAt }: ProcedureInput, action: Action): Pick<SheetStep, "litres"> {
  if (!result) return {};
  if (action.op === "layer") {
    const mix = coatMix(result.job, run, action);
    return mix ? { litres: mix.litres } : {};
  }
  const drawn = drawsAt(action).flatMap(({ litres }) => (litres === undefined ? [] : [litres]));
  return drawn.length > 0 ? { litres: drawn.reduce((sum, litres) => sum + litres, 0) } : {};
}

function waitOf(
  { until, hours, overnight }: WaitAction,
  { dries }: Moment<Action>,
  latestHours: number | undefined,
): NonNullable<SheetStep["wait"]> {
  const needed = until ? dries?.time?.hours : hours;
  return {
    ...(until ? { until } : {}),
    ...(needed === undefined ? {} : { hours: needed }),
    ...(overnight ? { leastHours: NIGHT_H } : {}),
    ...(latestHours === undefined ? {} : { latestHours }),
  };
}

function wordsOf(
  input: ProcedureInput,
  index: number,
  moment: Moment<Action>,
  explained: Set<Material>,
): Pick<SheetStep, "title" | "englishTitle" | "details" | "atHand" | "short" | "by"> {
  const { action } = moment;
  switch (action.op) {
    case "step":
      return {
        ...titlesOf(() => stepTitle(action)),
        details: [...stepAmounts(input, action), ...dwell(input.run, index), ...takes(input, action)],
        atHand: dwell(input.run, index),
      };
    case "layer":
      return {
        ...titlesOf(() => layerTitle(action)),
        short: layerShort(action),
        ...byOf(action),
        details: [
          ...coatAmounts(input, action),
          ...mixing(input, action),
          ...filmDetails(moment, action),
          ...takes(input, action),
        ],
        atHand: mixing(input, action),
      };
    case "wait":
      return waitWords(
        input.run,
        index,
        moment as Moment<Action> & { action: WaitAction },
        explained,
        input.say,
      );
    default:
      return { title: "", details: [] };
  }
}

function titlesOf(title: () => string): Pick<SheetStep, "title" | "englishTitle"> {
  const [said, english] = [title(), inEnglish(title)];
  return said === english ? { title: said } : { title: said, englishTitle: english };
}

function byOf(layer: LayerAction): Pick<SheetStep, "by"> {
  const by = methodOf(layer);
  return by === undefined ? {} : { by };
}

function stepAmounts({ result, run, drawsAt, say }: ProcedureInput, step: StepAction): readonly string[] {
  if (!result) {
    return step.usesLitres === undefined ? [] : [t`${say.litres(step.usesLitres)} for each piece.`];
  }
  return drawsAt(step).flatMap(({ litres }) =>
    litres === undefined ? [] : [`${say.litres(litres)}${forPieces(run)}.`],
  );
}

/** How long bleach is left on: where the line does not say it, the label does. */
function dwell({ moments }: SurfaceRun, index: number): readonly string[] {
  const { action } = moments[index]!;
  if (action.op !== "step" || !action.use || action.verb !== "bleach") return [];
  const next = moments[index + 1]?.action;
  return next?.op === "wait" && next.hours !== undefined
    ? [t`Leave it on for ${formatDuration(next.hours)}.`]
    : [t`Leave it on as the label says.`];
}

/** How much goes on in this coat, where nothing is mixed for it. */
function coatAmounts({ result, run, say }: ProcedureInput, layer: LayerAction): readonly string[] {
  const mix = result && coatMix(result.job, run, layer);
  if (mix) return mix.parts.length === 1 ? [`${say.litres(mix.litres)}${forPieces(run)}.`] : [];
  const ratio = ratioText(layer);
  const unknown = !result
    ? []
    : layer.use.material
      ? [t`How much is not known: the material states no spreading rate.`]
      : [t`How much depends on the material that is chosen.`];
  return [...(ratio ? [`${capital(ratio)}.`] : []), ...unknown];
}

/** What goes into the pot for it, parts and litres, or parts alone where no litres are known; and for how long it lasts. */
function mixing({ result, run, say }: ProcedureInput, layer: LayerAction): readonly string[] {
  const mix = result && coatMix(result.job, run, layer);
  const potLife = layer.use.material?.potLife?.value;
  const soon = potLife === undefined ? [] : [t`Use the mix within ${formatDuration(potLife)} (pot life).`];
  if (!mix || mix.parts.length === 1) return soon;
  const ratio = ratioText(layer);
  const all = `${say.litres(mix.litres)}${forPieces(run)}`;
  const parts = mix.parts.flatMap(({ use, litres }) =>
    litres === undefined ? [] : [`${say.litres(litres)} ${useTitle(use)}`],
  );
  return [
    parts.length < mix.parts.length
      ? t`Mix ${all}: ${ratio}. How many litres of each is not known without their densities.`
      : t`Mix ${all}: ${andList(parts)} (${ratio}).`,
    ...soon,
  ];
}

const forPieces = ({ pieces }: SurfaceRun): string =>
  pieces === 1 ? "" : pieces === 2 ? t` for both pieces` : t` for all ${pieces} pieces`;

/** `10:1 with hardener, thinned 4:1 with water, 5 % tint`: of the whole mix, as the language reference divides it. */
export function ratioText({ hardener, thinned, tinted }: LayerAction): string {
  return [
    ...(hardener
      ? [
          hardener.by === "weight"
            ? t`mixed ${hardener.a}:${hardener.b} by weight with ${useTitle(hardener.use)}`
            : t`mixed ${hardener.a}:${hardener.b} with ${useTitle(hardener.use)}`,
        ]
      : []),
    ...(thinned ? [t`thinned ${thinned.a}:${thinned.b} with ${useTitle(thinned.thinner)}`] : []),
    ...(tinted ? [t`tinted ${percentText(tinted.percent)} with ${useTitle(tinted.tint)}`] : []),
  ].join(", ");
}

/** Wet and dry film of the coat, and what a gauge shows with the new coats below. */
function filmDetails({ after }: Moment<Action>, layer: LayerAction): readonly string[] {
  const coat = after.layers.at(-1);
  if (!coat?.filmUm) return [];
  const wet = coatWetUm(layer);
  const dry = t`dry ${um(coat.filmUm)}`;
  const built = after.layers.filter(({ origin, filmUm }) => origin === "new" && filmUm !== 0);
  const all = built.every(({ filmUm }) => filmUm !== undefined)
    ? built.reduce((sum, { filmUm }) => sum + filmUm!, 0)
    : undefined;
  const together = built.length > 1 && all !== undefined ? t`, ${um(all)} with the coats below` : "";
  return [`${wet === undefined ? capital(dry) : t`Film: wet ${um(wet)}, ${dry}`}${together}.`];
}

const um = (thickness: number): string => `${filmText(thickness)}`;

/** Hands-on time, where no clock time says it. */
function takes({ result, run, plan }: ProcedureInput, action: StepAction | LayerAction): readonly string[] {
  if (!result) {
    if (!action.takes) return [];
    return "hours" in action.takes
      ? [t`Takes ${formatDuration(action.takes.hours)} for each piece.`]
      : [t`Takes ${formatNumber(action.takes.hoursPerM2 * 60, 1)} min/m2.`];
  }
  if (plan) return [];
  const hours = actionHours(run, action);
  if (hours <= 0) return [];
  const each = run.pieces > 1 ? t` for each piece` : "";
  const time = formatDuration(hours);
  return [action.takes ? t`Takes ${time}${each}.` : t`Takes about ${time}${each}.`];
}

/**
 * One for each session, or for what several pieces do at the same time, from the start of an action to the end of a later
 * one that is a part of it.
 */
function plannedTimes({ plan, run }: ProcedureInput, index: number, until: number): readonly PlannedTime[] {
  if (!plan) return [];
  const sessions = sessionsOf(plan);
  const times = new Map<string, PlannedTime>();
  for (let piece = 0; piece < run.pieces; piece += 1) {
    const item = itemOf(plan, run, piece, index);
    const endAt = itemOf(plan, run, piece, until)?.endAt;
    if (!item?.startAt || !endAt) continue;
    const { startAt } = item;
    const key = `${sessions.get(item.id) ?? `${startAt} ${endAt}`}`;
    const others = times.get(key);
    const first = others?.firstEndAt ?? others?.endAt ?? endAt;
    const isFirst = endAt < first;
    const firstEndAt = isFirst ? endAt : first;
    const firstPiece = isFirst ? piece + 1 : (others?.firstPiece ?? others?.pieces[0]);
    const last = others && others.endAt > endAt ? others.endAt : endAt;
    times.set(key, {
      startAt: others && others.startAt < startAt ? others.startAt : startAt,
      endAt: last,
      ...(firstEndAt < last ? { firstEndAt, firstPiece } : {}),
      pieces: [...(others?.pieces ?? []), piece + 1],
    });
  }
  return [...times.values()].toSorted((a, b) => (a.startAt < b.startAt ? -1 : a.startAt > b.startAt ? 1 : 0));
}

/** The plan of a job; none where it has no dates. */
export function datedPlan(result: JobResult): Schedule | undefined {
  if (!isDated(result) || result.schedule.status === "impossible") return undefined;
  return result.schedule;
}
