/** Bundles the tests that run inside VS Code into one file, as its extension host loads it. */
import path from "node:path";
import { build } from "esbuild";
import { ROOT } from "./editor.ts";

export const buildSuite = async (
  platform: "node" | "browser" = "node",
  outfile = path.join(ROOT, ".cache", "editor-suite", "suite.cjs"),
): Promise<string> => {
  await build({
    entryPoints: [path.join(import.meta.dirname, "suite.ts")],
    outfile,
    bundle: true,
    format: "cjs",
    platform,
    target: "es2022",
    external: ["vscode"],
    logLevel: "warning",
  });
  return outfile;
};
