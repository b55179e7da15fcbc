/**
 * The fumes of a job in words: grams by line, the air that a coat needs, and the hours that need most, with the verdict.
 * When they leave, hour by hour, is in `fumes-hours.ts`.
 *
 * Totals, sheets and hovers say the same here as the rule `ventilation-too-weak`: all go by `core/fumes/job-air.ts`.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { DEFAULT_MIXING_FACTOR, vapourM3PerH } from "../../core/fumes/dilution-air.ts";
import type { AirThere, AirVerdict, CoatAir, Vapour } from "../../core/fumes/job-air.ts";
import { type CoatFumes, coatFumes } from "../../core/fumes/job-fumes.ts";
import { LEL_PARTS, SHIFT_H } from "../../core/fumes/room-air.ts";
import type { AirNeed } from "../../core/fumes/worst-air.ts";
import { exposureLimitMgM3, LIMITS_AT_C, shortLimitMgM3 } from "../../core/knowledge/solvents.ts";
import { airChangesNumber, airFlowText, percentText, roomText } from "../../core/measure/figures.ts";
import { formatNumber, roundTo } from "../../core/measure/format-amount.ts";
import type { Material } from "../../core/model/model.ts";
import { andList } from "../../core/model/suggest.ts";
import { placeKey } from "../../core/place.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { momentAfterStart } from "../schedule/job-plan.ts";

export interface FumesFact {
  /** `walnut_gel, 2 coats`, `dewax with white_spirit`, or the hours that need most. */
  readonly name: string;
  readonly grams: number;
  /** What air it needs and what there is; empty without a known room. */
  readonly air: string;
  /** The sum for that air with its numbers; empty without one. */
  readonly working: string;
  /** Set where the sum leaves out a material of which it is not known what comes off. */
  readonly isPartial?: true;
}

/** Said once beside the facts of a job with a room. */
export const fumesBasis = (): string =>
  t`dilution-ventilation estimate by limits of ${SHIFT_H} h and 15 min, mixing factor ${DEFAULT_MIXING_FACTOR}, cautious where a solvent is not named; no calculation can show that a room is safe`;

/** A fact for every line that gives off something; lines of which it is not known are left out. */
export function lineFumes(result: JobResult): readonly FumesFact[] {
  const coats = result.air?.coats.map(({ coat }) => coat) ?? coatFumes(result.draws);
  return coatsByLine(coats).map((line) => ({
    name: lineName(line),
    grams: line.reduce((sum, { grams }) => sum + (grams ?? 0), 0),
    air: coatAir(result, line[0]!, line.length > 1),
    working: coatAirWorking(result, line[0]!),
  }));
}

/**
 * The hours that need most air, with all that is given off in the room; undefined where it is not computed. `called` is how
 * a material is named: by its name where the text is beside it, by its title in what is handed on.
 */
export function worstAir(
  result: JobResult,
  called: (material: Material) => string = ({ name }) => `\`${name}\``,
): FumesFact | undefined {
  const { air } = result;
  const worst = air?.worst;
  if (!air || !worst) return undefined;
  const { need, coat, grams, vapours, others } = worst;
  const jobs = others.length > 0 ? t`, ${andList(others.map((name) => `\`${name}\``))} included` : "";
  const left = notCounted(result, called);
  return {
    name: stretchName(need),
    grams,
    air: t`from ${momentAfterStart(result, need.fromH)}: needs ${changes(need.airChangesPerH)} in ${roomText(air.roomM3)}${jobs}; ${thereText(coat.there)}: ${verdictText(coat.verdict, left)}`,
    working: sumText(vapours, need, air.roomM3),
    ...(left.length > 0 ? { isPartial: true } : {}),
  };
}

const STRETCHES = {
  shift: () => t`worst ${SHIFT_H} h`,
  short: () => t`worst 15 min`,
  fire: () => t`worst moment (fire)`,
} as const;

const stretchName = ({ limit = "shift" }: AirNeed): string => STRETCHES[limit]();

export const VERDICT_WORDS: Readonly<Record<AirVerdict, string>> = {
  enough: "enough by this estimate",
  unnamed: "enough only if the solvent is a mild one",
  unmeasured: "not known to be enough",
  masked: "too little without the respirator",
  short: "too little",
};

/** A sum without something in it cannot say that the air is enough for all. */
function verdictText(verdict: AirVerdict, left: readonly string[]): string {
  if (left.length === 0) return translated(VERDICT_WORDS[verdict]);
  const counted =
    verdict === "enough"
      ? t`enough for what is counted, and not known for all`
      : translated(VERDICT_WORDS[verdict]);
  return t`${counted}. Not counted: ${andList(left)}, as what comes off it is not all known; labels and safety data sheets say how much air that needs`;
}

/** `the room has 2`, of the air that a line has. */
export function thereText({ by, airChangesPerH }: AirThere): string {
  const number = airChangesNumber(airChangesPerH);
  if (by === "room") return t`the room has ${number}`;
  if (by === "stated") return t`${number} stated`;
  return airChangesPerH > 0 ? t`${number} and what \`ventilate\` brings` : t`no amount of air is stated`;
}

