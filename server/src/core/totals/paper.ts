/**
 * Abrasive paper for a job: what is sanded with each grit, the sheets that it takes and the hours.
 *
 * An estimate: what a sheet sands is common practice without a source (`quantities/abrasives.ts`), and shops differ by
 * a factor of two. It is shown as an estimate and never enters a cost; a job states its paper in `supplies`.
 */
import { abrasiveUse } from "../quantities/abrasives.ts";
import type { StepAction } from "../surface/actions.ts";
import { workedAreaM2 } from "../surface/part-of-surface.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { actionHours } from "./task-plan.ts";

export interface PaperUse {
  readonly grit: number;
  /** Passes over all pieces added up. */
  readonly areaM2: number;
  /** Hand sheets of 230 mm × 280 mm; or, instead of them, */
  readonly sheets: number;
  /** discs of 125 mm. */
  readonly discs: number;
  /** Hands-on hours; a step through several grits is divided evenly among them. */
  readonly hours: number;
  readonly basis: string;
}

/** By grit, the coarsest first. Grits and areas that are not known are left out. */
export function jobPaper(runs: readonly SurfaceRun[]): readonly PaperUse[] {
  const byGrit = new Map<number, { areaM2: number; hours: number }>();
  for (const run of runs.filter(({ surface }) => surface?.areaGap === undefined)) {
    for (const { action } of run.moments) {
      if (action.op === "step" && isSanding(action)) addPass(byGrit, run, action);
    }
  }
  return [...byGrit]
    .sort(([a], [b]) => a - b)
    .map(([grit, { areaM2, hours }]): PaperUse => ({ ...abrasiveUse(areaM2, [grit])[0]!, areaM2, hours }));
}

const isSanding = ({ verb, grits }: StepAction): boolean =>
  (verb === "sand" || verb === "scuff") && grits.length > 0;

function addPass(
  byGrit: Map<number, { areaM2: number; hours: number }>,
  run: SurfaceRun,
  action: StepAction,
): void {
  const areaM2 = workedAreaM2(run.surface, action.part) * run.pieces;
  const hours = (actionHours(run, action) * run.pieces) / action.grits.length;
  for (const grit of action.grits) {
    const before = byGrit.get(grit) ?? { areaM2: 0, hours: 0 };
    byGrit.set(grit, { areaM2: before.areaM2 + areaM2, hours: before.hours + hours });
  }
}
