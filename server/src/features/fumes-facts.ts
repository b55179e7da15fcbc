/**
 * The fumes of a job in words: grams by line, the air that a coat asks for, and the shift that asks for most. When they
 * leave, hour by hour, is in `fumes-hours.ts`.
 *
 * Totals and hovers say the same here. The sums are those of `core/fumes/job-fumes.ts`; they prove nothing safe.
 */
import { DEFAULT_MIXING_FACTOR, vapourM3PerH } from "../core/fumes/dilution-air.ts";
import {
  airForCoat,
  airThere,
  type CoatFumes,
  jobFumes,
  LEL_PARTS,
  LIMITS_AT_C,
  SHIFT_H,
} from "../core/fumes/job-fumes.ts";
import type { AirNeeded } from "../core/fumes/room-air.ts";
import { exposureLimitMgM3, type Solvent } from "../core/knowledge/solvents.ts";
import { formatNumber, roundTo } from "../core/measure/format-amount.ts";
import { andList } from "../core/model/suggest.ts";
import { placeKey } from "../core/place.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { momentAfterStart } from "./job-plan.ts";

export interface FumesFact {
  /** `walnut_gel, 2 coats`, `dewax with white_spirit`, or the shift. */
  readonly name: string;
  readonly grams: number;
  /** What air it asks for and what there is; empty without a known room. */
  readonly air: string;
  /** The sum for that air with its numbers; empty without one. */
  readonly working: string;
}

/** Said once beside the facts of a job with a room. */
export const FUMES_BASIS = `air by the sum of industrial ventilation, each limit averaged over ${SHIFT_H} h, allowance ${DEFAULT_MIXING_FACTOR} for uneven mixing; it proves nothing safe`;

/** A fact for every line that gives off something; lines of which it is not known are left out. */
export function lineFumes(result: JobResult): readonly FumesFact[] {
  return coatsByLine(jobFumes(result).coats).map((coats) => ({
    name: lineName(coats),
    grams: coats.reduce((sum, { grams }) => sum + (grams ?? 0), 0),
    air: coatAir(result, coats[0]!).replace(/^needs/, coats.length > 1 ? "a coat needs" : "needs"),
    working: coatAirWorking(result, coats[0]!),
  }));
}

/** The shift of 8 h that asks for most air; undefined where it is not computed. */
export function worstShift(result: JobResult): FumesFact | undefined {
  const { worstShift: worst, coats } = jobFumes(result);
  const room = result.shop?.room?.value;
  if (!worst || !room) return undefined;
  const has = room.airChanges === undefined ? "" : `; the room has ${formatNumber(room.airChanges, 1)}`;
  const others = coats
    .flatMap(({ liquids }) => liquids)
    .flatMap(({ material, solvent, grams }) => (grams > 0 && !solvent ? [`\`${material.name}\``] : []));
  const without = others.length > 0 ? `, not counting ${andList([...new Set(others)])}` : "";
  return {
    name: `worst ${SHIFT_H} h`,
    grams: worst.grams,
    air: `from ${momentAfterStart(result, worst.fromH)}: needs ${changes(worst.needed.airChangesPerH)} in ${formatNumber(room.m3, 1)} m3${without}${has}`,
    working: breathingSum(worst.vapours, SHIFT_H, room.m3, worst.needed),
  };
}

/** The air that one coat asks for by itself, and what its line has. */
export function coatAir({ shop }: JobResult, coat: CoatFumes): string {
  const room = shop?.room?.value;
  if (!room || coat.grams === undefined) return "";
  const needed = airForCoat(coat, room.m3);
  if (needed.limit === "none") return coat.grams > 0 ? "no limit is known for its vapour" : "";
  const there = airThere(shop, coat.parts[0]!.action.duties);
  const has = there ? `, ${formatNumber(there.airChangesPerH, 1)} ${BY[there.by]}` : "";
  return `needs ${changes(needed.airChangesPerH)}${has}`;
}