/** Materials whose vapour is not in the sums: no solvent stands for it, or litres or VOC are not known. */
function notCounted({ draws }: JobResult, called: (material: Material) => string): readonly string[] {
  const left = coatFumes(draws).flatMap(({ grams, liquids, parts }) =>
    grams === undefined
      ? parts.flatMap(({ action }) => action.use?.material ?? [])
      : liquids.flatMap(({ material, solvent, grams: own }) => (own > 0 && !solvent ? [material] : [])),
  );
  return [...new Set(left.map(called))];
}

/** The verdict on one coat in its room. */
const airOf = ({ air }: JobResult, { parts }: CoatFumes): CoatAir | undefined =>
  air?.coats.find(({ coat }) => coat.parts[0]!.action === parts[0]!.action);

/** The air that one coat needs by itself, and what its line has; `needs` are the words that the figure follows. */
export function coatAir(result: JobResult, coat: CoatFumes, isOneOfMany = false): string {
  const found = airOf(result, coat);
  if (!found) return "";
  if (found.alone.limit === undefined)
    return (coat.grams ?? 0) > 0 ? t`no limit is known for its vapour` : "";
  const [asked, there] = [changes(found.alone.airChangesPerH), thereText(found.there)];
  return isOneOfMany ? t`a coat needs ${asked} by itself, ${there}` : t`needs ${asked} by itself, ${there}`;
}

/** The sum behind `coatAir`, as a reader would do it; empty where there is none. */
export function coatAirWorking(result: JobResult, coat: CoatFumes): string {
  const found = airOf(result, coat);
  return found ? sumText(found.vapours, found.alone, result.air!.roomM3) : "";
}

function sumText(vapours: readonly Vapour[], need: AirNeed, roomM3: number): string {
  if (need.limit === undefined) return "";
  return need.limit === "fire" ? fireSum(vapours, need, roomM3) : breathingSum(vapours, need, roomM3);
}

const parts = (terms: readonly string[]): string =>
  terms.length > 1 ? `(${terms.join(" + ")})` : (terms[0] ?? "");

/** `480 g / 0.35 g/m3 (mineral spirits) / 8 h × 5 = 857 m3/h, / 50 m3 = 17.1 air changes/h` */
function breathingSum(vapours: readonly Vapour[], need: AirNeed, roomM3: number): string {
  const terms = vapours.flatMap(({ solvent, grams, isAssumed }) => {
    const limit = need.limit === "short" ? shortLimitMgM3(solvent) : exposureLimitMgM3(solvent);
    const name = translated(solvent.name);
    const named = isAssumed ? t`${name}, assumed` : name;
    return limit === undefined
      ? []
      : [`${formatNumber(grams, 1)} g / ${formatNumber(limit / 1000, 3)} g/m3 (${named})`];
  });
  return `${parts(terms)} / ${formatNumber(need.hours, 2)} h × ${DEFAULT_MIXING_FACTOR} = ${perRoom(need, roomM3)}`;
}

/** `429 m3/h, / 50 m3 = 8.6 air changes/h` */
const perRoom = ({ m3PerH, airChangesPerH }: AirNeed, roomM3: number): string =>
  `${airFlowText(m3PerH)}, / ${roomText(roomM3)} = ${changes(airChangesPerH)}`;

/** The vapour of the moment, kept to a tenth of the lower explosive limit. */
function fireSum(vapours: readonly Vapour[], need: AirNeed, roomM3: number): string {
  const terms = vapours.map(({ solvent, grams }) => {
    const gramsPerH = grams / need.hours;
    const { molecularWeight } = solvent;
    const m3PerH = vapourM3PerH({ gramsPerH, molecularWeight, temperatureC: LIMITS_AT_C });
    return t`${formatNumber(m3PerH, 4)} m3/h of vapour (${formatNumber(gramsPerH, 1)} g/h) / ${percentText(solvent.lelPercent)} (${translated(solvent.name)})`;
  });
  return `${parts(terms)} × ${LEL_PARTS} = ${perRoom(need, roomM3)}`;
}

/** `8.6 air changes/h` */
export const changes = (perH: number): string =>
  perH < 0.1 ? t`under 0.1 air changes/h` : t`${roundTo(perH, 1)} air changes/h`;

/** Coats whose grams are known, those of one line together. */
export function coatsByLine(coats: readonly CoatFumes[]): readonly (readonly CoatFumes[])[] {
  const lines = new Map<string, CoatFumes[]>();
  for (const coat of coats) {
    if (coat.grams === undefined) continue;
    const key = placeKey(coat.parts[0]!.action.place);
    const line = lines.get(key);
    if (line) line.push(coat);
    else lines.set(key, [coat]);
  }
  return [...lines.values()];
}

/** What the coats of one line are called: `walnut_gel, 2 coats`. */
export function lineName(coats: readonly CoatFumes[]): string {
  const { action } = coats[0]!.parts[0]!;
  const material = action.use?.material?.name ?? action.use?.name ?? "";
  if (action.op === "step") return `${action.verb} with ${material}`;
  return coats.length === 1 ? material : t`${material}, ${coats.length} coats`;
}
