/**
 * What the record of a job changes in its sums: what was really used in place of what was planned for it, hours as they
 * were taken, and cans as they were bought.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { cents } from "../measure/figures.ts";
import type { Job, JobRecord, Material } from "../model/model.ts";
import type { Action } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { type Draw, jobDraws, jobNeeds, type Need } from "./needs.ts";
import { taskId } from "./planned-tasks.ts";
import { sum } from "./sums.ts";
import { actionHours, type SessionWork } from "./task-plan.ts";
import type { JobTotals, MaterialTotals } from "./types.ts";

/** What a job with a record takes and has taken, and what that leaves; `price` buys what is missing beyond so many litres. */
export function recordedNeeds<N extends StockedNeed>(
  job: Job,
  runs: readonly SurfaceRun[],
  planned: readonly N[],
  priceOf: (need: Need) => N,
  price: (need: Need, onHand: number) => N,
): { readonly draws: readonly Draw[]; readonly needs: readonly N[]; readonly stock: readonly StockNow[] } {
  const draws = recordedDraws(jobDraws(job, runs));
  const used = usedSoFar(draws);
  const paid = paidFor(job, runs);
  const needs = jobNeeds(draws).map((need): N => {
    const alone = priceOf(need);
    if (!used.has(need.material)) return alone;
    const before = planned.find(({ material }) => material === need.material)?.totals;
    const more = price(need, alone.onHand + (before ? litresIn(before) : 0)).totals;
    return { ...alone, totals: { ...more, ...boughtOf(before, more, paid.get(need.material)) } };
  });
  return { draws, needs, stock: needs.map((need) => stockNow(need, used, planned)) };
}

/** The draws of one action with what was really used of it: the rest of the pieces as planned. */
function recordedDraws(draws: readonly Draw[]): readonly Draw[] {
  const mixes = mixedLitres(draws);
  return draws.map((draw) => {
    const used = usedOf(draw.run, draw.action, mixes.get(draw.action)!);
    if (!used) return draw;
    const litres = draw.litres === undefined ? used.litres : draw.litres * used.factor;
    const { litres: _, ...rest } = draw;
    return { ...rest, working: t`by the record`, ...(Number.isFinite(litres) ? { litres } : {}) };
  });
}

/** Litres of the whole mix of an action; not a number where a part of it is not known. */
function mixedLitres(draws: readonly Draw[]): ReadonlyMap<Action, number> {
  const mixes = new Map<Action, number>();
  for (const { action, litres } of draws)
    mixes.set(action, (mixes.get(action) ?? 0) + (litres ?? Number.NaN));
  return mixes;
}

/** Of the whole mix, all pieces; undefined where it is as planned. */
function usedOf(
  { record, pieces }: SurfaceRun,
  { index }: Action,
  planned: number,
): { readonly litres: number; readonly factor: number } | undefined {
  const done = record?.done.map((ofPiece) => ofPiece.get(index));
  if (!done?.some((each) => each?.usedLitres !== undefined || each?.leftOut)) return undefined;
  const litres = sum(done.map((each) => (each?.leftOut ? 0 : (each?.usedLitres ?? planned / pieces))));
  return { litres, factor: planned > 0 ? litres / planned : 1 };
}

/** Litres of every material that are in what is done. */
function usedSoFar(draws: readonly Draw[]): ReadonlyMap<Material, number> {
  const used = new Map<Material, number>();
  const mixes = mixedLitres(draws);
  for (const { run, action, material, litres } of draws) {
    const done = run.record?.done.map((ofPiece) => ofPiece.get(action.index));
    if (!done?.some((each) => each && !each.leftOut)) continue;
    const all = mixes.get(action)!;
    const known = sum(done.map((each) => each?.usedLitres ?? 0));
    // What is not measured shares the rest alike, done or not.
    const open = done.filter((each) => each?.usedLitres === undefined && !each?.leftOut);
    const isDone = open.filter((each) => each !== undefined).length;
    const part = open.length === 0 ? 1 : (known + ((all - known) * isDone) / open.length) / all;
    used.set(material, (used.get(material) ?? 0) + (litres ?? 0) * part);
  }
  return used;
}

/**
 * Hands-on hours: in all, with those of the record in place of the planned ones, and of what is done. Where no hours are stated
 * they are those of the plan that had it: `asPlanned` before anything was done, `left` of the rest.
 */
export function recordedHours(
  runs: readonly SurfaceRun[],
  plans: { readonly asPlanned?: SessionWork | undefined; readonly left?: SessionWork | undefined } = {},
): { readonly all: number; readonly done: number } {
  let all = 0;
  let done = 0;
  for (const run of runs) {
    for (let piece = 0; piece < run.pieces; piece += 1) {
      const taken = hoursTaken(run, piece);
      for (const [index, { action }] of run.moments.entries()) {
        const id = taskId({ run, piece, index });
        const { tookHours, leftOut } = run.record?.done[piece]?.get(index) ?? {};
        const isAsPlanned = taken.has(index) && tookHours === undefined && !leftOut;
        const hours = (isAsPlanned ? plans.asPlanned?.tasks.get(id) : undefined) ?? taken.get(index);
        all += hours ?? plans.left?.tasks.get(id) ?? actionHours(run, action);
        done += hours ?? 0;
      }
    }
  }
  return { all, done };
}

