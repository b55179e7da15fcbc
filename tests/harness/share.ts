/**
 * `npm test` has 12 minutes of the processor for everything, so where there are many inputs of one kind it takes a share
 * of them; `npm run test:long`, which sets `LONG_TIMES`, takes all. Shares are chosen by place, so that every run of
 * `npm test` looks at the same.
 */
import process from "node:process";

export const IS_LONG_RUN = process.env.LONG_TIMES !== undefined;

/** One of so many, the first among them; all of them in the long run. */
export const shareOf = <T>(all: readonly T[], oneOf: number): readonly T[] =>
  IS_LONG_RUN ? all : all.filter((_, place) => place % oneOf === 0);
