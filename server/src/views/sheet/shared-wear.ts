/**
 * What is worn at a step because of something else than the step itself: the same can asks for the same on every surface,
 * and the vapour of a stripper that is left on is breathed at all other work in the room.
 */
import { inOrderOfDuties } from "./duties.ts";
import { AIR_GEAR, STRIPPER_VAPOUR, wornTogether } from "./gear.ts";
import type { SheetProcedure, SheetStep } from "./model.ts";

/** The procedures of a job; where it has no dates, nothing is known to be done at the same time. */
export function withSharedWear(procedures: readonly SheetProcedure[]): readonly SheetProcedure[] {
  const ofCan = sameCan(procedures.flatMap(stepsOf));
  const beside = besideStrippers(procedures.flatMap(wetStrippers));
  return procedures.map((procedure) => ({
    ...procedure,
    entries: procedure.entries.map((entry) => {
      if (entry.kind !== "step") return entry;
      const step = ofCan(entry);
      const gear = beside(entry);
      if (gear.length === 0) return step;
      return {
        ...step,
        wear: wornTogether([...step.wear, ...gear]),
        dangers: inOrderOfDuties([...step.dangers, STRIPPER_VAPOUR]),
      };
    }),
  }));
}

const stepsOf = ({ entries }: SheetProcedure): readonly SheetStep[] =>
  entries.filter((entry) => entry.kind === "step");

/** A coat with what is worn and minded at any coat out of the same can. */
function sameCan(steps: readonly SheetStep[]): (step: SheetStep) => SheetStep {
  const cans = new Map<string, { readonly wear: readonly string[]; readonly dangers: readonly string[] }>();
  for (const { can, wear, dangers } of steps) {
    if (can === undefined) continue;
    const others = cans.get(can) ?? { wear: [], dangers: [] };
    cans.set(can, {
      wear: wornTogether([...others.wear, ...wear]),
      dangers: inOrderOfDuties([...others.dangers, ...dangers]),
    });
  }
  return (step) => ({ ...step, ...(step.can === undefined ? {} : cans.get(step.can)) });
}

/** From when to when a stripper lies on a surface, and what its own step has against its vapour. */
interface WetStripper {
  readonly from: string;
  readonly to: string;
  readonly gear: readonly string[];
  /** Its own step and those before it on its surface: another piece may still be at them. */
  readonly own: readonly SheetStep[];
}

function wetStrippers(procedure: SheetProcedure): readonly WetStripper[] {
  const steps = stepsOf(procedure).filter(({ op }) => op !== "wait");
  return steps.flatMap((step, i): readonly WetStripper[] => {
    const { strip, planned, wear } = step;
    const gear = wear.filter((item) => AIR_GEAR.has(item));
    if (!strip || gear.length === 0) return [];
    return planned.map(({ startAt, endAt, pieces }) => {
      const next = steps[i + 1]?.planned.find((time) => time.pieces.some((piece) => pieces.includes(piece)));
      const off = strip.takesOff ? (strip.hours === undefined ? next?.startAt : endAt) : next?.endAt;
      return { from: startAt, to: off ?? endAt, gear, own: steps.slice(0, i + 1) };
    });
  });
}

/** What keeps off the vapour of the strippers that lie on other surfaces in the time of a step. */
function besideStrippers(strippers: readonly WetStripper[]): (step: SheetStep) => readonly string[] {
  // By day, of which each has few, however many surfaces a job has.
  const byDay = new Map<string, WetStripper[]>();
  for (const stripper of strippers)
    for (const day of new Set([stripper.from, stripper.to].map(dayOf)))
      byDay.set(day, [...(byDay.get(day) ?? []), stripper]);
  return (step) => {
    if (step.op === "wait") return [];
    return step.planned.flatMap(({ startAt, endAt }) =>
      [...new Set([startAt, endAt].map(dayOf))].flatMap((day) =>
        (byDay.get(day) ?? []).flatMap(({ from, to, gear, own }) =>
          startAt < to && endAt > from && !own.includes(step) ? gear : [],
        ),
      ),
    );
  };
}

const dayOf = (at: string): string => at.slice(0, 10);