/**
 * Hours of what is done on a piece, by index: those that a line states are shared by all that it stands for as their planned
 * hours are to each other; without any, the planned ones.
 */
export function hoursTaken(run: SurfaceRun, piece: number): ReadonlyMap<number, number> {
  const done = [...(run.record?.done[piece] ?? [])];
  const planned = ([index, { leftOut }]: (typeof done)[number]): number =>
    leftOut ? 0 : actionHours(run, run.moments[index]!.action);
  const ofLine = new Map<JobRecord, number>();
  for (const each of done) ofLine.set(each[1].record, (ofLine.get(each[1].record) ?? 0) + planned(each));
  return new Map(
    done.map((each) => {
      const [index, { record, tookHours, isNamed }] = each;
      const whole = ofLine.get(record)!;
      if (tookHours === undefined) return [index, planned(each)];
      return [index, whole > 0 ? (tookHours * planned(each)) / whole : isNamed ? tookHours : 0];
    }),
  );
}

/** What was paid by the record, by material. */
function paidFor(job: Job, runs: readonly SurfaceRun[]): ReadonlyMap<Material, number> {
  const paid = new Map<Material, number>();
  for (const record of job.records) {
    const amount = record.facts.paid;
    const material = amount === undefined ? undefined : materialOf(record.place.span.start, runs);
    if (amount !== undefined && material) paid.set(material, (paid.get(material) ?? 0) + amount);
  }
  return paid;
}

function materialOf(start: number, runs: readonly SurfaceRun[]): Material | undefined {
  for (const run of runs) {
    for (const done of run.record?.done ?? []) {
      for (const [index, { record, isNamed }] of done) {
        const { action } = run.moments[index]!;
        if (!isNamed || record.place.span.start !== start || (action.op !== "layer" && action.op !== "step"))
          continue;
        return action.use?.material;
      }
    }
  }
  return undefined;
}

/**
 * What is bought of a material: the cans of the plan count as bought once it is in use, and more are bought where that
 * turns out to be too little.
 */
function boughtOf(
  planned: MaterialTotals | undefined,
  more: MaterialTotals,
  paid: number | undefined,
): Pick<MaterialTotals, "containers" | "cost"> {
  const containers = [...(planned?.containers ?? [])];
  for (const can of more.containers) {
    const at = containers.findIndex((each) => isSameCan(each, can));
    if (at < 0) containers.push(can);
    else containers[at] = { ...can, count: can.count + containers[at]!.count };
  }
  const first = paid ?? planned?.cost ?? 0;
  return { containers, cost: more.cost === null ? null : cents(first + more.cost) };
}

type Can = MaterialTotals["containers"][number];

const isSameCan = (a: Can, b: Can): boolean => a.litres === b.litres && a.price === b.price;

/** Litres in the cans of a material. */
const litresIn = ({ containers }: Pick<MaterialTotals, "containers">): number =>
  sum(containers.map(({ litres, count }) => litres * count));

/** Planned against actual. Hours are hands-on, money in the shop's currency; null: not known. */
export interface RecordSums {
  /** When the last work of the record ended, and from when the rest is planned; local ISO. */
  readonly lastAt: string;
  readonly from: string;
  readonly planned: Pick<JobTotals, "hands_on_h" | "material_cost" | "labour_cost" | "total_cost">;
  readonly doneHours: number;
  /** By material: used by what is done, bought so far, in stock now, still to buy. */
  readonly stock: readonly StockNow[];
}

export interface StockNow {
  readonly material: Material;
  readonly usedL: number;
  readonly boughtL: number;
  readonly nowL: number;
  readonly toBuy: MaterialTotals["containers"];
}

export interface StockedNeed extends Need {
  readonly onHand: number;
  readonly totals: MaterialTotals;
}

/** What stands in the shop of a material now, and what is still to buy of it. */
function stockNow(
  { material, onHand, totals }: StockedNeed,
  used: ReadonlyMap<Material, number>,
  planned: readonly StockedNeed[],
): StockNow {
  const usedL = used.get(material);
  const before = planned.find((need) => need.material === material)?.totals;
  const missing = Math.max(0, (usedL ?? 0) - onHand - (before ? litresIn(before) : 0));
  const bought = usedL === undefined ? 0 : missing > 1e-9 || !before ? litresIn(totals) : litresIn(before);
  const toBuy = usedL === undefined ? totals.containers : [];
  const more = usedL !== undefined && litresIn(totals) - bought > 1e-9;
  return {
    material,
    usedL: usedL ?? 0,
    boughtL: bought,
    nowL: Math.max(0, onHand + bought - (usedL ?? 0)),
    toBuy: more ? cansBeyond(totals.containers, before?.containers ?? []) : toBuy,
  };
}

const cansBeyond = (
  all: MaterialTotals["containers"],
  before: MaterialTotals["containers"],
): MaterialTotals["containers"] =>
  all.flatMap((can) => {
    const had = before.find((each) => isSameCan(each, can))?.count ?? 0;
    return can.count > had ? [{ ...can, count: can.count - had }] : [];
  });
