/**
 * Makes all bundles. esbuild checks no types; `npm run typecheck` does. `--minify` is for the package, `--watch` for
 * work on the editor side. An editor reads the texts of the manifest beside the manifest only, so they are put there. The
 * terms of what is bundled are written down along with it, and the pages of the rules are put into one file.
 */
import { chmodSync, copyFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { build, context } from "esbuild";
import { LANGUAGES, packedTexts } from "../server/tools/texts.ts";
import { BUNDLES, buildOptions, ROOT } from "./bundles.ts";
import { bundledPackages, noticesText } from "./packing/bundled.ts";
import { NOTICES, RULE_PAGES } from "./packing/list.ts";
import { packedRulePages } from "./packing/rule-pages.ts";

for (const name of ["package.nls.json", "package.nls.de.json"])
  copyFileSync(path.join(ROOT, "client", name), path.join(ROOT, name));

const isWatching = process.argv.includes("--watch");
// What others take from the server changes with what they import, so that while they are worked on each is whole.
const bundles = isWatching
  ? BUNDLES.map((bundle) => ({ ...bundle, answers: undefined, isCalled: undefined }))
  : BUNDLES;
const options = bundles.map((bundle) => buildOptions(bundle, process.argv.includes("--minify")));

if (isWatching) {
  const contexts = await Promise.all(options.map((each) => context(each)));
  await Promise.all(contexts.map((watching) => watching.watch()));
} else {
  const builds = await Promise.allSettled(options.map((each) => build({ ...each, metafile: true })));
  // esbuild has said what is wrong, and where.
  if (builds.some(({ status }) => status === "rejected")) process.exit(1);
  const metafiles = builds.flatMap((each) => (each.status === "fulfilled" ? [each.value.metafile] : []));
  try {
    writeFileSync(path.join(ROOT, NOTICES), noticesText(bundledPackages(metafiles)));
    writeFileSync(path.join(ROOT, RULE_PAGES), packedRulePages());
    for (const tag of LANGUAGES)
      writeFileSync(path.join(ROOT, `server/dist/texts.${tag}.json`), packedTexts(tag));
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exit(1);
  }
  for (const { program, out } of BUNDLES) if (program) chmodSync(path.join(ROOT, out), 0o755);
}
