/**
 * Which job goes on with what another left, surface by surface: over `after`, or on a piece "as left by" it. A job
 * between the two may have left the surface alone.
 */
import type { Job } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import type { Place } from "../place.ts";
import { type JobSurface, surfacesWorkedOn } from "./job-surfaces.ts";

export interface JobHistory {
  /** What an earlier job left of the surface that a job comes to. */
  leftBy(job: Job, surface: JobSurface): LeftBy | undefined;
  /** Whether another job of the scope goes on with what this one leaves on the surface. */
  isContinued(job: Job, surface: JobSurface): boolean;
}

export interface LeftBy {
  readonly job: Job;
  readonly piece: string;
  readonly surface: string;
  /** The line that says so. */
  readonly place: Place;
  /** Long ago, where the piece only tells of it. */
  readonly longAgo: boolean;
}

/** The history of the jobs of a scope; it remembers what it has worked out. */
export function createJobHistory(scope: Scope): JobHistory {
  const known = new Map<Job, readonly JobSurface[]>();
  const workedOn = (job: Job): readonly JobSurface[] => {
    const surfaces = known.get(job) ?? surfacesWorkedOn(job, scope);
    known.set(job, surfaces);
    return surfaces;
  };
  const leftBy = (job: Job, surface: JobSurface) => findLeftBy(job, surface, scope, workedOn);
  let continued: ReadonlySet<string> | undefined;
  return {
    leftBy,
    isContinued: (job, { piece, surface }) => {
      continued ??= new Set(
        [...scope.jobs.values()].flatMap((later) =>
          workedOn(later).flatMap((other) => {
            const left = leftBy(later, other);
            return left ? [keyOf(left.job, left.piece, left.surface)] : [];
          }),
        ),
      );
      return continued.has(keyOf(job, piece.name, surface.name));
    },
  };
}

const keyOf = (job: Job, piece: string, surface: string): string => `${job.name} ${piece} ${surface}`;

function findLeftBy(
  job: Job,
  { piece, surface }: JobSurface,
  scope: Scope,
  workedOn: (job: Job) => readonly JobSurface[],
): LeftBy | undefined {
  if (job.after) {
    const earlier = lastToWork(job.after.job, scope, (it) =>
      workedOn(it).find((other) => other.piece.name === piece.name && other.surface.name === surface.name),
    );
    if (earlier) return { ...earlier, place: job.after.place, longAgo: false };
  }
  const told = surface.asLeftBy;
  if (!told || told.job === job.name) return undefined;
  const leaving = lastToWork(told.job, scope, (it) => {
    const same = workedOn(it).filter((other) => other.surface.name === surface.name);
    return same.find((other) => other.piece.name === piece.name) ?? same[0];
  });
  return leaving && { ...leaving, place: told.place, longAgo: true };
}

/** Goes back from a job over `after` to the last one that did something to the surface. */
function lastToWork(
  from: string,
  scope: Scope,
  find: (job: Job) => JobSurface | undefined,
): Pick<LeftBy, "job" | "piece" | "surface"> | undefined {
  const seen = new Set<Job>();
  let job = scope.jobs.get(from);
  while (job && !seen.has(job)) {
    seen.add(job);
    const found = find(job);
    if (found) return { job, piece: found.piece.name, surface: found.surface.name };
    job = job.after && scope.jobs.get(job.after.job);
  }
  return undefined;
}
