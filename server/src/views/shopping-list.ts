/**
 * What to buy for several jobs together: litres are added up material by material, what is on hand is taken off once,
 * and only then cans are chosen, so that two jobs share one can.
 *
 * Prices are in the currency of the shop in which a job is done. Jobs of two currencies buy apart, and their money is
 * never added up; a job that says no currency buys with the others as long as these have but one.
 */
import { t } from "../../../grammar/src/translate.ts";
import { cents } from "../core/measure/figures.ts";
import type { Material } from "../core/model/model.ts";
import { cheapestContainers } from "../core/quantities/containers.ts";
import type { JobResult, MaterialNeed } from "../core/totals/job-totals.ts";
import type { ContainerCount } from "../core/totals/types.ts";
import { materialGaps } from "./missing-inputs.ts";

export interface ShoppingItem {
  readonly material: Material;
  /** Null: one of the jobs' needs is not known. */
  readonly litres: number | null;
  readonly onHand: number;
  readonly containers: readonly ContainerCount[];
  /** Null: not known, or the material does not say how it is sold. */
  readonly cost: number | null;
  readonly jobs: readonly string[];
  /** Why something is not known. */
  readonly gaps: readonly string[];
}

/** What is bought in one currency. */
export interface ShoppingBasket {
  readonly currency?: string;
  /** In the order in which the jobs first need them. */
  readonly items: readonly ShoppingItem[];
  /** Null where the cost of an item is not known. */
  readonly cost: number | null;
  /** Of the items whose cost is known. */
  readonly knownCost: number;
}

interface JobNeed {
  readonly result: JobResult;
  readonly need: MaterialNeed;
}

/** A basket for every currency, in the order of the jobs; one without items for no jobs. */
export function shoppingList(results: readonly JobResult[]): readonly ShoppingBasket[] {
  const currencies = new Set(results.flatMap(({ shop }) => shop?.currency ?? []));
  const only = currencies.size === 1 ? [...currencies][0] : undefined;
  const groups = new Map<string | undefined, JobResult[]>(results.length === 0 ? [[only, []]] : []);
  for (const result of results) {
    const currency = only ?? result.shop?.currency;
    groups.set(currency, [...(groups.get(currency) ?? []), result]);
  }
  const stock = stockBefore(results);
  return [...groups].map(([currency, group]) => basketOf(currency, group, stock));
}

/**
 * What is in stock before all these jobs. A job after another of the list finds what that leaves, so it is not
 * asked; where several others find different amounts, the least counts, so that nothing is missing.
 */
function stockBefore(results: readonly JobResult[]): Map<Material, number> {
  const listed = new Set(results.map(({ job }) => job.name));
  const isFirst = ({ job }: JobResult): boolean => !job.after || !listed.has(job.after.job);
  const stock = new Map<Material, number>();
  for (const [material, needs] of needsByMaterial(results)) {
    const first = needs.filter(({ result }) => isFirst(result));
    const asked = first.length > 0 ? first : needs.slice(0, 1);
    stock.set(material, Math.min(...asked.map(({ need }) => need.onHand)));
  }
  return stock;
}

function needsByMaterial(results: readonly JobResult[]): ReadonlyMap<Material, readonly JobNeed[]> {
  const needs = new Map<Material, JobNeed[]>();
  for (const result of results) {
    for (const need of result.needs) {
      const list = needs.get(need.material);
      if (list) list.push({ result, need });
      else needs.set(need.material, [{ result, need }]);
    }
  }
  return needs;
}

/** What it takes from the stock is gone for the next basket. */
function basketOf(
  currency: string | undefined,
  results: readonly JobResult[],
  stock: Map<Material, number>,
): ShoppingBasket {
  const items = [...needsByMaterial(results)].map(([material, needs]) => {
    const onHand = stock.get(material) ?? 0;
    const item = itemOf(material, needs, onHand);
    stock.set(material, item.litres === null ? 0 : Math.max(0, onHand - item.litres));
    return item;
  });
  const knownCost = cents(items.reduce((sum, { cost }) => sum + (cost ?? 0), 0));
  return {
    ...(currency === undefined ? {} : { currency }),
    items,
    cost: items.every(({ cost }) => cost !== null) ? knownCost : null,
    knownCost,
  };
}

function itemOf(material: Material, needs: readonly JobNeed[], onHand: number): ShoppingItem {
  const litres = needs.every(({ need }) => need.litres !== undefined)
    ? needs.reduce((sum, { need }) => sum + need.litres!, 0)
    : null;
  const base = { material, litres, onHand, jobs: needs.map(({ result }) => result.job.name) };
  const gaps = [
    ...new Set(needs.flatMap(({ need }) => (need.litres === undefined ? materialGaps(need) : []))),
  ];
  if (litres === null) return { ...base, containers: [], cost: null, gaps };
  const short = litres - onHand;
  if (short <= 1e-9) return { ...base, containers: [], cost: 0, gaps };
  if (material.sold.length === 0) {
    return { ...base, containers: [], cost: null, gaps: [...gaps, t`no \`packs\` for \`${material.name}\``] };
  }
  const containers = cheapestContainers(short, material.sold);
  return {
    ...base,
    containers,
    cost: cents(containers.reduce((sum, { count, price }) => sum + count * price, 0)),
    gaps,
  };
}
