/**
 * Files that no change can reach, so that nothing of them need be worked out: they, all that they use, all that uses
 * these, and so on, have the same text in both states. Jobs share a shop only through files that both use.
 */
import type { FilesState } from "./model.ts";

/** By what the states call a file. */
export function untouchedFiles(before: FilesState, after: FilesState): ReadonlySet<string> {
  const groups = new Groups();
  const texts = [before, after].map((state) => textsOf(state, groups));
  const [old, now] = texts as [ReadonlyMap<string, string>, ReadonlyMap<string, string>];
  const keys = new Set([...old.keys(), ...now.keys()]);
  const touched = new Set<string>();
  for (const key of keys) if (old.get(key) !== now.get(key)) touched.add(groups.of(key));
  return new Set([...keys].filter((key) => !touched.has(groups.of(key))));
}

function textsOf({ analysis, keyOf }: FilesState, groups: Groups): ReadonlyMap<string, string> {
  const { files } = analysis.program;
  const texts = new Map<string, string>();
  for (const [file, { tree, uses }] of files) {
    const key = keyOf(file);
    texts.set(key, tree.text);
    for (const { target } of uses) groups.join(key, keyOf(target));
  }
  return texts;
}

/** Sets that are joined, each named by one of its members. */
class Groups {
  readonly #above = new Map<string, string>();

  of(key: string): string {
    let top = key;
    for (let next = this.#above.get(top); next !== undefined; next = this.#above.get(top)) top = next;
    // The way up is short from now on.
    for (let at = key; at !== top; ) {
      const next = this.#above.get(at)!;
      this.#above.set(at, top);
      at = next;
    }
    return top;
  }

  join(a: string, b: string): void {
    const [first, second] = [this.of(a), this.of(b)];
    if (first !== second) this.#above.set(first, second);
  }
}
