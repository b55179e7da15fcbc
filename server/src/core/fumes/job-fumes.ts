/**
 * What a job gives off line by line and hour by hour, and the fresh air that its room would need for it.
 *
 * The model is simple and stated: the solvent of a coat leaves evenly from the beginning of its application until half
 * of its time to touch dry (common practice, no source; most of it leaves early, so the true peak is higher and the tail
 * longer). An exposure limit is an average over a shift, so its air is reckoned over 8 h or the release, whichever is
 * longer; the explosive limit is one of the moment and is kept to a tenth. One solvent stands for each carrier (`knowledge/solvents.ts`). A sum that comes out well proves
 * nothing: who stands over the piece breathes more than the room's mean, and the safety data sheet decides.
 */
import { exposureLimitMgM3, representativeSolvent, type Solvent } from "../knowledge/solvents.ts";
import type { Material, Shop } from "../model/model.ts";
import { placeKey } from "../place.ts";
import type { Schedule } from "../schedule/types.ts";
import type { Action, Duties, LayerAction, StepAction } from "../surface/actions.ts";
import { dryingTime } from "../surface/drying-time.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { actionHours, itemId } from "../totals/task-plan.ts";
import { isBuiltInWater } from "../totals/water.ts";
import { DEFAULT_MIXING_FACTOR } from "./dilution-air.ts";
import { type AirNeeded, airNeeded, type RoomVapour } from "./room-air.ts";

/** Exposure limits are averages over a working day of 8 h (29 CFR 1910.1000). */
export const SHIFT_H = 8;
/** Vapour is kept to a tenth of the lower explosive limit (29 CFR 1910.146 calls more than that hazardous; from memory). */
export const LEL_PARTS = 10;
/** Part of the time to touch dry in which the solvent has left. Common practice, no source. */
export const RELEASED_BY_TOUCH = 0.5;
/** What a step with a liquid gives off is gone this long after it, h. Common practice, no source. */
export const AFTER_STEP_H = 0.5;
/**
 * What `ventilate` without a number counts as where a sum needs one, air changes/h: windows open on two sides. Common
 * practice, no source.
 */
export const OPEN_WINDOWS_PER_H = 10;
/** Limits in mg/m3 are stated for air of 25 C. */
export const LIMITS_AT_C = 25;

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
  /** What stands for its vapour; undefined where it has no carrier. */
  readonly solvent?: Solvent;
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

function liquidFumes({ material, litres }: FumesDraw): readonly LiquidFumes[] {
  const vapourGPerL = vapourOf(material);
  if (litres === undefined || vapourGPerL === undefined || isBuiltInWater(material)) return [];
  const solvent = material.family && representativeSolvent(material.family.carrier);
  return [{ material, litres, vapourGPerL, grams: litres * vapourGPerL, ...(solvent ? { solvent } : {}) }];
}

/**
 * What evaporates of a litre of a material, g. Acetone counts nothing as a VOC (40 CFR 51.100(s) exempts it), and burns
 * and is breathed all the same: a solvent of that family leaves with its whole weight.
 */
