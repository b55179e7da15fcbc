/**
 * How cost grows with the size of what comes in, as the exponent of a power: 1 is in proportion, 2 is quadratic.
 *
 * Measured in processor time of this thread, the least of several runs, over sizes that double until there is enough to
 * measure. A machine that is busy with other things makes runs longer, never shorter, so a slow run is run again before
 * it is believed, and no limit in seconds decides anything. What is clearly in proportion is measured once.
 */
import process from "node:process";

/** n log n stays well below over the sizes that are measured, caches and the collector counted in; n² is above. */
export const MOST_GROWTH = 1.5;

export interface GrowthOptions {
  /** The first size and the last. */
  readonly from: number;
  readonly to: number;
  /** So often what is too much is measured again before it is believed. */
  readonly attempts?: number;
}

/** So much is enough to measure, in milliseconds of the processor; some machines count them in fours. */
const ENOUGH_MS = 32;
/** What the largest size takes no longer than grows with nothing that could be told from noise. */
const NOTHING_MS = 8;
/** An exponent below needs no second look: one that is too large would have to be mismeasured by half. */
const CLEAR_GROWTH = 1.2;
const REPEATS = 3;
const ATTEMPTS = 4;

/**
 * The exponent with which the cost of `work(make(size))` grows, between a quarter of the largest size measured and that
 * size. Making the input is not measured. 0 where even the largest size costs next to nothing.
 */
export function growth<T>(
  make: (size: number) => T,
  work: (input: T) => unknown,
  { from, to, attempts = ATTEMPTS }: GrowthOptions,
): number {
  let size = from;
  let once = cpuMs(make(size), work);
  while (size < to && once < ENOUGH_MS) {
    size *= 2;
    once = cpuMs(make(size), work);
  }
  // The first run of all compiles as well, so it is run again before it is believed to cost something.
  if (once < ENOUGH_MS) once = Math.min(once, cpuMs(make(size), work));
  if (once < NOTHING_MS) return 0;
  let exponent = Number.POSITIVE_INFINITY;
  let [most, least] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let attempt = 0; attempt < attempts && exponent > MOST_GROWTH; attempt += 1) {
    for (let run = 0; run < REPEATS && exponent > CLEAR_GROWTH; run += 1) {
      // The larger first, so that what is slow at first makes the exponent larger, never smaller.
      most = Math.min(
        most,
        meanMs(() => make(size), work),
      );
      least = Math.min(
        least,
        meanMs(() => make(size / 4), work),
      );
      exponent = Math.log(most / least) / Math.log(4);
    }
  }
  return exponent;
}

/** What a piece of work takes, over as many runs as there is enough to measure; each on an input of its own. */
function meanMs<T>(make: () => T, work: (input: T) => unknown): number {
  let total = 0;
  let runs = 0;
  // What takes nothing at all must end as well.
  for (; total < ENOUGH_MS && runs < 1000; runs += 1) total += cpuMs(make(), work);
  return Math.max(total, 1) / runs;
}

/** Milliseconds of the processor that a piece of work takes this thread. */
export function cpuMs<T>(input: T, work: (input: T) => unknown): number {
  const start = process.threadCpuUsage();
  work(input);
  const { user, system } = process.threadCpuUsage(start);
  return (user + system) / 1000;
}
