/**
 * Stands for `fast-check` in the long run: every property gets as many times its usual inputs as `LONG_TIMES` says, and
 * begins with the seed `LONG_SEED` instead of its own.
 */
import process from "node:process";
// By its path, since its name leads here.
import fc from "../../node_modules/fast-check/lib/fast-check.js";

/** What fast-check runs where nothing is said. */
const USUAL_RUNS = 100;

const times = Number(process.env.LONG_TIMES ?? 10);
const seed = Number(process.env.LONG_SEED ?? 1);

function assert<T>(property: Parameters<typeof fc.assert<T>>[0], parameters: fc.Parameters<T> = {}) {
  const numRuns = (parameters.numRuns ?? USUAL_RUNS) * times;
  return fc.assert(property, { ...parameters, seed, numRuns });
}

export default { ...fc, assert };
