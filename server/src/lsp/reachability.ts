/** What the open files and those of the folders lead to, and when it is worth to look. */
import type { FileId } from "../core/place.ts";

/** What files lead to by what they use, themselves included. */
export function reachableFrom(
  roots: Iterable<FileId>,
  usedBy: (file: FileId) => readonly FileId[],
): ReadonlySet<FileId> {
  const reachable = new Set<FileId>();
  for (const root of roots) {
    // What is reached already leads to nothing that is not.
    if (!reachable.has(root)) for (const file of [root, ...usedBy(root)]) reachable.add(file);
  }
  return reachable;
}

/** So many are looked at whenever one is closed. */
const FEW_FILES = 100;

/**
 * Whether what nothing leads to any more is looked for after a file was closed. That takes a look at all files, so of
 * very many only an eighth of them later: closing them all costs their number and not its square.
 */
export class SweepClock {
  /** Files that were closed since it was last looked. */
  #closed = 0;

  isTimeAfterClosing(roots: number): boolean {
    this.#closed += 1;
    if (roots > FEW_FILES && this.#closed * 8 < roots) return false;
    this.#closed = 0;
    return true;
  }
}
