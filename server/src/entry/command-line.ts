/**
 * The command line as a program: hands the process over to `run` and ends with its status.
 *
 * The status is set and not forced, so that what was written still gets out; a reader who has seen enough (`| head`) is
 * no accident, and a disk that is full is told like a file that cannot be read.
 */
import process from "node:process";
import type { CliOutput } from "../cli/io.ts";
import { run } from "../cli/main.ts";
import { nodeFiles, readStream } from "../cli/node-files.ts";
import { shownText } from "../escape/shown-text.ts";
import { createAnalyst } from "../features/analyst.ts";
import { letProcessEnd } from "./end-process.ts";
import { packageRoot, versionIn } from "./package-root.ts";

const outputOf = (stream: NodeJS.WriteStream): CliOutput => ({
  write: (text) => {
    stream.write(text);
  },
  isTTY: stream.isTTY === true,
  columns: stream.columns,
});

for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error) => {
    if (Reflect.get(error, "code") === "EPIPE") process.exit();
    // What is on stderr may come out where stdout does not.
    if (stream === process.stdout) {
      process.stderr.write(
        `finishwright: The output cannot be written: ${shownText(error.message)}. What came out is not whole.\n`,
      );
    }
    process.exit(2);
  });
}

const home = packageRoot();
run(process.argv.slice(2), {
  createAnalyst,
  readInput: () => readStream(process.stdin),
  stdout: outputOf(process.stdout),
  stderr: outputOf(process.stderr),
  cwd: process.cwd(),
  env: process.env,
  files: nodeFiles,
  version: versionIn(home),
  home,
  now: () => new Date().toISOString(),
  startLanguageServer: async () => {
    const { serve } = await import("./serve.ts");
    serve();
  },
}).then(letProcessEnd);
