/** The bundles as they would be written, each made once for all tests of a process, and once more in short names. */
import { build } from "esbuild";
import { BUNDLES, type Bundle, buildOptions } from "../../client/bundles.ts";
import { memo } from "../../server/src/core/once.ts";

const bundleOf = (out: string): Bundle => {
  const bundle = BUNDLES.find((each) => each.out === out);
  if (bundle === undefined) throw new Error(`There is no bundle ${out}.`);
  return bundle;
};

/** With esbuild's own account of what is in it. */
export const made = memo((out: string) =>
  build({ ...buildOptions(bundleOf(out), false), write: false, metafile: true }),
);

export const madeShort = memo((out: string) => build({ ...buildOptions(bundleOf(out), true), write: false }));
