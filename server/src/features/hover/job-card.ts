/** The card of a job: what it takes and costs, when it is done, and what is missing to work out the rest. */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { SEVERITIES, type Severity } from "../../core/findings.ts";
import { cansText, exactArea, gramsText, gramsThatAddUp, moneyText } from "../../core/measure/figures.ts";
import { formatDuration, formatNumber, formatWork } from "../../core/measure/format-amount.ts";
import type { ShownFigures } from "../../core/measure/shown-figures.ts";
import type { Job } from "../../core/model/model.ts";
import { sentence } from "../../core/sentence.ts";
import { hasWork } from "../../core/surface/has-work.ts";
import { earnedPerHour } from "../../core/totals/earned.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { type PieceCost, pieceCosts, usedMaterialCost } from "../../core/totals/piece-costs.ts";
import { suppliesOf } from "../../core/totals/supplies.ts";
import { fumesBasis, worstAir } from "../../views/fumes/fumes-facts.ts";
import { hoursBasis, jobPeak } from "../../views/fumes/fumes-hours.ts";
import { distinctNames } from "../../views/material-names.ts";
import {
  awaitsPlan,
  awaitsRoomAir,
  beingPlannedText,
  type GapField,
  gapsOf,
  materialGaps,
  noDateText,
  uncheckedText,
  unpromised,
} from "../../views/missing-inputs.ts";
import { type JobDate, jobDates } from "../../views/schedule/job-dates.ts";
import { needSums } from "../../views/sums/need-sums.ts";
import { cureSum, elapsedSum, handsOnSum } from "../../views/sums/time-sums.ts";
import { usedText } from "../../views/sums/used-worth.ts";
import { findingsOfJob } from "../job-findings.ts";
import { bullets, code, docText, heading, nested, paragraphs } from "../markdown.ts";
import { figuresHere, type HoverContext } from "./context.ts";
import { sumsTitle } from "./sums-title.ts";

export function jobCard(ctx: HoverContext, job: Job): string {
  const result = ctx.checker.job(job);
  const { shop } = result;
  const say = figuresHere(ctx);
  const money = (amount: number): string => moneyText(amount, shop?.currency);
  return paragraphs(
    heading(job.name, job.title, t`a job`),
    docText(job.docs),
    // A hover shows a dozen lines before it must be scrolled, so what a reader asks first comes first.
    bullets(facts(ctx, result, money)),
    ...(hasWork(result.runs) ? [sumsTitle(), ...allFigures(ctx, result, money, say)] : []),
  );
}

/** Hands off, full use, cost and what is still wrong; of a job without work what is missing. */
function facts(ctx: HoverContext, result: JobResult, money: (amount: number) => string): readonly string[] {
  const found = findingsFact(ctx, result);
  if (!hasWork(result.runs))
    return [t`could not be calculated: ${gapsOf(result, "elapsed_h").join(", ")}`, found];
  const kept = unpromised(result);
  const [lastWork, , fullUse] = jobDates(result);
  return [
    ...(kept
      ? [`${noDateText()}: ${kept.reasons.join(", ")}`]
      : [t`last work ${dateFact(lastWork!)}`, t`full use ${dateFact(fullUse!)}`]),
    ...[uncheckedText(result)].filter(Boolean),
    figure(result, "total_cost", t`cost`, money),
    found,
  ];
}

const dateFact = ({ at, text, reason }: JobDate): string =>
  at === undefined && reason !== "" ? `${text}, ${reason}` : text;

function findingsFact({ checker, findingsAtHand }: HoverContext, result: JobResult): string {
  const file = checker.program.files.get(result.job.file);
  const findings = findingsAtHand(result.job.file);
  if (file === undefined || findings === undefined) return t`findings: not yet known`;
  const own = findingsOfJob(file.declarations, findings, result);
  if (own.length === 0) return t`nothing found; labels and safety data sheets come first`;
  const counts = SEVERITIES.flatMap((severity) => {
    const count = own.filter((finding) => finding.severity === severity).length;
    const [one, several] = LEVELS[severity];
    return count === 0 ? [] : [count === 1 ? one(count) : several(count)];
  });
  return t`findings: ${counts.join(", ")}`;
}

type Counted = (count: number) => string;

const LEVELS: Readonly<Record<Severity, readonly [one: Counted, several: Counted]>> = {
  error: [(n) => t`${n} error`, (n) => t`${n} errors`],
  warning: [(n) => t`${n} warning`, (n) => t`${n} warnings`],
  information: [(n) => t`${n} information`, (n) => t`${n} information`],
  hint: [(n) => t`${n} hint`, (n) => t`${n} hints`],
};