/** The sum behind `coatAir`, as a reader would do it; empty where there is none. */
export function coatAirWorking({ shop }: JobResult, coat: CoatFumes): string {
  const room = shop?.room?.value;
  if (!room || coat.grams === undefined) return "";
  const hours = coat.applicationH + coat.dryingH;
  const vapours = coat.liquids.flatMap(({ solvent, grams }) =>
    solvent && grams > 0 ? [{ solvent, grams }] : [],
  );
  const needed = airForCoat(coat, room.m3);
  if (needed.limit === "none") return "";
  return needed.limit === "exposure"
    ? breathingSum(vapours, Math.max(SHIFT_H, hours), room.m3, needed)
    : fireSum(vapours, hours, room.m3, needed);
}

interface Vapour {
  readonly solvent: Solvent;
  readonly grams: number;
}

const parts = (terms: readonly string[]): string =>
  terms.length > 1 ? `(${terms.join(" + ")})` : (terms[0] ?? "");

/** `480 g / 8 h / 0.35 g/m3 (mineral spirits) × 5 / 50 m3 = 17.1 air changes/h` */
function breathingSum(vapours: readonly Vapour[], hours: number, roomM3: number, needed: AirNeeded): string {
  const limited = vapours.flatMap(({ solvent, grams }) => {
    const limit = exposureLimitMgM3(solvent);
    return limit === undefined ? [] : [{ name: solvent.name, grams, limit: limit / 1000 }];
  });
  if (limited.length === 0) return "";
  const terms = limited.map(
    ({ name, grams, limit }) => `${formatNumber(grams, 1)} g / ${formatNumber(limit, 3)} g/m3 (${name})`,
  );
  return `${parts(terms)} / ${formatNumber(hours, 1)} h × ${DEFAULT_MIXING_FACTOR} = ${perRoom(needed, roomM3)}`;
}

/** `429 m3/h, / 50 m3 = 8.6 air changes/h` */
const perRoom = ({ m3PerH, airChangesPerH }: AirNeeded, roomM3: number): string =>
  `${formatNumber(m3PerH, 0)} m3/h, / ${formatNumber(roomM3, 1)} m3 = ${changes(airChangesPerH)}`;

/** The vapour of the moment, kept to a tenth of the lower explosive limit. */
function fireSum(vapours: readonly Vapour[], hours: number, roomM3: number, needed: AirNeeded): string {
  const each = vapours.map(({ solvent, grams }) => ({
    solvent,
    grams,
    m3PerH: vapourM3PerH({
      gramsPerH: grams / hours,
      molecularWeight: solvent.molecularWeight,
      temperatureC: LIMITS_AT_C,
    }),
  }));
  const terms = each.map(
    ({ solvent, grams, m3PerH }) =>
      `${formatNumber(m3PerH, 4)} m3/h of vapour (${formatNumber(grams, 1)} g in ${formatNumber(hours, 2)} h) / ${formatNumber(solvent.lelPercent, 1)} % (${solvent.name})`,
  );
  return `${parts(terms)} × ${LEL_PARTS} = ${perRoom(needed, roomM3)}`;
}

const BY = {
  room: "by the room itself",
  stated: "stated",
  windows: "taken for open windows",
} as const;

/** `8.6 air changes/h` */
export const changes = (perH: number): string =>
  `${perH < 0.1 ? "under 0.1" : roundTo(perH, 1)} air changes/h`;

/** Coats whose grams are known, those of one line together. */
export function coatsByLine(coats: readonly CoatFumes[]): readonly (readonly CoatFumes[])[] {
  const lines = new Map<string, CoatFumes[]>();
  for (const coat of coats) {
    if (coat.grams === undefined) continue;
    const key = placeKey(coat.parts[0]!.action.place);
    const line = lines.get(key);
    if (line) line.push(coat);
    else lines.set(key, [coat]);
  }
  return [...lines.values()];
}

/** What the coats of one line are called: `walnut_gel, 2 coats`. */
export function lineName(coats: readonly CoatFumes[]): string {
  const { action } = coats[0]!.parts[0]!;
  const material = action.use?.material?.name ?? action.use?.name ?? "";
  if (action.op === "step") return `${action.verb} with ${material}`;
  return coats.length === 1 ? material : `${material}, ${coats.length} coats`;
}
