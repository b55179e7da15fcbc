/**
 * The built command line as a process of its own, on the Node of the tests and on the first other one of this machine:
 * what only a process shows. `npm run build` makes the bundle; `npm test` does that first.
 */
import { spawn } from "node:child_process";
import { closeSync, existsSync, mkdtempSync, openSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { shareOf } from "../harness/share.ts";
import { FILES } from "./bench.ts";
import { writeFiles } from "./run-cli.ts";

const PROGRAM = fileURLToPath(new URL("../../server/dist/finishwright.cjs", import.meta.url));

const nodes = (): readonly string[] => {
  const folders = (process.env.PATH ?? "").split(path.delimiter);
  const other = folders
    .filter((folder) => !folder.includes("node_modules"))
    .map((folder) => path.join(folder, "node"))
    .find((program) => existsSync(program));
  return [...new Set([process.execPath, ...(other === undefined ? [] : [other])])];
};

/** Work over the nights in which summer time begins: 2027-03-14 in America, 2027-03-28 in Europe. */
const SUMMER_TIME = `material slow {
  family dewaxed shellac
  cure 36 h
}
piece board {
  surface face {
    shape panel 1 m x 1 m
    wood beech
  }
}
shop room {
}
recipe coats {
  layer slow, takes 1 h
  wait 24 h
  layer slow, takes 1 h
}
job america {
  piece board
  in room
  start 2027-03-14 02:30
  apply coats to face
}
job europe {
  piece board
  in room
  start 2027-03-27 12:00
  apply coats to face
}
`;

let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "finishwright-bundle-"));
  const many = Array.from({ length: 1000 }, (_, i) => `material m${i} {\n  covers 3 h\n}\n`).join("");
  await writeFiles(folder, { ...FILES, "many.finish": many, "summer-time.finish": SUMMER_TIME });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the bundle; with `readAtMost` its output is closed after so many characters. */
function runBundle(
  node: string,
  argv: readonly string[],
  options: {
    readonly readAtMost?: number;
    readonly input?: string;
    readonly zone?: string;
    readonly isInputOpen?: true;
  } = {},
): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const zone = options.zone === undefined ? {} : { TZ: options.zone };
    const env = { PATH: process.env.PATH ?? "", ...zone };
    const child = spawn(node, [PROGRAM, ...argv], { cwd: folder, env });
    const written = { stdout: "", stderr: "" };
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      written.stdout += text;
      if (written.stdout.length >= (options.readAtMost ?? Infinity)) child.stdout.destroy();
    });
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      written.stderr += text;
    });
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, ...written }));
    // An editor keeps its end open; a server whose editor hangs up ends at once.
    if (options.isInputOpen) child.stdin.write(options.input ?? "");
    else child.stdin.end(options.input);
  });
}

describe.each(nodes())("on %s", (node) => {
  test("says its version", async () => {
    const { status, stdout } = await runBundle(node, ["--version"]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^\d+\.\d+\.\d+\n$/u);
  });

  test("ends with the status of what it found", async () => {
    expect(await runBundle(node, ["check", "job.finish"])).toMatchObject({ status: 0, stderr: "" });
    expect((await runBundle(node, ["check", "many.finish"])).status).toBe(1);
    expect((await runBundle(node, ["check", "none.finish"])).status).toBe(2);
    expect((await runBundle(node, ["totals", "job.finish"])).stdout).toContain("37.00 EUR");
  });

  test("writes all that it has to say into a pipe, also where it ends with 1", async () => {
    const { stdout } = await runBundle(node, ["check", "many.finish", "--format", "json"]);
    expect((JSON.parse(stdout) as unknown[]).length).toBeGreaterThan(1000);
  });

  test.skipIf(!existsSync("/dev/full"))("says in words that the output cannot be written", async () => {
    const full = openSync("/dev/full", "w");
    const child = spawn(node, [PROGRAM, "totals", "job.finish"], {
      cwd: folder,
      stdio: ["ignore", full, "pipe"],
    });
    const [stderr, status] = await Promise.all([
      child.stderr!.setEncoding("utf8").toArray(),
      new Promise((resolve) => child.on("close", resolve)),
    ]);
    closeSync(full);
    expect(status).toBe(2);
    expect(stderr.join("")).toMatch(/^finishwright: The output cannot be written: ENOSPC[^\n]+\n$/u);
  });

  test.each(shareOf(["America/New_York", "UTC", "Australia/Lord_Howe", "Europe/Berlin"], 2))(
    "keeps the time of the shop's own clock where this machine is in %s",
    async (zone) => {
      const { stdout } = await runBundle(node, ["totals", "summer-time.finish", "--format", "json"], {
        zone,
      });
      const { jobs } = JSON.parse(stdout) as { jobs: readonly Record<string, unknown>[] };
      // 1 h, 24 h and 1 h after the start; the cure is 36 h.
      expect(jobs[0]).toMatchObject({
        elapsed_h: 26,
        finish: "2027-03-15T04:30:00",
        in_service: "2027-03-16T16:30:00",
      });
      expect(jobs[1]).toMatchObject({
        elapsed_h: 26,
        finish: "2027-03-28T14:00:00",
        in_service: "2027-03-30T02:00:00",
      });
    },
  );

  test("formats standard input, however long", async () => {
    const input = "shop   s {\ncrew 2\n}\n".repeat(6000);
    const { status, stdout } = await runBundle(node, ["format", "-"], { input });
    expect(status).toBe(0);
    expect(stdout).toBe("shop s {\n  crew 2\n}\n".repeat(6000));
  });

  test("a reader who has seen enough is no accident", async () => {
    const { stderr } = await runBundle(node, ["check", "many.finish"], { readAtMost: 1 });
    expect(stderr).toBe("");
  });

  test("serves an editor that says goodbye at once", async () => {
    const message = (content: object): string => {
      const text = JSON.stringify({ jsonrpc: "2.0", ...content });
      return `Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`;
    };
    const input = [
      { id: 1, method: "initialize", params: { processId: null, rootUri: null, capabilities: {} } },
      { id: 2, method: "shutdown" },
      { method: "exit" },
    ].map(message);
    const { status, stdout } = await runBundle(node, ["language-server", "--stdio"], {
      input: input.join(""),
      isInputOpen: true,
    });
    expect(stdout).toContain('"serverInfo":{"name":"Finishwright"');
    expect(status).toBe(0);
  });
});
