/**
 * Waits for work that may never be done: a far-away folder that has gone silent, an editor that does not answer.
 */

/** What came of it. Late work goes on, and nobody hears of it any more. */
export type Outcome<T> = { readonly value: T } | { readonly failed: string } | { readonly late: true };

/** Resolves, and never rejects, after `ms` milliseconds at the latest. */
export async function within<T>(ms: number, work: Promise<T>): Promise<Outcome<T>> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<Outcome<T>>((resolve) => {
    timer = setTimeout(() => resolve({ late: true }), ms);
  });
  const done = work.then(
    (value) => ({ value }),
    (error: unknown) => ({ failed: error instanceof Error ? error.message : String(error) }),
  );
  try {
    return await Promise.race([done, late]);
  } finally {
    clearTimeout(timer);
  }
}
