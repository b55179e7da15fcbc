/**
 * Which jobs of a scope start from what others left: over `after`, or on pieces "as left by" them. Worked out once a scope,
 * so that a long chain of jobs costs its length and not its square.
 */
import { memo } from "../once.ts";
import type { Job, Piece } from "./model.ts";
import type { Scope } from "./program.ts";
import { createRings } from "./rings.ts";

export interface JobGraph {
  /** The names of the jobs whose layers a job starts from. */
  earlier(job: Job): readonly string[];
  /** Whether a job would come after itself by way of the job that it names. */
  comesAfterItself(job: Job): boolean;
  /** Whether a job starts, over other jobs on other pieces, from what a piece has become that it left. */
  leadsBack(job: Job, piece: Piece): boolean;
  /** Whether a piece of the job has a surface of this name. */
  hasSurface(job: Job, surface: string): boolean;
}

const known = new WeakMap<Scope, JobGraph>();

export function jobGraph(scope: Scope): JobGraph {
  const graph = known.get(scope) ?? createJobGraph(scope);
  known.set(scope, graph);
  return graph;
}

/** Has questions about the jobs of a scope answered by a graph that is there already. */
export function answerWith(graph: JobGraph, scope: Scope): void {
  known.set(scope, graph);
}

function createJobGraph(scope: Scope): JobGraph {
  const leftOfPieces = memo((name: string): readonly string[] => [
    ...new Set(scope.pieces.get(name)?.surfaces.flatMap(({ asLeftBy }) => (asLeftBy ? [asLeftBy.job] : []))),
  ]);
  const earlier = memo((job: Job): readonly string[] => [
    ...new Set([
      ...(job.after ? [job.after.job] : []),
      ...job.pieces.flatMap(({ piece }) => leftOfPieces(piece)),
    ]),
  ]);
  const earlierNamed = (name: string): readonly string[] => {
    const job = scope.jobs.get(name);
    return job ? earlier(job) : [];
  };
  const ringOf = createRings(earlierNamed);
  /** The jobs of a ring by the pieces that they work on. */
  const workersIn = memo((ring: ReturnType<typeof ringOf>): ReadonlyMap<string, ReadonlySet<string>> => {
    const workers = new Map<string, Set<string>>();
    for (const name of ring.nodes) {
      for (const { piece } of scope.jobs.get(name)?.pieces ?? []) {
        const ofPiece = workers.get(piece) ?? new Set();
        workers.set(piece, ofPiece.add(name));
      }
    }
    return workers;
  });
  const surfaces = memo(
    (job: Job): ReadonlySet<string> =>
      new Set(
        job.pieces.flatMap(({ piece }) => scope.pieces.get(piece)?.surfaces.map(({ name }) => name) ?? []),
      ),
  );
  return {
    earlier,
    comesAfterItself: (job) =>
      job.after !== undefined && (job.after.job === job.name || ringOf(job.name) === ringOf(job.after.job)),
    // A piece leads to the jobs that left it, so a job that works on it and that this one starts from is in its ring.
    leadsBack: (job, piece) => {
      const workers = workersIn(ringOf(job.name)).get(piece.name);
      return workers !== undefined && (workers.size > 1 || !workers.has(job.name));
    },
    hasSurface: (job, surface) => surfaces(job).has(surface),
  };
}
