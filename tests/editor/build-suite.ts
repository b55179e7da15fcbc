/** Bundles the tests that run inside VS Code into one file, as its extension host loads it. */
import path from "node:path";
import { build } from "esbuild";
import { ROOT } from "./editor.ts";

export const buildSuite = async (): Promise<string> => {
  const outfile = path.join(ROOT, ".cache", "editor-suite", "suite.cjs");
  await build({
    entryPoints: [path.join(import.meta.dirname, "suite.ts")],
    outfile,
    bundle: true,
    format: "cjs",
    platform: "node",
    target: "node20",
    external: ["vscode"],
    logLevel: "warning",
  });
  return outfile;
};
