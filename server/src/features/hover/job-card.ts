/** The card of a job: what it takes and costs, when it is done, and what is missing to reckon the rest. */
import type { Job } from "../../core/model/model.ts";
import { sentence } from "../../core/sentence.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { type PieceCost, pieceCosts, usedMaterialCost } from "../../core/totals/piece-costs.ts";
import { FUMES_BASIS, worstShift } from "../fumes-facts.ts";
import { type GapField, gapsOf, materialGaps } from "../job-gaps.ts";
import { areaText, containersText, hoursText, litresText, momentText, moneyText } from "../spoken.ts";
import { bullets, code, type HoverContext, heading, paragraphs } from "./context.ts";

export function jobCard(ctx: HoverContext, job: Job): string {
  const result = ctx.checker.job(job);
  const { totals, shop } = result;
  const money = (amount: number): string => moneyText(amount, shop?.currency);
  return paragraphs(
    heading(job.name, job.title, "a job"),
    job.docs,
    bullets([
      `area ${areaText(totals.area_m2)}`,
      ...result.needs.map((need) => needText(result, need)),
      `hands-on ${hoursText(totals.hands_on_h)}`,
      figure(result, "elapsed_h", "elapsed", hoursText),
      figure(result, "finish", "finish", momentText),
      figure(result, "in_service", "in service", momentText),
      figure(result, "voc_g", "VOC", (grams) => `${Math.round(grams)} g`),
      worstText(result),
      figure(result, "total_cost", "cost", money),
      figure(result, "saving", "saving", money),
    ]),
    costWorking(result),
    usedWorking(result),
    pieceWorkings(result),
  );
}

function worstText(result: JobResult): string | undefined {
  const worst = worstShift(result);
  return worst && `${worst.name} ${Math.round(worst.grams)} g, ${worst.air} (${FUMES_BASIS})`;
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
  return `${name}: not known${gaps.length > 0 ? `, ${gaps.join(", ")}` : ""}`;
}

function needText(result: JobResult, need: JobResult["needs"][number]): string {
  const { litres, containers, cost } = need.totals;
  const name = code(need.material.name);
  if (litres === null) return `${name}: litres not known, ${materialGaps(need).join(", ")}`;
  const onHand = need.onHand > 0 ? `, ${litresText(need.onHand)} of it on hand` : "";
  const buy =
    cost === null
      ? `; ${materialGaps(need).join(", ")}`
      : containers.length === 0
        ? "; nothing to buy"
        : `; buy ${containersText(containers)} for ${moneyText(cost, result.shop?.currency)}`;
  return `${name} ${litresText(litres)}${onHand}${buy}`;
}

/** materials 112.00 + labour 41.33 + supplies 18.50 + pieces 120.00 = 291.83 EUR */
function costWorking(result: JobResult): string {
  const { totals, job, shop } = result;
  if (totals.total_cost === null || totals.material_cost === null) return "";
  const labour = totals.labour_cost ?? 0;
  const supplies = job.supplies?.value ?? 0;
  const pieces = totals.total_cost - totals.material_cost - labour - supplies;
  const parts = [
    { name: "materials", amount: totals.material_cost },
    { name: "labour", amount: labour },
    { name: "supplies", amount: supplies },
    { name: "pieces", amount: pieces },
  ].filter(({ amount }) => amount >= 0.005);
  if (parts.length < 2) return "";
  const sum = parts.map(({ name, amount }) => `${name} ${moneyText(amount, undefined)}`).join(" + ");
  return `${sentence(sum)} = ${moneyText(totals.total_cost, shop?.currency)}.`;
}

/** What is used of the whole cans, material by material. */
function usedWorking(result: JobResult): string {
  const used = usedMaterialCost(result);
  const { material_cost } = result.totals;
  if (used === null || material_cost === null || Math.abs(material_cost - used) < 0.005) return "";
  const money = (amount: number): string => moneyText(amount, result.shop?.currency);
  const stock = result.needs.some(({ onHand }) => onHand > 0) ? ", what was on hand included" : "";
  return `Materials for ${money(material_cost)} are bought in whole cans; ${money(used)} worth is used${stock}.`;
}

/** Each reading_table: materials 68.05 + labour 140.00 + supplies 9.25 + bought 60.00 = 277.30 EUR. */
function pieceWorkings(result: JobResult): string {
  const costs = pieceCosts(result);
  if (costs.length === 1 && costs[0]!.count === 1) return "";
  return bullets(costs.map((cost) => pieceWorking(cost, result.shop?.currency)));
}

function pieceWorking(cost: PieceCost, currency: string | undefined): string | undefined {
  if (cost.total === null) return undefined;
  const parts = (["materials", "labour", "supplies", "bought"] as const).flatMap((name) =>
    (cost[name] ?? 0) >= 0.005 ? [`${name} ${moneyText(cost[name]!, undefined)}`] : [],
  );
  const saved =
    cost.saving === null ? "" : `; a new one costs ${moneyText(cost.saving + cost.total, currency)}`;
  return `each ${code(cost.piece)}: ${parts.join(" + ")} = ${moneyText(cost.total, currency)}${saved}`;
}
