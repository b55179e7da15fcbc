/**
 * What to buy for several jobs together: litres are added up material by material, what is on hand is taken off once,
 * and only then cans are chosen, so that two jobs share one can.
 */
import type { Material } from "../core/model/model.ts";
import { cheapestContainers } from "../core/quantities/containers.ts";
import type { JobResult, MaterialNeed } from "../core/totals/job-totals.ts";
import type { ContainerCount } from "../core/totals/types.ts";
import { materialGaps } from "./job-gaps.ts";

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

/** Items in the order in which the jobs first need them. */
export function shoppingList(results: readonly JobResult[]): readonly ShoppingItem[] {
  const needs = new Map<Material, { readonly result: JobResult; readonly need: MaterialNeed }[]>();
  for (const result of results) {
    for (const need of result.needs) {
      needs.set(need.material, [...(needs.get(need.material) ?? []), { result, need }]);
    }
  }
  const names = new Set(results.map(({ job }) => job.name));
  return [...needs].map(([material, list]) => itemOf(material, list, names));
}

function itemOf(
  material: Material,
  list: readonly { readonly result: JobResult; readonly need: MaterialNeed }[],
  names: ReadonlySet<string>,
): ShoppingItem {
  const litres = list.every(({ need }) => need.litres !== undefined)
    ? list.reduce((sum, { need }) => sum + need.litres!, 0)
    : null;
  // A job after another of the list finds what that leaves; only the first finds what is in the cupboard.
  const first = list.find(({ result }) => !result.job.after || !names.has(result.job.after.job)) ?? list[0]!;
  const { onHand } = first.need;
  const base = { material, litres, onHand, jobs: list.map(({ result }) => result.job.name) };
  const gaps = [
    ...new Set(list.flatMap(({ need }) => (need.litres === undefined ? materialGaps(need) : []))),
  ];
  if (litres === null) return { ...base, containers: [], cost: null, gaps };
  const short = litres - onHand;
  if (short <= 1e-9) return { ...base, containers: [], cost: 0, gaps };
  if (material.sold.length === 0) {
    return { ...base, containers: [], cost: null, gaps: [...gaps, `no \`sold\` for \`${material.name}\``] };
  }
  const containers = cheapestContainers(short, material.sold);
  return {
    ...base,
    containers,
    cost: containers.reduce((sum, { count, price }) => sum + count * price, 0),
    gaps,
  };
}
