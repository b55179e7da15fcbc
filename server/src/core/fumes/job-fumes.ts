/**
 * What a job gives off, coat by coat and hour by hour.
 *
 * The model is simple and stated: the solvent of a coat leaves evenly from the beginning of its application until half
 * of its time to touch dry (common practice, no source; most of it leaves early, so the true peak is higher and the tail
 * longer). What stands for its vapour is in `knowledge/solvents.ts`, the air that it asks for in `job-air.ts`.
 */
import { type Solvent, type StandIn, standInFor } from "../knowledge/solvents.ts";
import type { Material } from "../model/model.ts";
import { placeKey } from "../place.ts";
import type { Schedule } from "../schedule/types.ts";
import type { Action, LayerAction, StepAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { itemOf } from "../totals/planned-tasks.ts";
import { actionHours } from "../totals/task-plan.ts";
import { isBuiltInWater } from "../totals/water.ts";

/** Part of the time to touch dry in which the solvent has left. Common practice, no source. */
export const RELEASED_BY_TOUCH = 0.5;
/** What a step with a liquid gives off is gone this long after it, h. Common practice, no source. */
export const AFTER_STEP_H = 0.5;

/** Litres that an action takes of one material, as the totals draw them. */
export interface FumesDraw {
  readonly material: Material;
  readonly litres?: number;
  readonly run: SurfaceRun;
  readonly action: Action;
}

/** What one liquid of a line gives off. */
export interface LiquidFumes {
  readonly material: Material;
  readonly litres: number;
  /** What evaporates of a litre, g; for most its VOC, for acetone, which the rule on VOC exempts, all of it. */
  readonly vapourGPerL: number;
  readonly grams: number;
  /** What stands for its vapour, the cautious one where it is not named; undefined where it has no carrier. */
  readonly solvent?: Solvent;
  readonly standIn?: StandIn;
}

/** The action on one surface. */
export interface CoatPart {
  readonly run: SurfaceRun;
  readonly action: LayerAction | StepAction;
}

/**
 * One coat of a layer line, or one doing of a step, on every surface and piece of the job at once: in a shop a coat is
 * put on everything before the next one begins.
 */
export interface CoatFumes {
  /** Never empty. */
  readonly parts: readonly CoatPart[];
  readonly liquids: readonly LiquidFumes[];
  /** Undefined where the litres or the VOC of a liquid are not known. */
  readonly grams?: number;
  /** Hours from the first brush to the last, the crew together. */
  readonly applicationH: number;
  /** Hours after a piece is coated in which its solvent leaves. */
  readonly dryingH: number;
}

/** Every coat and step of the job that gives off something, or may, in the order of its lines. */
export function coatFumes(draws: readonly FumesDraw[]): readonly CoatFumes[] {
  const groups = new Map<string, FumesDraw[]>();
  const times = new Map<SurfaceRun, readonly string[]>();
  for (const draw of draws) {
    const { action, run } = draw;
    if (action.op !== "layer" && action.op !== "step") continue;
    const keys = times.get(run) ?? timesOfLines(run);
    times.set(run, keys);
    const key = keys[action.index]!;
    const group = groups.get(key);
    if (group) group.push(draw);
    else groups.set(key, [draw]);
  }
  return [...groups.values()].map(fumesOfCoat).filter(({ grams }) => grams !== 0);
}

/** A key for every action: its line and how often it was done before, since coats and repeated `follow`s are apart. */
function timesOfLines(run: SurfaceRun): readonly string[] {
  const counts = new Map<string, number>();
  return run.moments.map(({ action }) => {
    const key = placeKey(action.place);
    const count = counts.get(key) ?? 0;
    counts.set(key, count + 1);
    return `${key}\u0000${count}`;
  });
}

function fumesOfCoat(draws: readonly FumesDraw[]): CoatFumes {
  const parts = new Map<SurfaceRun, CoatPart>();
  for (const { run, action } of draws) {
    if (action.op === "layer" || action.op === "step") parts.set(run, { run, action });
  }
  const liquids = byMaterial(draws.flatMap(liquidFumes));
  const isKnown = draws.every(
    ({ material, litres }) =>
      litres !== undefined && (isBuiltInWater(material) || material.voc !== undefined),
  );
  const all = [...parts.values()];
  const hands = all.reduce((sum, { run, action }) => sum + run.pieces * actionHours(run, action), 0);
  const first = all[0]!;
  return {
    parts: all,
    liquids,
    ...(isKnown ? { grams: liquids.reduce((sum, liquid) => sum + liquid.grams, 0) } : {}),
    applicationH: hands / (first.run.shop?.crew ?? 1),
    dryingH: releaseHours(first.run, first.action),
  };
}

/** What the liquids of a draw give off, all pieces together. */
export function liquidFumes({ material, litres }: FumesDraw): readonly LiquidFumes[] {
  const vapourGPerL = vapourOf(material);
  if (litres === undefined || vapourGPerL === undefined || isBuiltInWater(material)) return [];
  const standIn = standInFor(material);
  return [
    {
      material,
      litres,
      vapourGPerL,
      grams: litres * vapourGPerL,
      ...(standIn ? { solvent: standIn.cautious, standIn } : {}),
    },
  ];
}

/**
 * What evaporates of a litre of a material, g. Acetone counts nothing as a VOC (40 CFR 51.100(s) exempts it), and burns
 * and is breathed all the same: a solvent of that family leaves with its whole weight.
 */
function vapourOf(material: Material): number | undefined {
  const { voc, family } = material;
  if (family?.role !== "solvent" || family.carrier !== "acetone") return voc?.value;
  const solvent = standInFor(material)?.cautious;
  return solvent && Math.max(voc?.value ?? 0, solvent.specificGravity * 1000);
}

/** The same liquid of several surfaces together. */
function byMaterial(liquids: readonly LiquidFumes[]): readonly LiquidFumes[] {
  const found = new Map<Material, LiquidFumes>();
  for (const liquid of liquids) {
    const before = found.get(liquid.material);
    found.set(
      liquid.material,
      before
        ? { ...before, litres: before.litres + liquid.litres, grams: before.grams + liquid.grams }
        : liquid,
    );
  }
  return [...found.values()];
}

/** Hours after its application until the solvent of a coat has left, in the air of the shop. */
export function releaseHours(run: SurfaceRun, action: LayerAction | StepAction): number {
  const coat = action.op === "layer" ? run.moments[action.index]?.after.layers.at(-1) : undefined;
  const touch = coat?.material && coat.drying.touch;
  return touch ? touch.hours * RELEASED_BY_TOUCH : AFTER_STEP_H;
}

// ---------------------------------------------------------------------------------------------------------------
// The whole job, hour by hour

/** Vapour that leaves evenly between two hours after the start of the job. */
export interface Release {
  readonly from: number;
  /** At least a minute later. */
  readonly to: number;
  readonly grams: number;
  readonly standIn?: StandIn;
  readonly action: Action;
}

/** The shortest time in which anything evaporates, h. */
export const LEAST_RELEASE_H = 1 / 60;

/** Grams that leave in one hour, counted from the start of the job; hours without any are left out. */
export interface HourFumes {
  readonly hour: number;
  readonly grams: number;
}

export interface JobFumes {
  readonly coats: readonly CoatFumes[];
  /** Grams that leave in the hours after the start of the job; undefined where the plan or a figure is not known. */
  readonly byHour?: readonly HourFumes[];
}

export interface JobFumesInput {
  readonly draws: readonly FumesDraw[];
  readonly schedule: Schedule;
}

export function jobFumes({ draws, schedule }: JobFumesInput): JobFumes {
  const coats = coatFumes(draws);
  const isKnown = coats.every(({ grams }) => grams !== undefined);
  if (!isKnown || schedule.status !== "planned") return { coats };
  return { coats, byHour: hoursOf(releasesOf(draws, schedule)) };
}

/**
 * Grams that leave in the hours after the start of the job from these draws alone, such as those of one line; undefined
 * where the plan, the litres or a VOC is not known.
 */
export function hourlyFumes(
  draws: readonly FumesDraw[],
  schedule: Schedule,
): readonly HourFumes[] | undefined {
  const isKnown = coatFumes(draws).every(({ grams }) => grams !== undefined);
  return isKnown && schedule.status === "planned" ? hoursOf(releasesOf(draws, schedule)) : undefined;
}

/** All that leaves of these draws by the plan, piece by piece; what is not known, and all of a job without a plan, is left out. */
export function releasesOf(draws: readonly FumesDraw[], schedule: Schedule): readonly Release[] {
  if (schedule.status !== "planned") return [];
  return draws.flatMap((draw) => {
    const { run, action } = draw;
    if (action.op !== "layer" && action.op !== "step") return [];
    return liquidFumes(draw).flatMap(({ grams, standIn }) =>
      Array.from({ length: run.pieces }, (_, piece): readonly Release[] => {
        const item = itemOf(schedule, run, piece, action.index);
        if (!item || grams <= 0) return [];
        const from = item.start;
        const to = Math.max(item.end + releaseHours(run, action), from + LEAST_RELEASE_H);
        return [{ from, to, grams: grams / run.pieces, action, ...(standIn ? { standIn } : {}) }];
      }).flat(),
    );
  });
}

/** Of a release, the part that leaves between two hours. */
export const share = ({ from, to }: Pick<Release, "from" | "to">, start: number, end: number): number =>
  Math.max(0, Math.min(to, end) - Math.max(from, start)) / (to - from);

/** Releases longer than this are a slip of the pen; their tail is put into the last hour. */
const MOST_HOURS = 1000;

function hoursOf(releases: readonly Release[]): readonly HourFumes[] {
  const hours = new Map<number, number>();
  for (const release of releases) {
    const first = Math.floor(release.from);
    for (let hour = first; hour < release.to - 1e-9; hour += 1) {
      const isLast = hour - first >= MOST_HOURS;
      const grams = release.grams * share(release, hour, isLast ? release.to : hour + 1);
      hours.set(hour, (hours.get(hour) ?? 0) + grams);
      if (isLast) break;
    }
  }
  return [...hours].sort(([a], [b]) => a - b).map(([hour, grams]) => ({ hour, grams }));
}
