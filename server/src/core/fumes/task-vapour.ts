/**
 * What each task of a job puts into the air of its room, for the planner: as the part of what the room's fresh air may
 * carry away in a stretch of 8 h, of 15 min and of a moment. The limits, the solvents that stand for a vapour, and who is
 * protected by what they wear are those of the verdict on the air (`job-air.ts`).
 */
import type { Solvent } from "../knowledge/solvents.ts";
import type { Shop } from "../model/model.ts";
import type { TaskVapour } from "../schedule/types.ts";
import type { SurfaceRun } from "../surface/run.ts";
import type { TaskVapours } from "../totals/task-plan.ts";
import { airThere, MOST_UNMEASURED_PER_H, protectionOf } from "./job-air.ts";
import { type FumesDraw, liquidFumes, releaseHours } from "./job-fumes.ts";
import { airNeededM3PerH, airToLimitM3, LIMIT_KINDS, type LimitKind } from "./room-air.ts";
import { STRETCH_H, type Stance } from "./worst-air.ts";

/** Of the draws of one job; undefined where the shop states no room, or nothing that is known is given off in it. */
export function vapoursOf(shop: Shop | undefined, draws: readonly FumesDraw[]): TaskVapours | undefined {
  if (!shop?.room) return undefined;
  const known = new Map<SurfaceRun, Map<number, TaskVapour>>();
  for (const draw of draws) {
    const { run, action } = draw;
    const added = vapourOf(shop, draw);
    if (added === undefined) continue;
    const ofRun = known.get(run) ?? new Map<number, TaskVapour>();
    known.set(run, ofRun);
    const before = ofRun.get(action.index);
    ofRun.set(action.index, before === undefined ? added : together(before, added));
  }
  if (known.size === 0) return undefined;
  return {
    stretches: LIMIT_KINDS.map((kind) => STRETCH_H[kind]),
    of: (run, index) => known.get(run)?.get(index),
  };
}

function vapourOf(shop: Shop, draw: FumesDraw): TaskVapour | undefined {
  const { run, action } = draw;
  if (action.op !== "layer" && action.op !== "step") return undefined;
  const { m3PerH, by } = airThere(shop, action.duties);
  // Windows and a fan that nobody has measured may bring so much.
  const usualM3PerH = by === "unmeasured" ? m3PerH + MOST_UNMEASURED_PER_H * shop.room!.value.m3 : m3PerH;
  const protection = protectionOf(action.duties);
  const liquids = liquidFumes(draw).filter(({ grams, standIn }) => grams > 0 && standIn !== undefined);
  if (usualM3PerH <= 0 || liquids.length === 0) return undefined;
  const partOf = (kind: LimitKind, solvent: Solvent, grams: number): number =>
    airNeededM3PerH(airToLimitM3(solvent, grams / run.pieces, kind), STRETCH_H[kind], kind);
  const parts = (stance: Stance, there: number): readonly number[] =>
    LIMIT_KINDS.map(
      (kind) =>
        liquids.reduce((sum, { grams, standIn }) => sum + partOf(kind, standIn![stance], grams), 0) / there,
    );
  return {
    afterHours: releaseHours(run, action),
    // What is worn protects who breathes; it puts out no spark.
    usual: parts("usual", usualM3PerH).map((part, kind) =>
      LIMIT_KINDS[kind] === "fire" ? part : part / protection,
    ),
    cautious: parts("cautious", m3PerH > 0 ? m3PerH : usualM3PerH),
  };
}

const together = (a: TaskVapour, b: TaskVapour): TaskVapour => ({
  afterHours: Math.max(a.afterHours, b.afterHours),
  usual: a.usual.map((part, kind) => part + b.usual[kind]!),
  cautious: a.cautious.map((part, kind) => part + b.cautious[kind]!),
});
