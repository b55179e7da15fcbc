/**
 * Runs the tests of `suite.ts` inside a real VS Code, with the packaged extension as users install it.
 *
 *     npm run test:editor
 *
 * installs the editor where it is missing, builds the package and runs this. `--unpacked` takes the extension as it
 * lies in this project instead. Ends with `N passed, N failed`, and with 1 if anything failed.
 */
import { existsSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { buildSuite } from "./build-suite.ts";
import { type Editor, ROOT, startEditor } from "./editor.ts";
import { SUITE_MARK } from "./report.ts";

/** A workbench that never gets as far as the tests must not hang for ever. */
const GIVE_UP_MS = 120_000;

const VSIX = path.join(ROOT, "finishwright.vsix");

const runSuite = (editor: Editor, tests: string): Promise<number> =>
  new Promise((resolve, reject) => {
    const giveUp = setTimeout(() => reject(new Error("The editor did not come to an end.")), GIVE_UP_MS);
    const finish = (code: number): void => {
      clearTimeout(giveUp);
      resolve(code);
    };
    const log = (_type: string, args: readonly unknown[]): void => {
      const line = args.map(String).join(" ");
      if (line.includes(SUITE_MARK)) console.log(line.slice(line.indexOf(SUITE_MARK) + SUITE_MARK.length));
      else if (process.argv.includes("--verbose")) console.log(`  | ${line}`);
    };
    editor.show({ tests, onLog: log, onExit: finish }).catch(reject);
  });

const isUnpacked = process.argv.includes("--unpacked");
if (!isUnpacked && !existsSync(VSIX)) {
  throw new Error("There is no package: run `npm run package`, or give --unpacked.");
}
const tests = await buildSuite();
const editor = await startEditor({
  folder: path.join(import.meta.dirname, "folder"),
  ...(!isUnpacked && { vsix: VSIX }),
});
try {
  process.exitCode = await runSuite(editor, tests);
} finally {
  await editor.stop();
}