function vapourOf({ voc, family }: Material): number | undefined {
  if (family?.role !== "solvent" || family.carrier !== "acetone") return voc?.value;
  const solvent = representativeSolvent(family.carrier);
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
function releaseHours(run: SurfaceRun, action: LayerAction | StepAction): number {
  const material = action.use?.material;
  const touch =
    action.op === "layer" && material ? dryingTime(run.shop?.air?.value, material, "touch") : undefined;
  return touch ? touch.hours * RELEASED_BY_TOUCH : AFTER_STEP_H;
}

// ---------------------------------------------------------------------------------------------------------------
// Air

/** Fresh air for one coat in a room of so many m3, by itself; K from 1 (perfectly mixed) to 10. */
export function airForCoat(
  { liquids, applicationH, dryingH }: Pick<CoatFumes, "liquids" | "applicationH" | "dryingH">,
  roomM3: number,
  mixingFactor: number = DEFAULT_MIXING_FACTOR,
): AirNeeded {
  const vapours = liquids.flatMap(({ solvent, grams }): readonly RoomVapour[] =>
    solvent && grams > 0
      ? [{ solvent, grams, overH: Math.max(applicationH + dryingH, 1 / 60), averagedOverH: SHIFT_H }]
      : [],
  );
  return airNeeded(vapours, roomM3, {
    mixingFactor,
    lelSafetyFactor: LEL_PARTS,
    temperatureC: LIMITS_AT_C,
  });
}

export interface AirThere {
  readonly m3PerH: number;
  readonly airChangesPerH: number;
  /** The room by itself, a stated `ventilate N`, or `ventilate` without a number. */
  readonly by: "room" | "stated" | "windows";
}

/** Fresh air that a line has: the room's own change, or what its `ventilate` brings if that is more. */
export function airThere(shop: Shop | undefined, duties: Duties): AirThere | undefined {
  const room = shop?.room?.value;
  if (!room) return undefined;
  const own = room.airChanges;
  const duty = duties.get("ventilate");
  const brought = duty && (duty.airChanges ?? OPEN_WINDOWS_PER_H);
  const airChangesPerH = Math.max(own ?? 0, brought ?? 0);
  if (own === undefined && brought === undefined) return undefined;
  const by =
    brought === undefined || (own ?? 0) >= brought
      ? "room"
      : duty?.airChanges === undefined
        ? "windows"
        : "stated";
  return { m3PerH: airChangesPerH * room.m3, airChangesPerH, by };
}

// ---------------------------------------------------------------------------------------------------------------
// The whole job, hour by hour

/** Vapour that leaves evenly between two hours after the start of the job. */
interface Release {
  readonly from: number;
  readonly to: number;
  readonly grams: number;
  /** m3 of air that bring it to its exposure limit. */
  readonly limitM3: number;
  readonly solvent?: Solvent;
}

/** Grams that leave in one hour, counted from the start of the job; hours without any are left out. */
export interface HourFumes {
  readonly hour: number;
  readonly grams: number;
}

export interface JobFumes {
  readonly coats: readonly CoatFumes[];
  /** Grams that leave in the hours after the start of the job; undefined where the plan or a figure is not known. */
  readonly byHour?: readonly HourFumes[];
  /** The shift of 8 h that asks for most air, and what it asks for; with a known room only. */
  readonly worstShift?: WorstShift;
}

export interface WorstShift {
  /** Hours after the start of the job. */
  readonly fromH: number;
  readonly grams: number;
  /** Of the grams, those of vapours with an exposure limit; what they ask for is added. */
  readonly vapours: readonly { readonly solvent: Solvent; readonly grams: number }[];
  readonly needed: AirNeeded;
}

export interface JobFumesInput {
  readonly draws: readonly FumesDraw[];
  readonly schedule: Schedule;
  readonly shop?: Shop;
}

export function jobFumes({ draws, schedule, shop }: JobFumesInput): JobFumes {
  const coats = coatFumes(draws);
  const isKnown = coats.every(({ grams }) => grams !== undefined);
  if (!isKnown || schedule.status !== "planned") return { coats };
  const releases = releasesOf(draws, schedule);
  const room = shop?.room?.value;
  const worst = room && worstShift(releases, room.m3);
  return { coats, byHour: hoursOf(releases), ...(worst ? { worstShift: worst } : {}) };
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

function releasesOf(draws: readonly FumesDraw[], { items }: Schedule): readonly Release[] {
  const planned = new Map(items.map((item) => [item.id, item]));
  return draws.flatMap((draw) => {
    const { run, action } = draw;
    if (action.op !== "layer" && action.op !== "step") return [];
    return liquidFumes(draw).flatMap(({ grams, solvent }) =>
      Array.from({ length: run.pieces }, (_, piece): readonly Release[] => {
        const item = planned.get(itemId(run, piece, action.index));
        if (!item || grams <= 0) return [];
        const limit = solvent && exposureLimitMgM3(solvent);
        return [
          {
            from: item.start,
            to: Math.max(item.end + releaseHours(run, action), item.start + 1 / 60),
            grams: grams / run.pieces,
            limitM3: limit === undefined ? 0 : (1000 * grams) / run.pieces / limit,
            ...(limit === undefined ? {} : { solvent }),
          },
        ];
      }).flat(),
    );
  });
}

/** Of a release, the part that leaves between two hours. */
const share = ({ from, to }: Release, start: number, end: number): number =>
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

/**
 * Windows that begin with a release, or end with one, hold the most. What has left by an hour is a line that bends where
 * releases begin and end, so every window costs two look-ups, and thousands of pieces cost no more than their number.
 */
function worstShift(releases: readonly Release[], roomM3: number): WorstShift | undefined {
  const limitM3 = leftBy(releases, ({ limitM3: each }) => each);
  const starts = new Set(releases.flatMap(({ from, to }) => [from, Math.max(0, to - SHIFT_H)]));
  let worst = { fromH: 0, limitM3: 0 };
  for (const fromH of [...starts].sort((a, b) => a - b)) {
    const inShift = limitM3(fromH + SHIFT_H) - limitM3(fromH);
    if (inShift > worst.limitM3 * (1 + 1e-9) + 1e-9) worst = { fromH, limitM3: inShift };
  }
  if (worst.limitM3 === 0) return undefined;
  const { fromH } = worst;
  const grams = releases.reduce(
    (sum, release) => sum + release.grams * share(release, fromH, fromH + SHIFT_H),
    0,
  );
  const m3PerH = (worst.limitM3 / SHIFT_H) * DEFAULT_MIXING_FACTOR;
  const needed: AirNeeded = { m3PerH, airChangesPerH: m3PerH / roomM3, limit: "exposure" };
  return { fromH, grams, vapours: vapoursBetween(releases, fromH, fromH + SHIFT_H), needed };
}

/** How much of an amount has left by an hour. */
function leftBy(
  releases: readonly Release[],
  amountOf: (release: Release) => number,
): (hour: number) => number {
  const changes = releases
    .flatMap((release) => {
      const perH = amountOf(release) / (release.to - release.from);
      return [
        { at: release.from, perH },
        { at: release.to, perH: -perH },
      ];
    })
    .sort((a, b) => a.at - b.at);
  const bends: { at: number; left: number; perH: number }[] = [{ at: 0, left: 0, perH: 0 }];
  for (const { at, perH } of changes) {
    const last = bends.at(-1)!;
    bends.push({ at, left: last.left + last.perH * (at - last.at), perH: last.perH + perH });
  }
  return (hour) => {
    let [low, high] = [0, bends.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (bends[middle]!.at <= hour) low = middle;
      else high = middle - 1;
    }
    const { at, left, perH } = bends[low]!;
    return left + perH * (hour - at);
  };
}

function vapoursBetween(releases: readonly Release[], fromH: number, toH: number): WorstShift["vapours"] {
  const bySolvent = new Map<Solvent, number>();
  for (const release of releases) {
    const grams = release.grams * share(release, fromH, toH);
    if (release.solvent && grams > 0) {
      bySolvent.set(release.solvent, (bySolvent.get(release.solvent) ?? 0) + grams);
    }
  }
  return [...bySolvent].map(([solvent, grams]) => ({ solvent, grams }));
}
