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

/** Work that is done once for what it is about, and by others ahead of who asks. */
export interface Outcomes<K, T> {
  /** What failed once fails again, and is not tried twice. */
  (about: K): Outcome<T>;
  /** What it came to, where somebody has worked it out. */
  note(about: K, outcome: Outcome<T>): void;
}

export function outcomes<K, T>(work: (about: K) => T): Outcomes<K, T> {
  const known = new Map<K, Outcome<T>>();
  const outcome = (about: K): Outcome<T> => {
    const before = known.get(about);
    if (before) return before;
    const now = outcomeOf(() => work(about));
    known.set(about, now);
    return now;
  };
  return Object.assign(outcome, { note: (about: K, noted: Outcome<T>) => known.set(about, noted) });
}
