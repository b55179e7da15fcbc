/** `npm run licences`: every bundled package, a line each, with its licence; fails where one is missing or not known. */
import process from "node:process";
import { reportBundled } from "./build-report.ts";

try {
  for (const { name, version, licence } of await reportBundled()) {
    process.stdout.write(`${licence.padEnd(14)} ${name} ${version}\n`);
  }
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
}
