/** A process whose read never comes back ends all the same. */
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { pathToFileURL } from "node:url";
import { afterAll, expect, test } from "vitest";

const folder = mkdtempSync(path.join(tmpdir(), "finishwright-end-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const moduleUrl = pathToFileURL(path.resolve("server/src/entry/end-process.ts")).href;

const ended = (code: string): Promise<{ readonly code: number | null; readonly signal: string | null }> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--input-type=module", "--eval", code], { stdio: "ignore" });
    child.on("error", reject);
    child.on("exit", (status, signal) => resolve({ code: status, signal }));
  });

test.skipIf(process.platform === "win32").each(["endProcess", "letProcessEnd"])(
  "%s, while a pipe is opened that nobody writes to",
  async (name) => {
    const pipe = path.join(folder, name);
    execFileSync("mkfifo", [pipe]);
    const script = `
      import { open } from "node:fs/promises";
      import { ${name} } from ${JSON.stringify(moduleUrl)};
      open(${JSON.stringify(pipe)}, "r").catch(() => {});
      setTimeout(() => ${name}(1), 20);`;
    expect(await ended(script)).toEqual({ code: null, signal: "SIGKILL" });
  },
);

test.each(["endProcess", "letProcessEnd"])(
  "%s gives its status where nothing is being read",
  async (name) => {
    const script = `
    import { ${name} } from ${JSON.stringify(moduleUrl)};
    ${name}(2);`;
    expect(await ended(script)).toEqual({ code: 2, signal: null });
  },
);
