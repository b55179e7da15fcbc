/**
 * Makes all bundles. esbuild checks no types; `npm run typecheck` does. `--minify` is for the package, `--watch` for
 * work on the editor side. An editor reads the texts of the manifest beside the manifest only, so they are put there.
 */
import { chmodSync, copyFileSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { build, context } from "esbuild";
import { BUNDLES, buildOptions, ROOT } from "./bundles.ts";

copyFileSync(path.join(ROOT, "client/package.nls.json"), path.join(ROOT, "package.nls.json"));

const options = BUNDLES.map((bundle) => buildOptions(bundle, process.argv.includes("--minify")));

if (process.argv.includes("--watch")) {
  const contexts = await Promise.all(options.map((each) => context(each)));
  await Promise.all(contexts.map((watching) => watching.watch()));
} else {
  try {
    await Promise.all(options.map((each) => build(each)));
  } catch {
    // esbuild has said what is wrong, and where.
    process.exit(1);
  }
  for (const { program, out } of BUNDLES) if (program) chmodSync(path.join(ROOT, out), 0o755);
}
