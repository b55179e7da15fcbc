/**
 * What a job's money comes to for one piece, and what its materials are worth by what is used of them.
 *
 * Cans are bought whole, so a small job pays for what stays in them; the worth of what is used tells how much of that
 * is spent. Nothing here changes the totals: the pieces' costs, times their counts, add up to them to the cent.
 */
import { groupedBy } from "../grouped.ts";
import { cents } from "../measure/figures.ts";
import { roundedParts } from "../measure/rounded-parts.ts";
import type { Piece } from "../model/model.ts";
import type { SurfaceRun } from "../surface/run.ts";
import type { JobResult, MaterialNeed } from "./job-totals.ts";
import { sum, sumOrNull } from "./sums.ts";
import { stepCosts } from "./supplies.ts";
import { actionHours } from "./task-plan.ts";

/** What one of a job's pieces costs, in the currency of the shop; `null` where the text does not state enough. */
export interface PieceCost {
  readonly piece: string;
  readonly count: number;
  /** Its share of the whole containers, by the litres that its surfaces take. */
  readonly materials: number | null;
  /** Its hands-on hours at the shop's rate; 0 where no rate is stated. */
  readonly labour: number | null;
  /** An even share, and what its own steps cost. */
  readonly supplies: number;
  /** What it cost; 0 in a job after another, which paid for it. */
  readonly bought: number;
  readonly total: number | null;
  /** So many of them cost a cent more, where the whole cannot be divided into equal cents. */
  readonly centMore: number;
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

/**
 * The cost of one of each kind of piece that a job works on, in the order of its `piece` lines. In whole cents: the parts
 * of one add up to its total, and the totals times their counts, with `centMore`, to the cost of the job.
 */
export function pieceCosts(result: JobResult): readonly PieceCost[] {
  const { job, shop, totals } = result;
  const counts = new Map<string, number>();
  for (const { piece, count } of job.pieces) counts.set(piece, (counts.get(piece) ?? 0) + count);
  const all = sum([...counts.values()]);
  const runsOf = groupedBy(result.runs, ({ piece }) => piece?.name);
  const kinds = [...counts].flatMap(([name, count]) => {
    const runs = runsOf.get(name) ?? [];
    const piece = runs[0]?.piece;
    return piece && count > 0 ? [{ piece, count, runs }] : [];
  });
  const rate = shop?.labourPerH ?? 0;
  const hoursOf = (run: SurfaceRun): number =>
    sum(run.moments.map(({ action }) => actionHours(run, action))) * run.pieces;
  // What is set up for all is shared as their hours by themselves are to each other.
  const apart = sum(result.runs.map(hoursOf));
  const paid = apart > 0 ? (rate * (totals.hands_on_h ?? apart)) / apart : 0;
  const shareOf = result.needs.map(needShares);
  const materials = kinds.map(({ piece }) => sum(shareOf.map((share) => share(piece.name))));
  // Where all pieces are worked on, their parts are all of it.
  const isAll = sum(kinds.map(({ count }) => count)) === all;
  const shares = {
    materials: roundedParts(materials, 2, (isAll && totals.material_cost) || undefined),
    labour: roundedParts(
      kinds.map(({ runs }) => paid * sum(runs.map(hoursOf))),
      2,
      (isAll && totals.labour_cost) || undefined,
    ),
    supplies: roundedParts(
      kinds.map(({ count, runs }) => ((job.supplies?.value ?? 0) * count) / all + stepCosts(runs)),
      2,
    ),
  };
  const isUnpaid = totals.hands_on_h === null && rate > 0;
  return kinds.map(({ piece, count }, index) =>
    costOfOne(piece, count, {
      materials: totals.material_cost === null ? null : shares.materials[index]!,
      labour: isUnpaid ? null : shares.labour[index]!,
      supplies: shares.supplies[index]!,
      bought: job.after ? 0 : (piece.bought ?? 0) * count,
    }),
  );
}

const PARTS = ["materials", "labour", "supplies", "bought"] as const;

/** `together`: of all of its kind, in whole cents. */
function costOfOne(
  piece: Piece,
  count: number,
  together: Readonly<Record<(typeof PARTS)[number], number | null>>,
): PieceCost {
  const values = PARTS.map((part) => together[part] ?? 0);
  const isKnown = PARTS.every((part) => together[part] !== null);
  const wholeCents = Math.round(sum(values) * 100);
  const each = Math.floor(wholeCents / count) / 100;
  const parts = roundedParts(
    values.map((value) => value / count),
    2,
    each,
  );
  const part = (name: (typeof PARTS)[number]): number => parts[PARTS.indexOf(name)]!;
  return {
    piece: piece.name,
    count,
    materials: together.materials === null ? null : part("materials"),
    labour: together.labour === null ? null : part("labour"),
    supplies: part("supplies"),
    bought: part("bought"),
    total: isKnown ? each : null,
    centMore: isKnown ? wholeCents % count : 0,
    ...(piece.newPrice === undefined ? {} : { newPrice: piece.newPrice }),
    saving: !isKnown || piece.newPrice === undefined ? null : cents(piece.newPrice - each),
  };
}

/** The part of a material's cost that falls to the surfaces of one kind of piece. */
function needShares({ draws, litres, totals }: MaterialNeed): (piece: string) => number {
  const { cost } = totals;
  if (!cost || !litres) return () => 0;
  const drawsOf = groupedBy(draws, ({ run }) => run.piece?.name);
  return (piece) => (cost * sum((drawsOf.get(piece) ?? []).map((draw) => draw.litres ?? 0))) / litres;
}
