/**
 * What is worn at a step because of something else than the step itself: the same can asks for the same on every surface,
 * and the vapour of a stripper that is left on is breathed at all other work in the room.
 */
import { AIR_GEAR, inOrderOfDuties, STRIPPER_VAPOUR, wornTogether } from "./duties.ts";
import type { SheetProcedure, SheetStep } from "./model.ts";

/** The procedures of a job; where it has no dates, nothing is known to be done at the same time. */
export function withSharedWear(procedures: readonly SheetProcedure[]): readonly SheetProcedure[] {
  const ofCan = sameCan(procedures.flatMap(stepsOf));
  const stripping = procedures.flatMap((procedure) => wetStripper(procedure));
  return procedures.map((procedure) => ({
    ...procedure,
    entries: procedure.entries.map((entry) =>
      entry.kind === "step" ? besideStripper(ofCan(entry), stripping) : entry,
    ),
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
  readonly step: SheetStep;
}

function wetStripper(procedure: SheetProcedure): readonly WetStripper[] {
  const steps = stepsOf(procedure).filter(({ op }) => op !== "wait");
  return steps.flatMap((step, i): readonly WetStripper[] => {
    const { strip, planned, wear } = step;
    const gear = wear.filter((item) => AIR_GEAR.has(item));
    if (!strip || gear.length === 0) return [];
    return planned.map(({ startAt, endAt, pieces }) => {
      const next = steps[i + 1]?.planned.find((time) => time.pieces.some((piece) => pieces.includes(piece)));
      const off = strip.takesOff ? (strip.hours === undefined ? next?.startAt : endAt) : next?.endAt;
      return { from: startAt, to: off ?? endAt, gear, step };
    });
  });
}

/** A step in whose time a stripper lies on another surface. */
function besideStripper(step: SheetStep, stripping: readonly WetStripper[]): SheetStep {
  if (step.op === "wait") return step;
  const beside = stripping.filter(
    (wet) =>
      wet.step.strip !== step.strip &&
      step.planned.some(({ startAt, endAt }) => startAt < wet.to && endAt > wet.from),
  );
  if (beside.length === 0) return step;
  return {
    ...step,
    wear: wornTogether([...step.wear, ...beside.flatMap(({ gear }) => gear)]),
    dangers: inOrderOfDuties([...step.dangers, STRIPPER_VAPOUR]),
  };
}
