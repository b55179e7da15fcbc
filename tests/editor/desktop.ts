/**
 * Runs the same tests in a VS Code that is installed on this machine.
 *
 *     VSCODE=/usr/share/code/code npm run test:desktop
 *
 * `VSCODE` names the program itself, not the `code` script. On a machine without a screen put `xvfb-run -a` in front.
 * Nothing is downloaded. The extension is taken as it lies in this project, the settings and extensions of the user
 * are left alone, and a copy of the folder is opened.
 */
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { runTests } from "@vscode/test-electron";
import { buildSuite } from "./build-suite.ts";
import { ROOT } from "./editor.ts";

const vscodeExecutablePath = process.env.VSCODE;
if (vscodeExecutablePath === undefined) {
  console.error("Say which VS Code: VSCODE=/usr/share/code/code npm run test:desktop");
  process.exit(2);
}
const scratch = mkdtempSync(path.join(tmpdir(), "finishwright-desktop-"));
try {
  const folder = path.join(scratch, "folder");
  cpSync(path.join(import.meta.dirname, "folder"), folder, { recursive: true });
  process.exitCode = await runTests({
    vscodeExecutablePath,
    extensionDevelopmentPath: ROOT,
    extensionTestsPath: await buildSuite(),
    launchArgs: [
      folder,
      "--disable-workspace-trust",
      `--user-data-dir=${path.join(scratch, "user")}`,
      `--extensions-dir=${path.join(scratch, "extensions")}`,
      ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
    ],
  });
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