const allFigures = (
  ctx: HoverContext,
  result: JobResult,
  money: (amount: number) => string,
  say: ShownFigures,
): readonly string[] => [
  bullets([
    ...dateLines(result),
    figure(result, "total_cost", t`cost`, money),
    figure(result, "saving", t`saving`, money),
    figure(result, "hands_on_h", t`hands-on`, (hours) => `${formatWork(hours)}: ${handsOnSum(result)}`),
    withSum(figure(result, "elapsed_h", t`elapsed`, formatDuration), elapsedSum(result)),
    figure(result, "area_m2", t`area`, (area) => `${say.area(area)}${areaSum(result)}`),
    ...distinctNames(result.needs.map(({ material }) => material)).map((name, index) => {
      const need = result.needs[index]!;
      return nested(needText(result, need, name, say), [needSums(need).join("; ")]);
    }),
    withSum(figure(result, "voc_g", t`VOC`, gramsText), vocSums(result)),
    peakLine(result),
    worstText(result),
    awaitedAir(result),
  ]),
  labourWorking(result),
  costWorking(result),
  savingWorking(ctx, result),
  usedWorking(result),
  pieceWorkings(result),
];

const withSum = (figureText: string, sum: string | undefined): string =>
  sum ? `${figureText}: ${sum}` : figureText;

/** `: top 1.782 m2 × 2 + base 1.1872 m2 × 2` */
function areaSum({ runs }: JobResult): string {
  const terms = runs.map((run) => {
    const area = `${code(run.label)} ${exactArea(run.surface?.areaM2 ?? 0)}`;
    return run.pieces > 1 ? `${area} × ${run.pieces}` : area;
  });
  return terms.length > 0 ? `: ${terms.join(" + ")}` : "";
}

/** `406 g trim + 22 g spirits`, where there are several. */
function vocSums({ needs, totals }: JobResult): string | undefined {
  if (totals.voc_g === null) return undefined;
  const grams = needs.map(({ material, litres }) => (litres ?? 0) * (material.voc?.value ?? 0));
  const texts = gramsThatAddUp(grams, totals.voc_g);
  const terms = needs.flatMap(({ material }, index) =>
    texts.parts[index] === "0 g" ? [] : [`${texts.parts[index]!} ${code(material.name)}`],
  );
  return terms.length > 1 ? terms.join(" + ") : undefined;
}

/** The hour in which most leaves, and what gives it off. */
function peakLine(result: JobResult): string | undefined {
  const peak = jobPeak(result);
  if (!peak) return undefined;
  const lines = peak.lines.map(({ name, grams }) => `${gramsText(grams)} ${code(name)}`);
  const sum = lines.length > 1 ? `: ${lines.join(" + ")}` : "";
  return t`most fumes in an hour ${gramsText(peak.grams)}, from ${peak.from}${sum} (${hoursBasis()})`;
}

/** In place of what the hours of the plan will tell of the air. */
const awaitedAir = (result: JobResult): string | undefined =>
  awaitsRoomAir(result) ? t`fumes by the hour and the air of the room: ${beingPlannedText()}` : undefined;

function worstText(result: JobResult): string | undefined {
  const worst = worstAir(result);
  if (!worst) return undefined;
  const sum = worst.working ? `: ${worst.working}` : "";
  return `${worst.name} ${gramsText(worst.grams)}, ${worst.air}${sum} (${fumesBasis()})`;
}

/** A figure with its name, or what is missing for it: `finish: not known, no \`start\``. */
export function figure<F extends GapField>(
  result: JobResult,
  field: F,
  name: string,
  say: (value: NonNullable<JobResult["totals"][F]>) => string,
): string {
  const value = result.totals[field];
  if (value !== null) return `${name} ${say(value as NonNullable<JobResult["totals"][F]>)}`;
  const gaps = gapsOf(result, field);
  if (awaitsPlan(result, field)) return `${name}: ${beingPlannedText()}`;
  return gaps.length > 0 ? t`${name}: not known, ${gaps.join(", ")}` : t`${name}: not known`;
}

/** One for each date, with what it waits for; one for all where the same keeps all from being known. */
function dateLines(result: JobResult): readonly string[] {
  const dates = jobDates(result);
  const [first] = dates;
  const isOne = dates.every(({ at, reason }) => at === undefined && reason === first?.reason);
  if (isOne && first) return [withSum(t`last work, light use and full use ${first.text}`, first.reason)];
  return dates.map(({ field, name, text, reason }) =>
    withSum(`${translated(name)} ${text}`, (field === "full_use" ? cureSum(result) : undefined) ?? reason),
  );
}

