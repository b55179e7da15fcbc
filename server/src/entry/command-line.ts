/**
 * The command line itself, bundled into `command-line.cjs`: hands the process over to `run` and ends with its status.
 *
 * The status is set and not forced, so that what was written still gets out.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { availableParallelism, homedir } from "node:os";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { cacheFolder } from "../cli/cache-folder.ts";
import type { CliOutput } from "../cli/io.ts";
import { run } from "../cli/main.ts";
import { nodeFiles, readStream } from "../cli/node-files.ts";
import { runGit } from "../cli/node-git.ts";
import { nodeWatch } from "../cli/node-watch.ts";
import { createAnalyst } from "../features/analyst.ts";
import { askingAt } from "./ask-at-terminal.ts";
import { checkInThreads, servesChecks } from "./check-threads.ts";
import { letProcessEnd } from "./end-process.ts";
import { createTidying } from "./idle-memory.ts";
import { packageRoot, versionIn } from "./package-root.ts";

const outputOf = (stream: NodeJS.WriteStream): CliOutput => ({
  write: (text) => {
    stream.write(text);
  },
  isTTY: stream.isTTY === true,
  columns: stream.columns,
});

const own = fileURLToPath(import.meta.url);

function start(): void {
  const home = packageRoot();
  void run(process.argv.slice(2), {
    createAnalyst,
    checkInThreads: (tasks, threads) => checkInThreads(own, tasks, threads),
    processors: availableParallelism(),
    readInput: () => readStream(process.stdin),
    ...(process.stdin.isTTY === true && process.stderr.isTTY === true
      ? { ask: askingAt({ input: process.stdin, output: process.stderr }) }
      : {}),
    stdout: outputOf(process.stdout),
    stderr: outputOf(process.stderr),
    cwd: process.cwd(),
    env: process.env,
    files: nodeFiles,
    git: runGit,
    watch: nodeWatch,
    version: versionIn(home),
    build: () => createHash("sha256").update(readFileSync(own)).digest("hex"),
    cacheFolder: () => cacheFolder(process.env, process.platform, homedir()),
    home,
    tidy: createTidying(),
    now: () => new Date().toISOString(),
    startLanguageServer: async () => {
      const { serve } = await import("./serve.ts");
      serve();
    },
  }).then(letProcessEnd);
}

if (!servesChecks()) start();
