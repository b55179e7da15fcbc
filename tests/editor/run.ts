/**
 * Runs the tests of `suite.ts` inside a real VS Code, with the packaged extension as users install it.
 *
 *     npm run test:editor
 *
 * installs the editor where it is missing, builds the package and runs this, after a look at the colours of Markdown. `--unpacked` takes the extension as it
 * lies in this project instead. Ends with `N passed, N failed`, and with 1 if anything failed.
 */
import { existsSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { buildSuite } from "./build-suite.ts";
import { ROOT, startEditor } from "./editor.ts";
import { testMarkdownColours } from "./markdown-colours.ts";
import { runSuite, type Said, withClosingLine } from "./run-suite.ts";

const VSIX = path.join(ROOT, "finishwright.vsix");

/** The exit code of the tests. */
const run = async (said: Said): Promise<number> => {
  const isUnpacked = process.argv.includes("--unpacked");
  if (!isUnpacked && !existsSync(VSIX)) {
    throw new Error("There is no package: run `npm run package`, or give --unpacked.");
  }
  await testMarkdownColours();
  const tests = await buildSuite();
  const editor = await startEditor({
    folder: path.join(import.meta.dirname, "folder"),
    ...(!isUnpacked && { vsix: VSIX }),
  });
  try {
    return await runSuite((listeners) => editor.show({ tests, ...listeners }), said);
  } finally {
    await editor.stop();
  }
};

process.exitCode = await withClosingLine(run);