function needText(
  result: JobResult,
  need: JobResult["needs"][number],
  distinctName: string,
  say: ShownFigures,
): string {
  const { litres, containers, cost } = need.totals;
  const name = code(distinctName);
  if (litres === null) return t`${name}: litres not known, ${materialGaps(need).join(", ")}`;
  const onHand = need.onHand > 0 ? t`, ${say.litres(need.onHand)} of it on hand` : "";
  const buy =
    cost === null
      ? `; ${materialGaps(need).join(", ")}`
      : containers.length === 0
        ? t`; nothing to buy`
        : t`; buy ${cansText(containers)} for ${moneyText(cost, result.shop?.currency)}`;
  return `${name} ${say.litres(litres)}${onHand}${buy}`;
}

/** materials 112.00 + labour 41.33 + supplies 18.50 + pieces 120.00 = 291.83 EUR */
function costWorking(result: JobResult): string {
  const { totals, job, shop } = result;
  if (totals.total_cost === null || totals.material_cost === null) return "";
  const labour = totals.labour_cost ?? 0;
  const supplies = suppliesOf(job, result.runs);
  const pieces = totals.total_cost - totals.material_cost - labour - supplies;
  const parts = [
    { name: t`materials`, amount: totals.material_cost },
    { name: t`labour`, amount: labour },
    { name: t`supplies`, amount: supplies },
    { name: t`pieces`, amount: pieces },
  ].filter(({ amount }) => amount >= 0.005);
  if (parts.length < 2) return "";
  const sum = parts.map(({ name, amount }) => `${name} ${moneyText(amount)}`).join(" + ");
  return `${sentence(sum)} = ${moneyText(totals.total_cost, shop?.currency)}.`;
}

/** Labour 3.1667 h × 20.00 = 63.33 EUR. */
function labourWorking({ shop, totals }: JobResult): string {
  const rate = shop?.labourPerH;
  if (!rate || totals.labour_cost === null || totals.hands_on_h === null) return "";
  return t`Labour ${formatNumber(totals.hands_on_h, 4)} h × ${moneyText(rate)} = ${moneyText(totals.labour_cost, shop?.currency)}.`;
}

/** New 2 × 1150.00 − 554.60 = 1745.40 EUR saved. */
function savingWorking(ctx: HoverContext, result: JobResult): string {
  const { job, shop, totals } = result;
  if (totals.saving === null || totals.total_cost === null) return "";
  const pieces = ctx.checker.scope(job.file).pieces;
  const terms = job.pieces.map(({ piece, count }) => {
    const price = moneyText(pieces.get(piece)?.newPrice ?? 0);
    return count > 1 ? `${count} × ${price}` : price;
  });
  const earned = earnedPerHour(totals);
  const hour =
    earned === null
      ? ""
      : t` Without labour that is ${moneyText(earned, shop?.currency)} for each hour of work.`;
  return t`New ${terms.join(" + ")} − ${moneyText(totals.total_cost)} = ${moneyText(totals.saving, shop?.currency)} saved.${hour}`;
}

/** What is used of the whole cans, material by material. */
function usedWorking(result: JobResult): string {
  const used = usedMaterialCost(result);
  const { material_cost } = result.totals;
  if (used === null || material_cost === null || Math.abs(material_cost - used) < 0.005) return "";
  return t`Materials for ${moneyText(material_cost, result.shop?.currency)} are bought in whole cans; ${usedText(used, result)}.`;
}

/** Each reading_table: materials 68.05 + labour 140.00 + supplies 9.25 + bought 60.00 = 277.30 EUR. */
function pieceWorkings(result: JobResult): string {
  const costs = pieceCosts(result);
  if (costs.length === 1 && costs[0]!.count === 1) return "";
  return bullets(costs.map((cost) => pieceWorking(cost, result.shop?.currency)));
}

const PARTS = {
  materials: () => t`materials`,
  labour: () => t`labour`,
  supplies: () => t`supplies`,
  bought: () => t`bought`,
} as const;

export function pieceWorking(cost: PieceCost, currency: string | undefined): string | undefined {
  if (cost.total === null) return undefined;
  const { centMore, count } = cost;
  const odd = centMore > 0 ? t` (${centMore} of the ${count} 0.01 more)` : "";
  const parts = (["materials", "labour", "supplies", "bought"] as const).flatMap((name) =>
    (cost[name] ?? 0) >= 0.005 ? [`${PARTS[name]()} ${moneyText(cost[name]!)}`] : [],
  );
  const saved =
    cost.saving === null ? "" : t`; a new one costs ${moneyText(cost.saving + cost.total, currency)}`;
  return t`each ${code(cost.piece)}: ${parts.join(" + ")} = ${moneyText(cost.total, currency)}${odd}${saved}`;
}
