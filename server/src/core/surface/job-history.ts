/**
 * Which job goes on with what another left, surface by surface: over `after`, or on a piece "as left by" it. A job
 * between the two may have left the surface alone.
 */

import type { Job, Surface } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import { memo, onFirstUse } from "../once.ts";
import type { Place } from "../place.ts";
import { afterOrder } from "./after-order.ts";
import {
  appliedSurfaces,
  bySurfaceName,
  type JobSurface,
  jobSurfacesNamed,
  type SurfacesByName,
} from "./job-surfaces.ts";

/** A surface as a job comes to it. */
export interface Visited {
  readonly job: Job;
  readonly surface: JobSurface;
}

/** Where the state of a surface comes from. */
export interface Nearest {
  readonly at: Visited;
  readonly before: LeftBy | undefined;
}

export interface JobHistory {
  /**
   * Where the state of a surface comes from: what an earlier job left; where none worked on it, what the surface of
   * another piece was that it is told to be like, and so on. Without `before` the surface is as described.
   */
  nearest(visited: Visited): Nearest;
  /** The surface of another piece that this one is told to be like, as the job that left it came to it. */
  toldOf(visited: Visited): Visited | undefined;
  /** The surfaces that another job of the scope goes on with after a job has left them, by `surfaceKey`. */
  continuedSurfaces(): ReadonlySet<string>;
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
  const workedOn = memo((job: Job) => bySurfaceName(appliedSurfaces(job, scope).keys()));
  const lastToWork = lastToWorkIn(scope, workedOn);
  const leftBy = (job: Job, surface: JobSurface) => findLeftBy(job, surface, lastToWork);
  const toldOf = ({ job, surface: { piece, surface } }: Visited): Visited | undefined => {
    const told = surface.asLeftBy;
    const leaving = told && scope.jobs.get(told.job);
    if (!leaving || leaving === job) return undefined;
    const named = jobSurfacesNamed(leaving, scope, surface.name);
    const left = named.find((it) => it.piece.name === piece.name) ?? named[0];
    return left && { job: leaving, surface: left };
  };
  // All surfaces on the way come from where the last of them does, so that a long chain is gone through once.
  const ends = new Map<Job, Map<Surface, ReturnType<JobHistory["nearest"]>>>();
  const nearest = (start: Visited): ReturnType<JobHistory["nearest"]> => {
    const way: Visited[] = [];
    const seen = new Set<Surface>();
    let end: ReturnType<JobHistory["nearest"]> | undefined;
    for (let at: Visited | undefined = start; at && !end; ) {
      end = ends.get(at.job)?.get(at.surface.surface);
      if (end) break;
      way.push(at);
      const before = leftBy(at.job, at.surface);
      // Pieces that tell of each other go round; the names check reports it.
      const next: Visited | undefined = before || seen.has(at.surface.surface) ? undefined : toldOf(at);
      seen.add(at.surface.surface);
      if (!next) end = { at, before };
      at = next;
    }
    for (const { job, surface } of way) {
      const ofJob = ends.get(job) ?? new Map();
      ends.set(job, ofJob.set(surface.surface, end!));
    }
    return end!;
  };
  return {
    nearest,
    toldOf,
    continuedSurfaces: () =>
      new Set(
        [...scope.jobs.values()].flatMap((later) =>
          [...workedOn(later).values()].flat().flatMap((other) => {
            const left = leftBy(later, other);
            return left ? [keyOf(left.job, left.piece, left.surface)] : [];
          }),
        ),
      ),
  };
}

/** A surface as a job leaves it. */
export const surfaceKey = (job: Job, { piece, surface }: JobSurface): string =>
  keyOf(job, piece.name, surface.name);

const keyOf = (job: Job, piece: string, surface: string): string => `${job.name} ${piece} ${surface}`;

function findLeftBy(job: Job, { piece, surface }: JobSurface, lastToWork: LastToWork): LeftBy | undefined {
  if (job.after) {
    const earlier = lastToWork(job.after.job, surface.name, piece.name);
    if (earlier) return { ...workOf(earlier), place: job.after.place, longAgo: false };
  }
  const told = surface.asLeftBy;
  if (!told || told.job === job.name) return undefined;
  // That of the same piece, where the job worked on it, else the first of this name.
  const leaving = lastToWork(told.job, surface.name);
  if (!leaving) return undefined;
  const same = leaving.worked.find((each) => each.piece.name === piece.name);
  return {
    ...workOf({ ...leaving, found: same ?? leaving.found }),
    place: told.place,
    longAgo: true,
  };
}

const workOf = ({ job, found }: Worked): Pick<LeftBy, "job" | "piece" | "surface"> => ({
  job,
  piece: found.piece.name,
  surface: found.surface.name,
});

interface Worked {
  readonly job: Job;
  readonly found: JobSurface;
  /** All surfaces of the name that the job worked on. */
  readonly worked: readonly JobSurface[];
}

/** Goes back from a job over `after` to the last one that did something to a surface of this name, of one piece or any. */
type LastToWork = (from: string, surface: string, piece?: string) => Worked | undefined;

function lastToWorkIn(scope: Scope, workedOn: (job: Job) => SurfacesByName): LastToWork {
  const afterOrderOf = onFirstUse(() => afterOrder(scope.jobs));
  const jobsBy = onFirstUse(() => {
    const bySurface = new Map<string, Set<Job>>();
    const note = (key: string, job: Job): void => {
      const jobs = bySurface.get(key);
      if (jobs) jobs.add(job);
      else bySurface.set(key, new Set([job]));
    };
    for (const job of scope.jobs.values()) {
      for (const [name, surfaces] of workedOn(job)) {
        note(name, job);
        for (const { piece } of surfaces) note(nameKey(name, piece.name), job);
      }
    }
    return bySurface;
  });
  const rows = memo((key: string) => afterOrderOf().row(jobsBy().get(key) ?? []));
  return (from, surface, piece) => {
    const start = scope.jobs.get(from);
    if (!start) return undefined;
    const workIn = (job: Job): Worked | undefined => {
      const worked = workedOn(job).get(surface) ?? [];
      const found = piece === undefined ? worked[0] : worked.find((each) => each.piece.name === piece);
      return found && { job, found, worked };
    };
    const order = afterOrderOf();
    if (order.goesRound(start)) return walkRound(start, scope, workIn);
    const job = order.nearest(start, rows(piece === undefined ? surface : nameKey(surface, piece)));
    return job && workIn(job);
  };
}

const nameKey = (surface: string, piece: string): string => `${surface} ${piece}`;

/** As far as it is walked where jobs come after themselves, which is an error; it is not worth more. */
const MOST_ROUND = 100;

function walkRound(start: Job, scope: Scope, workIn: (job: Job) => Worked | undefined): Worked | undefined {
  const seen = new Set<Job>();
  let job: Job | undefined = start;
  while (job && !seen.has(job) && seen.size < MOST_ROUND) {
    seen.add(job);
    const found = workIn(job);
    if (found) return found;
    job = job.after && scope.jobs.get(job.after.job);
  }
  return undefined;
}
