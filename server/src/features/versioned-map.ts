/**
 * A map of which every earlier state can still be read, and whose next state costs no copy.
 *
 * Only the newest state holds the entries. An older one holds how it differs from the next, and makes a copy for itself
 * when it is read after all, which is seldom (H. Baker, Shallow binding makes functional arrays fast, SIGPLAN Notices 26
 * (1991), no. 8).
 */
interface Difference<K, V> {
  readonly newer: VersionedMap<K, V>;
  readonly key: K;
  /** What stood there; nothing where there was no such key. */
  readonly before: { readonly value: V } | undefined;
}

export class VersionedMap<K, V> implements ReadonlyMap<K, V> {
  #entries: Map<K, V> | undefined;
  #difference: Difference<K, V> | undefined;

  constructor(entries: Map<K, V> = new Map()) {
    this.#entries = entries;
  }

  /** The next state, with one entry set. */
  with(key: K, value: V): VersionedMap<K, V> {
    return this.#next(key, (entries) => entries.set(key, value));
  }

  /** The next state, without a key. */
  without(key: K): VersionedMap<K, V> {
    return this.has(key) ? this.#next(key, (entries) => entries.delete(key)) : this;
  }

  /** The keys set or taken out since an earlier state; undefined where that is not known any more, or no earlier one. */
  changedSince(earlier: ReadonlyMap<K, V>): readonly K[] | undefined {
    const keys = new Set<K>();
    let state: unknown = earlier;
    while (state !== this) {
      const difference: Difference<K, V> | undefined =
        state instanceof VersionedMap ? state.#difference : undefined;
      if (difference === undefined) return undefined;
      keys.add(difference.key);
      state = difference.newer;
    }
    return [...keys];
  }

  #next(key: K, change: (entries: Map<K, V>) => void): VersionedMap<K, V> {
    const entries = this.#read();
    const before = entries.has(key) ? { value: entries.get(key) as V } : undefined;
    change(entries);
    const newer = new VersionedMap(entries);
    this.#entries = undefined;
    this.#difference = { newer, key, before };
    return newer;
  }

  #read(): Map<K, V> {
    if (this.#entries !== undefined) return this.#entries;
    const differences: Difference<K, V>[] = [];
    let newest: VersionedMap<K, V> = this;
    while (newest.#difference !== undefined) {
      differences.push(newest.#difference);
      newest = newest.#difference.newer;
    }
    const entries = new Map(newest.#entries);
    for (const { key, before } of differences.reverse()) {
      if (before === undefined) entries.delete(key);
      else entries.set(key, before.value);
    }
    this.#entries = entries;
    this.#difference = undefined;
    return entries;
  }

  get size(): number {
    return this.#read().size;
  }
  get(key: K): V | undefined {
    return this.#read().get(key);
  }
  has(key: K): boolean {
    return this.#read().has(key);
  }
  forEach(take: (value: V, key: K, map: ReadonlyMap<K, V>) => void): void {
    for (const [key, value] of this.#read()) take(value, key, this);
  }
  entries(): MapIterator<[K, V]> {
    return this.#read().entries();
  }
  keys(): MapIterator<K> {
    return this.#read().keys();
  }
  values(): MapIterator<V> {
    return this.#read().values();
  }
  [Symbol.iterator](): MapIterator<[K, V]> {
    return this.entries();
  }
}
