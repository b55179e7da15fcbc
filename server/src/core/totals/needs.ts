/**
 * How much of every material a job takes, spare included, by material and by line.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { isNeverListed } from "../knowledge/built-in-materials.ts";
import { formatNumber } from "../measure/format-amount.ts";
import type { Job, Material } from "../model/model.ts";
import { onceFor } from "../once.ts";
import { laydownOf } from "../quantities/laydown.ts";
import {
  layerLitres,
  type Method,
  mixLitres,
  stepLitres,
  TRANSFER_EFFICIENCY,
} from "../quantities/litres.ts";
import type { Action, LayerAction, MaterialUse, StepAction } from "../surface/actions.ts";
import { workedAreaM2 } from "../surface/part-of-surface.ts";
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
  /** The materials that state no density, where the parts of the mix are weighed. */
  readonly undensed?: readonly Material[];
}

export interface Need {
  readonly material: Material;
  /** Undefined when one of its draws is. */
  readonly litres?: number;
  readonly draws: readonly Draw[];
}

const byAction = onceFor((draws: readonly Draw[]): ReadonlyMap<SurfaceRun, ReadonlyMap<Action, Draw[]>> => {
  const runs = new Map<SurfaceRun, Map<Action, Draw[]>>();
  for (const draw of draws) {
    const actions = runs.get(draw.run) ?? new Map<Action, Draw[]>();
    runs.set(draw.run, actions);
    const known = actions.get(draw.action);
    if (known) known.push(draw);
    else actions.set(draw.action, [draw]);
  }
  return runs;
});

/** Those of some actions on one surface, action by action. A job's list is looked through once, however many lines ask. */
export function drawsFor(
  draws: readonly Draw[],
  run: SurfaceRun,
  actions: Iterable<Action>,
): readonly Draw[] {
  const ofRun = byAction(draws).get(run);
  return ofRun ? [...new Set(actions)].flatMap((action) => ofRun.get(action) ?? []) : [];
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

/** One liquid of what is put into the pot for a coat. */
export interface MixPart {
  readonly use: MaterialUse;
  /** Undefined: the parts are weighed, and a density is not stated. */
  readonly litres?: number;
  /** Its share as the end of the sum: ` × 1/2`; empty where it is all. */
  readonly part: string;
}

export interface CoatMix {
  /** All parts together. */
  readonly litres: number;
  /** The material, its hardener, the thinner, the tint: those that the line asks for. */
  readonly parts: readonly MixPart[];
  /** The sum with its numbers filled in. */
  readonly working: string;
}

/** What one coat takes on all pieces of a run, water and spare included; undefined where that is not known. */
export function coatMix(job: Job, run: SurfaceRun, action: LayerAction): CoatMix | undefined {
  const covers = action.use.material?.covers?.value;
  if (!run.surface || !action.use.material || (covers === undefined && action.wetUm === undefined)) {
    return undefined;
  }
  const { thinned, tinted, hardener } = action;
  const litres = layerLitres({
    areaM2: workedAreaM2(run.surface, action.part),
    pieces: run.pieces,
    coats: 1,
    ...(covers !== undefined ? { coversM2PerL: covers } : {}),
    ...(action.wetUm !== undefined ? { wetUm: action.wetUm } : {}),
    method: methodOf(action.method),
    ...(action.transfer === undefined ? {} : { transfer: action.transfer }),
    laydown: laydownOf(action),
    sparePercent: job.spare.value,
    ...(thinned ? { thinned: { a: thinned.a, b: thinned.b } } : {}),
    ...(tinted ? { tintPercent: tinted.percent } : {}),
  });
  const untinted = tinted ? ` × ${formatNumber(1 - tinted.percent / 100, 4)}` : "";
  const parts = (of: number, a: number, b: number): string =>
    ` × ${formatNumber(of, 2)}/${formatNumber(a + b, 2)}`;
  const unthinned = untinted + (thinned ? parts(thinned.a, thinned.a, thinned.b) : "");
  const { materialL, hardenerL } = ownParts(litres.materialL, hardener);
  const ownPart = (of: "a" | "b"): string => {
    if (!hardener?.volumes) return "";
    const { a, b } = hardener.volumes;
    return hardener.by === "volume"
      ? parts(hardener.volumes[of], a, b)
      : ` × ${formatNumber(hardener.volumes[of] / (a + b), 4)}`;
  };
  return {
    litres: litres.mixL,
    parts: [
      {
        use: action.use,
        ...(materialL !== undefined ? { litres: materialL } : {}),
        part: unthinned + ownPart("a"),
      },
      ...(hardener
        ? [
            {
              use: hardener.use,
              ...(hardenerL !== undefined ? { litres: hardenerL } : {}),
              part: unthinned + ownPart("b"),
            },
          ]
        : []),
      ...(thinned
        ? [
            {
              use: thinned.thinner,
              litres: litres.thinnerL,
              part: untinted + parts(thinned.b, thinned.a, thinned.b),
            },
          ]
        : []),
      ...(tinted
        ? [{ use: tinted.tint, litres: litres.tintL, part: ` × ${formatNumber(tinted.percent, 2)} %` }]
        : []),
    ],
    working: litres.working,
  };
}

function ownParts(
  litres: number,
  hardener: LayerAction["hardener"],
): { readonly materialL?: number; readonly hardenerL?: number } {
  if (hardener === undefined) return { materialL: litres };
  const { volumes } = hardener;
  return volumes ? mixLitres(litres, volumes.a, volumes.b) : {};
}

function layerDraws(job: Job, run: SurfaceRun, action: LayerAction): readonly Draw[] {
  const material = action.use.material;
  if (!material || !run.surface) return [];
  const mix = coatMix(job, run, action);
  if (mix && run.surface.areaGap)
    return mix.parts.flatMap(({ use }) =>
      use.material ? [{ material: use.material, run, action, working: t`the area is not known` }] : [],
    );
  if (!mix) return [{ material, run, action, working: t`the material states no spreading rate` }];
  return mix.parts.flatMap(({ use, litres, part }): readonly Draw[] => {
    if (use.material && litres === undefined) {
      const undensed = [material, action.hardener?.use.material].filter(
        (each) => each !== undefined && each.density === undefined,
      ) as readonly Material[];
      const working = t`it is mixed by weight, and a density is not stated`;
      return [{ material: use.material, run, action, working, undensed }];
    }
    return use.material && litres !== undefined && litres > 0
      ? [
          {
            material: use.material,
            litres,
            run,
            action,
            working: mix.working,
            ...(part ? { part } : {}),
          },
        ]
      : [];
  });
}

function stepDraws(job: Job, run: SurfaceRun, action: StepAction): readonly Draw[] {
  const material = action.use?.material;
  if (!material || !run.surface) return [];
  if (run.surface.areaGap && action.usesLitres === undefined)
    return action.verb === "fill" ? [] : [{ material, run, action, working: t`the area is not known` }];
  // Only a spreading rate that the material itself states: a family's is for layers.
  const covers = material.covers?.origin === "stated" ? material.covers.value : undefined;
  const { litres, working } = stepLitres({
    areaM2: workedAreaM2(run.surface, action.part),
    pieces: run.pieces,
    ...(covers !== undefined ? { coversM2PerL: covers } : {}),
    ...(action.usesLitres !== undefined ? { usesL: action.usesLitres } : {}),
    sparePercent: job.spare.value,
    onlyAsStated: action.verb === "fill",
  });
  return litres > 0 ? [{ material, litres, run, action, working }] : [];
}
