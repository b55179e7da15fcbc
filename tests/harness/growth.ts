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

/** So much is enough to see roughly, in milliseconds of the processor. */
const ENOUGH_MS = 32;
/**
 * So much is enough to be sure. Some machines count the processor in fours, by looking now and then who works: what is
 * seen eight times is a third off as easily as not, what is seen forty times is not.
 */
const SURE_MS = 160;
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
  const look = (enough: number): Look => ({
    // The larger first, so that what is slow at first makes the exponent larger, never smaller.
    most: meanMs(() => make(size), work, enough),
    least: meanMs(() => make(size / 4), work, enough),
  });
  const rough = exponentOf(look(ENOUGH_MS));
  if (rough <= CLEAR_GROWTH) return rough;
  let best = look(SURE_MS);
  for (let again = 1; again < attempts * REPEATS; again += 1) {
    if (exponentOf(best) <= (again < REPEATS ? CLEAR_GROWTH : MOST_GROWTH)) break;
    const { most, least } = look(SURE_MS);
    best = { most: Math.min(best.most, most), least: Math.min(best.least, least) };
  }
  return exponentOf(best);
}

/** Milliseconds at the largest size that is measured, and at a quarter of it. */
interface Look {
  readonly most: number;
  readonly least: number;
}

const exponentOf = ({ most, least }: Look): number => Math.log(most / least) / Math.log(4);

/** What a piece of work takes, over as many runs as there is enough to measure; each on an input of its own. */
function meanMs<T>(make: () => T, work: (input: T) => unknown, enough: number): number {
  let total = 0;
  let runs = 0;
  // What takes nothing at all must end as well.
  for (; total < enough && runs < 1000; runs += 1) total += cpuMs(make(), work);
  return Math.max(total, 1) / runs;
}

/** Milliseconds of the processor that a piece of work takes this thread. */
export function cpuMs<T>(input: T, work: (input: T) => unknown): number {
  const start = process.threadCpuUsage();
  work(input);
  const { user, system } = process.threadCpuUsage(start);
  return (user + system) / 1000;
}
