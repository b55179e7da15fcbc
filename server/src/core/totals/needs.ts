/**
 * How much of every material a job takes, spare included, by material and by line.
 */
import { isNeverListed } from "../knowledge/built-in-materials.ts";
import { formatNumber } from "../measure/format-amount.ts";
import type { Job, Material } from "../model/model.ts";
import {
  layerLitres,
  type Method,
  mixLitres,
  stepLitres,
  TRANSFER_EFFICIENCY,
} from "../quantities/litres.ts";
import type { Action, LayerAction, StepAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";

/** Litres that one action takes of one material on all pieces of its run. */
export interface Draw {
  readonly material: Material;
  /** Undefined: neither the line nor the material says how far it goes. */
  readonly litres?: number;
  readonly run: SurfaceRun;
  readonly action: Action;
  /** The sum with its numbers filled in; of a mix, of the whole mix. */
  readonly working: string;
  /** Of a mix, how much of it this material is: ` × 4/5`. */
  readonly part?: string;
}

export interface Need {
  readonly material: Material;
  /** Undefined when one of its draws is. */
  readonly litres?: number;
  readonly draws: readonly Draw[];
}

/** All draws of a job, in the order of surfaces and actions. Soap and water are not listed. */
export function jobDraws(job: Job, runs: readonly SurfaceRun[]): readonly Draw[] {
  const draws = runs.flatMap((run) =>
    run.moments.flatMap(({ action }) => {
      if (action.op === "layer") return layerDraws(job, run, action);
      if (action.op === "step") return stepDraws(job, run, action);
      return [];
    }),
  );
  return draws.filter(({ material }) => !(material.builtIn && isNeverListed(material.name)));
}

/** Draws added up by material, in the order of first use. */
export function jobNeeds(draws: readonly Draw[]): readonly Need[] {
  const byMaterial = new Map<Material, Draw[]>();
  for (const draw of draws) {
    const list = byMaterial.get(draw.material);
    if (list) list.push(draw);
    else byMaterial.set(draw.material, [draw]);
  }
  return [...byMaterial].map(([material, list]): Need => {
    const known = list.every((draw) => draw.litres !== undefined);
    const litres = list.reduce((sum, draw) => sum + (draw.litres ?? 0), 0);
    return { material, draws: list, ...(known ? { litres } : {}) };
  });
}

export const methodOf = (method: string): Method =>
  Object.hasOwn(TRANSFER_EFFICIENCY, method) ? (method as Method) : "brush";

function layerDraws(job: Job, run: SurfaceRun, action: LayerAction): readonly Draw[] {
  const material = action.use.material;
  if (!material || !run.surface) return [];
  const covers = material.covers?.value;
  if (covers === undefined && action.wetUm === undefined) {
    return [{ material, run, action, working: "the material states no spreading rate" }];
  }
  const litres = layerLitres({
    areaM2: run.surface.areaM2,
    pieces: run.pieces,
    coats: 1,
    ...(covers !== undefined ? { coversM2PerL: covers } : {}),
    ...(action.wetUm !== undefined ? { wetUm: action.wetUm } : {}),
    method: methodOf(action.method),
    sparePercent: job.spare.value,
    ...(action.thinned ? { thinned: { a: action.thinned.a, b: action.thinned.b } } : {}),
    ...(action.tinted ? { tintPercent: action.tinted.percent } : {}),
  });
  const draw = (of: Material | undefined, amount: number, part: string): readonly Draw[] =>
    of && amount > 0
      ? [{ material: of, litres: amount, run, action, working: litres.working, ...(part ? { part } : {}) }]
      : [];
  const { hardener, thinned, tinted } = action;
  const untinted = tinted ? ` × ${formatNumber(1 - tinted.percent / 100, 4)}` : "";
  const parts = (of: number, a: number, b: number): string =>
    ` × ${formatNumber(of, 2)}/${formatNumber(a + b, 2)}`;
  const unthinned = untinted + (thinned ? parts(thinned.a, thinned.a, thinned.b) : "");
  const own = hardener
    ? mixLitres(litres.materialL, hardener.a, hardener.b)
    : { materialL: litres.materialL, hardenerL: 0 };
  return [
    ...draw(material, own.materialL, unthinned + (hardener ? parts(hardener.a, hardener.a, hardener.b) : "")),
    ...draw(
      hardener?.use.material,
      own.hardenerL,
      unthinned + (hardener ? parts(hardener.b, hardener.a, hardener.b) : ""),
    ),
    ...draw(
      thinned?.thinner.material,
      litres.thinnerL,
      untinted + (thinned ? parts(thinned.b, thinned.a, thinned.b) : ""),
    ),
    ...draw(tinted?.tint.material, litres.tintL, tinted ? ` × ${formatNumber(tinted.percent, 2)} %` : ""),
  ];
}

function stepDraws(job: Job, run: SurfaceRun, action: StepAction): readonly Draw[] {
  const material = action.use?.material;
  if (!material || !run.surface) return [];
  // Only a spreading rate that the material itself states: a family's is for layers.
  const covers = material.covers?.origin === "stated" ? material.covers.value : undefined;
  const { litres, working } = stepLitres({
    areaM2: run.surface.areaM2,
    pieces: run.pieces,
    ...(covers !== undefined ? { coversM2PerL: covers } : {}),
    ...(action.usesLitres !== undefined ? { usesL: action.usesLitres } : {}),
    sparePercent: job.spare.value,
    onlyAsStated: action.verb === "fill",
  });
  return litres > 0 ? [{ material, litres, run, action, working }] : [];
}
