/**
 * Runs the tests of `suite.ts` inside a real VS Code, with the packaged extension as users install it.
 *
 *     npm run test:editor
 *
 * installs the editor where it is missing, builds the package and runs this, after a look at the colours of Markdown and
 * before a walk from an empty folder to a printed sheet. `--unpacked` takes the extension as it
 * lies in this project instead. Ends with `N passed, N failed`, and with 1 if anything failed.
 */
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { buildSuite } from "./build-suite.ts";
import { ROOT, startEditor } from "./editor.ts";
import { testMarkdownColours } from "./markdown-colours.ts";
import { runSuite, type Said, withClosingLine } from "./run-suite.ts";
import { walkFirstHour } from "./walk.ts";

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
    settings: { "git.enabled": true, "git.autorefresh": true, "git.openRepositoryInParentFolders": "never" },
  });
  commitAll(editor.folder);
  try {
    const status = await runSuite((listeners) => editor.show({ tests, ...listeners }), said);
    await walkFirstHour(editor);
    return status;
  } finally {
    await editor.stop();
  }
};

/** So that what is changed in the tests has an earlier state. */
function commitAll(folder: string): void {
  const name = ["-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false"];
  for (const args of [
    ["init", "-q"],
    ["add", "-A"],
    [...name, "commit", "-q", "-m", "one"],
  ])
    execFileSync("git", args, { cwd: folder, stdio: "inherit" });
}

process.exitCode = await withClosingLine(run);
