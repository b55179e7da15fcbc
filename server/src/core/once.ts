/**
 * Work that is done once for what it is about. All of it is a pure function of immutable objects, so what it came to holds
 * as long as they are there. What throws is not remembered.
 */

/** When it is first asked for. */
export function onFirstUse<V>(work: () => V): () => V {
  const known = memo((_: undefined) => work());
  return () => known(undefined);
}

/** By any key, for as long as the function itself is there. */
export function memo<K, V>(work: (about: K) => V): (about: K) => V {
  return remembering(work, new Map<K, V>());
}

/** By objects, none of which is kept alive by it. */
export function onceFor<K extends object, V>(work: (about: K) => V): (about: K) => V {
  return remembering(work, new WeakMap<K, V>());
}

/** Texts kept by `forRecentTexts`, and their length at most: what a person writes on a line. */
const RECENT_TEXTS = 1000;
const LONGEST_RECENT = 500;

/**
 * By the texts that were asked about lately: words of a line come again on every surface that a recipe is done on, and in
 * the copies that a person makes of it. A text of unusual length is worked on each time, so that nothing large is kept.
 */
export function forRecentTexts<V>(work: (text: string) => V): (text: string) => V {
  const known = new Map<string, V>();
  const remembered = remembering(work, known);
  return (text) => {
    if (text.length > LONGEST_RECENT) return work(text);
    if (known.size >= RECENT_TEXTS && !known.has(text)) known.clear();
    return remembered(text);
  };
}

interface Known<K, V> {
  get(about: K): V | undefined;
  has(about: K): boolean;
  set(about: K, value: V): unknown;
}

const remembering =
  <K, V>(work: (about: K) => V, known: Known<K, V>): ((about: K) => V) =>
  (about) => {
    const before = known.get(about);
    if (before !== undefined || known.has(about)) return before as V;
    const value = work(about);
    known.set(about, value);
    return value;
  };

/**
 * By lists of the same objects in the same order; of those that begin with one object the last. A list must not be empty.
 */
export function onceForList<K extends object, V>(
  work: (about: readonly K[]) => V,
): (about: readonly K[]) => V {
  const known = new WeakMap<K, { readonly about: readonly K[]; readonly value: V }>();
  return (about) => {
    const before = known.get(about[0]!);
    if (before && isSameList(before.about, about)) return before.value;
    const value = work(about);
    known.set(about[0]!, { about, value });
    return value;
  };
}

/** Whether two lists hold the same objects in the same order. */
export function isSameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index += 1) if (a[index] !== b[index]) return false;
  return true;
}

/**
 * What `found` says first along a chain that `next` leads through, beyond where it is asked; each link is looked at once, for
 * all chains that come through it. A chain that comes round ends there.
 */
export function firstBefore<K extends object, V>(
  next: (of: K) => K | undefined,
  found: (at: K) => V | undefined,
): (of: K) => V | undefined {
  const known = new Map<K, V | undefined>();
  const look = memo(found);
  return (of) => {
    const passed = new Set<K>();
    let at: K | undefined = of;
    let first: V | undefined;
    while (at && first === undefined && !passed.has(at)) {
      if (known.has(at)) {
        first = known.get(at);
        break;
      }
      passed.add(at);
      at = next(at);
      first = at && look(at);
    }
    for (const each of passed) known.set(each, first);
    return first;
  };
}
