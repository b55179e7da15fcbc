/**
 * The surfaces of a job: those of its pieces, and those that its `apply` lines mean.
 */
import type { Target } from "../../../../grammar/src/tree.ts";
import type { Job, Piece, Surface } from "../model/model.ts";
import type { Scope } from "../model/program.ts";

export interface JobSurface {
  readonly label: string;
  readonly piece: Piece;
  readonly pieces: number;
  readonly surface: Surface;
}

/** Every surface of the job's pieces, with the label that the job uses for it. */
export function jobSurfaces(job: Job, scope: Scope): readonly JobSurface[] {
  const several = job.pieces.length > 1;
  return job.pieces.flatMap(({ piece: name, count }) => {
    const piece = scope.pieces.get(name);
    return (piece?.surfaces ?? []).map((surface) => ({
      label: several ? `${name}.${surface.name}` : surface.name,
      piece: piece!,
      pieces: count,
      surface,
    }));
  });
}

/** The surfaces that a job applies something to. */
export function surfacesWorkedOn(job: Job, scope: Scope): readonly JobSurface[] {
  const surfaces = jobSurfaces(job, scope);
  const named = job.applies.flatMap((apply) => apply.syntax.targets);
  return surfaces.filter((surface) => named.some((target) => targets(target, surface, surfaces)));
}

/** Whether a target of an `apply` line means this surface. */
export function targets(target: Target, candidate: JobSurface, all: readonly JobSurface[]): boolean {
  const name = target.surface?.text;
  if (name === undefined) return false;
  if (!target.piece && name === "all" && !all.some((s) => s.surface.name === "all")) return true;
  if (candidate.surface.name !== name) return false;
  if (target.piece) return candidate.piece.name === target.piece.text;
  return all.filter((s) => s.surface.name === name).length === 1;
}
