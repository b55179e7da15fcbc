/** What came of a piece of work: its value, or what it threw. */

export type Outcome<T> = { readonly value: T } | { readonly error: unknown };

export function outcomeOf<T>(work: () => T): Outcome<T> {
  try {
    return { value: work() };
  } catch (error) {
    return { error };
  }
}

/** Throws what the work threw. */
export function valueIn<T>(outcome: Outcome<T>): T {
  if ("error" in outcome) throw outcome.error;
  return outcome.value;
}

export const soundIn = <T>(outcome: Outcome<T>): T | undefined =>
  "error" in outcome ? undefined : outcome.value;

/** What many things came to; what whole lists came to is gone through only when somebody asks for what is not at hand. */
export class Noted<K, T> {
  readonly #known = new Map<K, Outcome<T>>();
  #lists: (readonly [readonly (K | undefined)[], readonly Outcome<T>[]])[] = [];

  get(about: K): Outcome<T> | undefined {
    return this.#known.get(about) ?? this.all().get(about);
  }

  /** Without going through lists, for work that is soon done again. */
  atHand(about: K): Outcome<T> | undefined {
    return this.#known.get(about);
  }

  set(about: K, outcome: Outcome<T>): void {
    this.#known.set(about, outcome);
  }

  /** What is about nothing is left out. */
  setAll(abouts: readonly (K | undefined)[], outcomes: readonly Outcome<T>[]): void {
    this.#lists.push([abouts, outcomes]);
  }

  all(): ReadonlyMap<K, Outcome<T>> {
    const lists = this.#lists;
    if (lists.length > 0) this.#lists = [];
    for (const [abouts, outcomes] of lists)
      for (let row = 0; row < outcomes.length; row += 1) {
        const about = abouts[row];
        if (about !== undefined) this.#known.set(about, outcomes[row]!);
      }
    return this.#known;
  }
}

/** Work that is done once for what it is about, and by others ahead of who asks. */
export interface Outcomes<K, T> {
  /** What failed once fails again, and is not tried twice. */
  (about: K): Outcome<T>;
  /** See `Noted.setAll`. */
  noteAll(abouts: readonly (K | undefined)[], outcomes: readonly Outcome<T>[]): void;
  /** All that has been worked out. */
  known(): ReadonlyMap<K, Outcome<T>>;
}

export function outcomes<K, T>(work: (about: K) => T): Outcomes<K, T> {
  const known = new Noted<K, T>();
  const outcome = (about: K): Outcome<T> => {
    const before = known.get(about);
    if (before) return before;
    const now = outcomeOf(() => work(about));
    known.set(about, now);
    return now;
  };
  return Object.assign(outcome, {
    noteAll: (abouts: readonly (K | undefined)[], all: readonly Outcome<T>[]) => known.setAll(abouts, all),
    known: () => known.all(),
  });
}
