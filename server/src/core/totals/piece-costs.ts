/**
 * What a job's money comes to for one piece, and what its materials are worth by what is used of them.
 *
 * Cans are bought whole, so a small job pays for what stays in them; the worth of what is used tells how much of that
 * is spent. Nothing here changes the totals: the pieces' costs, times their counts, add up to them.
 */
import type { Piece } from "../model/model.ts";
import type { JobResult, MaterialNeed } from "./job-totals.ts";
import { sum, sumOrNull } from "./sums.ts";
import { actionHours } from "./task-plan.ts";

/** What one of a job's pieces costs, in the currency of the shop; `null` where the text does not state enough. */
export interface PieceCost {
  readonly piece: string;
  readonly count: number;
  /** Its share of the whole containers, by the litres that its surfaces take. */
  readonly materials: number | null;
  /** Its hands-on hours at the shop's rate; 0 where no rate is stated. */
  readonly labour: number;
  /** An even share. */
  readonly supplies: number;
  /** What it cost; 0 in a job after another, which paid for it. */
  readonly bought: number;
  readonly total: number | null;
  readonly newPrice?: number;
  readonly saving: number | null;
}

/**
 * What the litres of a job are worth: litres of each material · the price of a litre in the containers bought for it,
 * or, where all is on hand, in the size that is cheapest by the litre. `null` where a price or an amount is unknown.
 */
export function usedMaterialCost(result: JobResult): number | null {
  return result.totals.material_cost === null ? null : sumOrNull(result.needs.map(usedCost));
}

function usedCost({ litres, material, totals }: MaterialNeed): number | null {
  if (litres === undefined) return null;
  const boughtL = sum(totals.containers.map((container) => container.litres * container.count));
  if (boughtL > 0 && totals.cost !== null) return (litres * totals.cost) / boughtL;
  const prices = material.sold.map(({ litres: size, price }) => price / size);
  return prices.length === 0 ? null : litres * Math.min(...prices);
}

/** The cost of one of each kind of piece that a job works on, in the order of its `piece` lines. */
export function pieceCosts(result: JobResult): readonly PieceCost[] {
  const counts = new Map<string, number>();
  for (const { piece, count } of result.job.pieces) counts.set(piece, (counts.get(piece) ?? 0) + count);
  const all = sum([...counts.values()]);
  return [...counts].flatMap(([name, count]) => {
    const runs = result.runs.filter(({ piece }) => piece?.name === name);
    const piece = runs[0]?.piece;
    return piece && count > 0 ? [costOfOne(result, piece, count, all)] : [];
  });
}

function costOfOne(result: JobResult, piece: Piece, count: number, all: number): PieceCost {
  const { job, shop, totals } = result;
  const runs = result.runs.filter((run) => run.piece?.name === piece.name);
  const hours = sum(
    runs.map((run) => sum(run.moments.map(({ action }) => actionHours(run, action))) * run.pieces),
  );
  const materials =
    totals.material_cost === null ? null : sum(result.needs.map((need) => shareOf(need, piece.name))) / count;
  const labour = ((shop?.labourPerH ?? 0) * hours) / count;
  const supplies = (job.supplies?.value ?? 0) / all;
  const bought = job.after ? 0 : (piece.bought ?? 0);
  const total = materials === null ? null : materials + labour + supplies + bought;
  return {
    piece: piece.name,
    count,
    materials,
    labour,
    supplies,
    bought,
    total,
    ...(piece.newPrice === undefined ? {} : { newPrice: piece.newPrice }),
    saving: total === null || piece.newPrice === undefined ? null : piece.newPrice - total,
  };
}

/** The part of a material's cost that falls to the surfaces of one kind of piece. */
function shareOf({ draws, litres, totals }: MaterialNeed, piece: string): number {
  if (!totals.cost || !litres) return 0;
  const own = draws.filter((draw) => draw.run.piece?.name === piece);
  return (totals.cost * sum(own.map((draw) => draw.litres ?? 0))) / litres;
}
