/**
 * The surfaces of a job: those of its pieces, and those that its `apply` lines mean.
 */
import type { Target } from "../../../../grammar/src/tree.ts";
import type { Job, JobApply, JobRecord, Piece, Surface } from "../model/model.ts";
import type { Scope } from "../model/program.ts";

export interface JobSurface {
  readonly label: string;
  readonly piece: Piece;
  readonly pieces: number;
  readonly surface: Surface;
}

interface SurfacesOfJob {
  readonly all: readonly JobSurface[];
  readonly byName: SurfacesByName;
  readonly order: ReadonlyMap<JobSurface, number>;
}

/** By piece and number of it: many jobs may work on one large piece, a surface each. */
const ofOnePiece = new WeakMap<Piece, Map<number, SurfacesOfJob>>();

function surfacesOf(job: Job, scope: Scope): SurfacesOfJob {
  const [only, ...others] = job.pieces;
  const piece = only && others.length === 0 ? scope.pieces.get(only.piece) : undefined;
  if (!only || !piece) return sorted(listed(job, scope));
  const known = ofOnePiece.get(piece) ?? new Map<number, SurfacesOfJob>();
  const surfaces = known.get(only.count) ?? sorted(listed(job, scope));
  ofOnePiece.set(piece, known.set(only.count, surfaces));
  return surfaces;
}

function listed(job: Job, scope: Scope): readonly JobSurface[] {
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

const sorted = (all: readonly JobSurface[]): SurfacesOfJob => ({
  all,
  byName: bySurfaceName(all),
  order: new Map(all.map((each, index) => [each, index])),
});

/** Surfaces of a job by their name, in the order of its pieces. */
export type SurfacesByName = ReadonlyMap<string, readonly JobSurface[]>;

export function bySurfaceName(surfaces: Iterable<JobSurface>): SurfacesByName {
  const byName = new Map<string, JobSurface[]>();
  for (const each of surfaces) {
    const named = byName.get(each.surface.name);
    if (named) named.push(each);
    else byName.set(each.surface.name, [each]);
  }
  return byName;
}

/** Every surface of the job's pieces, with the label that the job uses for it. */
export const jobSurfaces = (job: Job, scope: Scope): readonly JobSurface[] => surfacesOf(job, scope).all;

/** The surfaces of a job that have this name. */
export const jobSurfacesNamed = (job: Job, scope: Scope, name: string): readonly JobSurface[] =>
  surfacesOf(job, scope).byName.get(name) ?? [];

/** The surfaces that a job applies something to, in the order in which they stand, each with the lines that do so. */
export function appliedSurfaces(job: Job, scope: Scope): ReadonlyMap<JobSurface, readonly JobApply[]> {
  const surfaces = surfacesOf(job, scope);
  const applied = new Map<JobSurface, JobApply[]>();
  for (const apply of job.applies) {
    for (const surface of surfacesMeant(apply, surfaces)) {
      const applies = applied.get(surface);
      if (applies) applies.push(apply);
      else applied.set(surface, [apply]);
    }
  }
  const place = (surface: JobSurface): number => surfaces.order.get(surface)!;
  return new Map([...applied].sort(([a], [b]) => place(a) - place(b)));
}

/** The surfaces that a line of the record means. */
export const recordedSurfaces = (record: JobRecord, job: Job, scope: Scope): ReadonlySet<JobSurface> =>
  new Set(surfacesMeant(record, surfacesOf(job, scope)));

/** Without a target the only surface is meant, where there is one. */
function surfacesMeant({ syntax }: JobApply | JobRecord, surfaces: SurfacesOfJob): Iterable<JobSurface> {
  if (syntax.targets.length === 0) return surfaces.all.length === 1 ? surfaces.all : [];
  return new Set(syntax.targets.flatMap((target) => meant(target, surfaces)));
}

/**
 * The surfaces that a target of an `apply` line means: one, or all of a piece that is named alone; none where more than one
 * piece has a surface of its name.
 */
function meant(target: Target, { all, byName }: SurfacesOfJob): readonly JobSurface[] {
  const name = target.surface?.text;
  if (name === undefined) return [];
  if (!target.piece && name === "all" && !byName.has("all")) return all;
  const named = byName.get(name) ?? [];
  if (target.piece) return named.filter(({ piece }) => piece.name === target.piece?.text);
  if (named.length === 0) return all.filter(({ piece }) => piece.name === name);
  return named.length === 1 ? named : [];
}
