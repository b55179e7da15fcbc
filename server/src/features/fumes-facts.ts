/**
 * The fumes of a job in words: grams by line, the air that a coat asks for, and the shift that asks for most.
 *
 * Totals and hovers say the same here. The sums are those of `core/fumes/job-fumes.ts`; they prove nothing safe.
 */
import { Temporal } from "temporal-polyfill";
import { DEFAULT_MIXING_FACTOR } from "../core/fumes/dilution-air.ts";
import { airForCoat, airThere, type CoatFumes, jobFumes, SHIFT_H } from "../core/fumes/job-fumes.ts";
import { formatNumber, roundTo } from "../core/measure/format-amount.ts";
import { andList } from "../core/model/suggest.ts";
import { placeKey } from "../core/place.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { hoursText, momentText } from "./spoken.ts";

export interface FumesFact {
  /** `walnut_gel, 2 coats`, `dewax with white_spirit`, or the shift. */
  readonly name: string;
  readonly grams: number;
  /** What air it asks for and what there is; empty without a known room. */
  readonly air: string;
}

/** Said once beside the facts of a job with a room. */
export const FUMES_BASIS = `air by the sum of industrial ventilation, each limit averaged over ${SHIFT_H} h, allowance ${DEFAULT_MIXING_FACTOR} for uneven mixing; it proves nothing safe`;

/** A fact for every line that gives off something; lines of which it is not known are left out. */
export function lineFumes(result: JobResult): readonly FumesFact[] {
  return coatsByLine(jobFumes(result).coats).map((coats) => ({
    name: lineName(coats),
    grams: coats.reduce((sum, { grams }) => sum + (grams ?? 0), 0),
    air: coatAir(result, coats[0]!).replace(/^needs/, coats.length > 1 ? "a coat needs" : "needs"),
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
    air: `${sinceText(result, worst.fromH)}: needs ${changes(worst.needed.airChangesPerH)} in ${formatNumber(room.m3, 1)} m3${without}${has}`,
  };
}

function sinceText({ schedule }: JobResult, fromH: number): string {
  if (fromH < 1 / 120) return "from the start";
  if (schedule.startAt === undefined) return `from ${hoursText(fromH)} after the start`;
  const at = Temporal.PlainDateTime.from(schedule.startAt).add({ minutes: Math.round(fromH * 60) });
  return `from ${momentText(at.toString({ smallestUnit: "minute" }))}`;
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

const BY = {
  room: "by the room itself",
  stated: "stated",
  windows: "taken for open windows",
} as const;

const changes = (perH: number): string => `${perH < 0.1 ? "under 0.1" : roundTo(perH, 1)} air changes/h`;

function coatsByLine(coats: readonly CoatFumes[]): readonly (readonly CoatFumes[])[] {
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

function lineName(coats: readonly CoatFumes[]): string {
  const { action } = coats[0]!.parts[0]!;
  const material = action.use?.material?.name ?? action.use?.name ?? "";
  if (action.op === "step") return `${action.verb} with ${material}`;
  return coats.length === 1 ? material : `${material}, ${coats.length} coats`;
}
