/**
 * Which files lead to which by `use`.
 *
 * Files that use each other in a ring all reach the same files, so the rings are found first, and each is gone through
 * once. Whether one file reaches another is mostly told by the order in which the rings were closed: a ring only leads to
 * those closed before.
 */
import { memo, onceFor } from "../once.ts";
import type { FileId } from "../place.ts";
import { createRings, type Ring } from "./rings.ts";

/** A file sees the names of so many files at most; no workshop has as many. */
export const MAX_SEEN_FILES = 1000;

/** What a file sees. Files of one ring see the same, so that what is worked out of it is worked out once for them all. */
export interface Sight {
  /** One of those who see it: the file itself, or that of its ring whose name comes first. */
  readonly owner: FileId;
  /** As `reachable` has them for the owner. */
  readonly files: readonly FileId[];
}

export interface UseGraph {
  /** The same object for all files of a ring, unless they see so many that each sees others. */
  sight(from: FileId): Sight;
  /** In the order in which this file sees them; that counts where a name stands twice. */
  ownSight(from: FileId): Sight;
  /** The file itself and all it uses, directly or not, each once, those that it mentions itself first. */
  reachable(from: FileId): readonly FileId[];
  /** Whether `target` can be reached from `from` by at least one `use`. */
  reaches(from: FileId, target: FileId): boolean;
  /** Those among `candidates` that are one of `wanted`, or lead to one. */
  leadingTo(candidates: readonly FileId[], wanted: ReadonlySet<FileId>): ReadonlySet<FileId>;
}

/** What a graph is made from: a program, of which only the `use` lines count. */
interface UsingFiles {
  readonly files: ReadonlyMap<FileId, { readonly uses: readonly { readonly target: FileId }[] }>;
}

/** The graph of a program. It is worked out as far as it is asked about, and once. */
export const useGraph: (program: UsingFiles) => UseGraph = onceFor((program) => createUseGraph(program));

function createUseGraph(program: UsingFiles): UseGraph {
  const targets = (file: FileId): readonly FileId[] => [
    ...new Set(program.files.get(file)?.uses.map((use) => use.target)),
  ];
  const ringOf = createRings(targets);

  const reachable = (from: FileId): readonly FileId[] => {
    const seen = new Set<FileId>([from]);
    if (program.files.get(from)?.uses.length === 0) return [...seen];
    const done = new Set<Ring>();
    for (const file of seen) {
      if (seen.size > MAX_SEEN_FILES) break;
      const ring = ringOf(file);
      if (done.has(ring)) continue;
      done.add(ring);
      for (const target of targets(file)) seen.add(target);
      for (const other of [...ring.nodes, ...ring.exits]) seen.add(other);
    }
    return [...seen].slice(0, MAX_SEEN_FILES);
  };

  const ownSight = memo((owner: FileId): Sight => ({ owner, files: reachable(owner) }));
  const ringSight = memo((ring: Ring): Sight => ownSight(firstByName(ring.nodes)));
  const sight = (from: FileId): Sight => {
    if (program.files.get(from)?.uses.length === 0) return ownSight(from);
    const shared = ringSight(ringOf(from));
    return shared.files.length < MAX_SEEN_FILES ? shared : ownSight(from);
  };

  const reaches = (from: FileId, target: FileId): boolean => {
    const [start, end] = [ringOf(from), ringOf(target)];
    if (start === end) return start.nodes.length > 1 || targets(from).includes(from);
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
        ring.nodes.some((file) => wanted.has(file)) || ring.exits.some((exit) => leading.has(ringOf(exit)));
      if (leads) leading.add(ring);
    }
    return new Set(candidates.filter((file) => leading.has(ringOf(file))));
  };

  return { sight, ownSight, reachable, reaches, leadingTo };
}

const firstByName = (files: readonly FileId[]): FileId => files.toSorted()[0]!;
