/**
 * Bundles everything that is run outside the project's own tools, each into one file without dependencies:
 * the VS Code extension, the language server and the command line.
 *
 * All three are CommonJS for Node 20: VS Code loads an extension that way, and users run the command line on the Node
 * that they have. esbuild checks no types; `npm run typecheck` does. `--minify` is for the package, `--watch` for work
 * on the editor side.
 */
import { chmodSync, existsSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { type BuildOptions, build, context } from "esbuild";

const root = path.resolve(import.meta.dirname, "..");
const minify = process.argv.includes("--minify");

interface Bundle {
  readonly entry: string;
  readonly out: string;
  /** Run by its own name, so it gets a first line for the shell and the right to run. */
  readonly program?: true;
}

const BUNDLES: readonly Bundle[] = [
  { entry: "client/src/extension.ts", out: "client/dist/extension.cjs" },
  { entry: "server/src/entry/node.ts", out: "server/dist/server.cjs" },
  { entry: "server/src/entry/command-line.ts", out: "server/dist/finishwright.cjs", program: true },
];

const optionsOf = (bundle: Bundle): BuildOptions => ({
  absWorkingDir: root,
  entryPoints: [bundle.entry],
  outfile: bundle.out,
  bundle: true,
  format: "cjs",
  platform: "node",
  target: "node20",
  external: ["vscode"],
  // Packages that offer both kinds of module are taken as ES modules, of which unused parts fall away.
  mainFields: ["module", "main"],
  // esbuild leaves `import.meta` empty in CommonJS; this is what it says there.
  define: { "import.meta.url": "importMetaUrl" },
  banner: {
    js: `${bundle.program ? "#!/usr/bin/env node\n" : ""}const importMetaUrl = require("node:url").pathToFileURL(__filename).href;`,
  },
  minify,
  legalComments: "none",
  logLevel: "warning",
});

const bundles = BUNDLES.filter((bundle) => existsSync(path.join(root, bundle.entry)));

if (process.argv.includes("--watch")) {
  const contexts = await Promise.all(bundles.map((bundle) => context(optionsOf(bundle))));
  await Promise.all(contexts.map((watching) => watching.watch()));
} else {
  try {
    await Promise.all(bundles.map((bundle) => build(optionsOf(bundle))));
  } catch {
    // esbuild has said what is wrong, and where.
    process.exit(1);
  }
}
for (const bundle of bundles) {
  const file = path.join(root, bundle.out);
  if (bundle.program && existsSync(file)) chmodSync(file, 0o755);
}
