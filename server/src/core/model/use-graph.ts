/**
 * Which files lead to which by `use`.
 *
 * Files that use each other in a ring all reach the same files, so the rings are found first (R. Tarjan, Depth-first
 * search and linear graph algorithms, SIAM J. Comput. 1 (1972), no. 2), and each is gone through once. Whether one file
 * reaches another is mostly told by the order in which the rings were closed: a ring only leads to those closed before.
 */
import type { FileId } from "../place.ts";
import type { Program } from "./program.ts";

/** A file sees the names of so many files at most; no workshop has as many. */
export const MAX_SEEN_FILES = 1000;

/** Files that all reach each other; mostly one file that does not reach itself. */
interface Ring {
  /** Counts in the order in which rings are closed: what a ring leads to has a smaller number. */
  readonly number: number;
  readonly files: readonly FileId[];
  /** Files of other rings that files of this one use, each ring once. */
  readonly exits: readonly FileId[];
}

export interface UseGraph {
  /** The file itself and all it uses, directly or not, each once, those that it mentions itself first. */
  reachable(from: FileId): readonly FileId[];
  /** Whether `target` can be reached from `from` by at least one `use`. */
  reaches(from: FileId, target: FileId): boolean;
  /** Those among `candidates` that are one of `wanted`, or lead to one. */
  leadingTo(candidates: readonly FileId[], wanted: ReadonlySet<FileId>): ReadonlySet<FileId>;
}

const known = new WeakMap<Program, UseGraph>();

/** The graph of a program. It is worked out as far as it is asked about, and once. */
export function useGraph(program: Program): UseGraph {
  const graph = known.get(program) ?? createUseGraph(program);
  known.set(program, graph);
  return graph;
}

function createUseGraph(program: Program): UseGraph {
  const targets = (file: FileId): readonly FileId[] => [
    ...new Set(program.files.get(file)?.uses.map((use) => use.target)),
  ];
  const ringOf = createRings(targets);

  const reachable = (from: FileId): readonly FileId[] => {
    const seen = new Set<FileId>([from]);
    const done = new Set<Ring>();
    for (const file of seen) {
      if (seen.size > MAX_SEEN_FILES) break;
      const ring = ringOf(file);
      if (done.has(ring)) continue;
      done.add(ring);
      for (const target of targets(file)) seen.add(target);
      for (const other of [...ring.files, ...ring.exits]) seen.add(other);
    }
    return [...seen].slice(0, MAX_SEEN_FILES);
  };

  const reaches = (from: FileId, target: FileId): boolean => {
    const [start, end] = [ringOf(from), ringOf(target)];
    if (start === end) return start.files.length > 1 || targets(from).includes(from);
    const seen = new Set<Ring>([start]);
    for (const ring of seen) {
      if (ring === end) return true;
      for (const exit of ring.exits) {
        const next = ringOf(exit);
        if (next.number >= end.number) seen.add(next);
      }
    }
    return false;
  };

  const leadingTo = (candidates: readonly FileId[], wanted: ReadonlySet<FileId>): ReadonlySet<FileId> => {
    const rings = new Set(candidates.map(ringOf));
    for (const ring of rings) for (const exit of ring.exits) rings.add(ringOf(exit));
    const leading = new Set<Ring>();
    for (const ring of [...rings].sort((a, b) => a.number - b.number)) {
      const leads =
        ring.files.some((file) => wanted.has(file)) || ring.exits.some((exit) => leading.has(ringOf(exit)));
      if (leads) leading.add(ring);
    }
    return new Set(candidates.filter((file) => leading.has(ringOf(file))));
  };

  return { reachable, reaches, leadingTo };
}

/** A file on the way down, with the uses that are still to be followed. */
interface Visit {
  readonly file: FileId;
  readonly targets: readonly FileId[];
  next: number;
  /** The earliest file on the way that is reached from here. */
  low: number;
  readonly index: number;
}

/** Without recursion, since a chain of files may be longer than the stack is deep. */
function createRings(targets: (file: FileId) => readonly FileId[]): (file: FileId) => Ring {
  const rings = new Map<FileId, Ring>();
  let closed = 0;

  const search = (root: FileId): void => {
    const index = new Map<FileId, number>();
    /** Files whose ring is not closed yet. */
    const open: FileId[] = [];
    const way: Visit[] = [];
    const enter = (file: FileId): void => {
      way.push({ file, targets: targets(file), next: 0, low: index.size, index: index.size });
      index.set(file, index.size);
      open.push(file);
    };
    const close = (visit: Visit): void => {
      const files = open.splice(open.lastIndexOf(visit.file));
      const inRing = new Set(files);
      const exits = new Map<Ring, FileId>();
      for (const target of files.flatMap(targets)) {
        const ring = inRing.has(target) ? undefined : rings.get(target);
        if (ring !== undefined && !exits.has(ring)) exits.set(ring, target);
      }
      const ring: Ring = { number: closed++, files, exits: [...exits.values()] };
      for (const file of files) rings.set(file, ring);
    };
    enter(root);
    for (let visit = way.at(-1); visit !== undefined; visit = way.at(-1)) {
      const target = visit.targets[visit.next++];
      if (target === undefined) {
        if (visit.low === visit.index) close(visit);
        way.pop();
        const above = way.at(-1);
        if (above !== undefined) above.low = Math.min(above.low, visit.low);
      } else if (!rings.has(target)) {
        const before = index.get(target);
        if (before === undefined) enter(target);
        else visit.low = Math.min(visit.low, before);
      }
    }
  };

  return (file) => {
    if (!rings.has(file)) search(file);
    return rings.get(file)!;
  };
}
