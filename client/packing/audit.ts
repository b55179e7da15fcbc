/**
 * `npm run audit`: what npm knows of weak spots in the packages that are bundled. Those of tools alone are only counted:
 * they never reach a user.
 *
 * 0: none is known; 1: a bundled package has one; 2: nobody could be asked.
 */
import { spawnSync } from "node:child_process";
import process from "node:process";
import { ROOT } from "../bundles.ts";
import { readAudit } from "./audit-report.ts";
import { reportBundled } from "./build-report.ts";

const names = new Set((await reportBundled()).map(({ name }) => name));
const { stdout, stderr } = spawnSync("npm", ["audit", "--json"], { cwd: ROOT, encoding: "utf8" });
const { lines, status } = readAudit(stdout ?? "", stderr ?? "", names);
for (const line of lines) (status === 0 ? process.stdout : process.stderr).write(`${line}\n`);
process.exitCode = status;
