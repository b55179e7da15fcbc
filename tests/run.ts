/**
 * `npm test`: linter, types, layers, build and all tests, one after the other, until one of them fails. What is given
 * behind `--` goes to the tests: a folder, a file, `-t` with a name. It ends with the time that all of it took processors.
 */
import { spawnSync } from "node:child_process";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { usedBefore } from "./harness/processor-time.ts";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const VITEST = ["node_modules/vitest/vitest.mjs", "run", "--config", "tests/vitest.config.ts"];

/** The npm that runs this, which is a script; on some systems it can't be started by its name alone. */
const npm = process.env.npm_execpath;

function run(command: string, argv: readonly string[]): void {
  const env = { ...process.env, ...usedBefore() };
  const { status, error } = spawnSync(command, argv, { cwd: ROOT, stdio: "inherit", env });
  if (error) console.error(error.message);
  if (status !== 0) process.exit(status ?? 1);
}

for (const script of ["lint", "typecheck", "layers", "build"])
  if (npm === undefined) run("npm", ["run", "--silent", script]);
  else run(process.execPath, [npm, "run", "--silent", script]);
run(process.execPath, [...VITEST, ...process.argv.slice(2)]);
