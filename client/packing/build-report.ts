/** What is bundled, found out without writing anything. */
import { build } from "esbuild";
import { BUNDLES, buildOptions } from "../bundles.ts";
import { type BundledPackage, bundledPackages } from "./bundled.ts";

export async function reportBundled(): Promise<readonly BundledPackage[]> {
  const results = await Promise.all(
    BUNDLES.map((bundle) => build({ ...buildOptions(bundle, false), write: false, metafile: true })),
  );
  return bundledPackages(results.map(({ metafile }) => metafile));
}
