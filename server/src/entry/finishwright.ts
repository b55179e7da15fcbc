/**
 * The command line as a program, bundled into `finishwright.cjs`.
 *
 * Its version is told at once; for everything else the command line itself is loaded. A reader who has seen enough
 * (`| head`) is no accident, and a disk that is full is told like a file that cannot be read.
 */
import process from "node:process";
import { shownText } from "../escape/shown-text.ts";
import { loadBeside } from "./compile-cache.ts";
import { packageRoot, versionIn } from "./package-root.ts";

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

const [first, ...rest] = process.argv.slice(2);
if (rest.length === 0 && (first === "--version" || first === "-V")) {
  process.stdout.write(`${versionIn(packageRoot())}\n`);
} else {
  loadBeside("./command-line.cjs");
}
