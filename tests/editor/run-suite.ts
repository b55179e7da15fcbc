/** Waits for the tests in a page to come to their end, and prints what they say. */
import process from "node:process";
import type { PageOptions } from "./editor.ts";
import { SUITE_MARK } from "./report.ts";

/** A workbench that never gets as far as the tests must not hang for ever. */
const GIVE_UP_MS = 120_000;

/** Opens a page with `show`; the answer is its exit code. `--verbose` prints all that the extension host says. */
export const runSuite = (
  show: (listeners: Pick<PageOptions, "onLog" | "onExit">) => Promise<unknown>,
): Promise<number> =>
  new Promise((resolve, reject) => {
    const giveUp = setTimeout(() => reject(new Error("The editor did not come to an end.")), GIVE_UP_MS);
    const onExit = (code: number): void => {
      clearTimeout(giveUp);
      resolve(code);
    };
    const onLog = (_type: string, args: readonly unknown[]): void => {
      const line = args.map(String).join(" ");
      const at = line.indexOf(SUITE_MARK);
      if (at >= 0) process.stdout.write(`${line.slice(at + SUITE_MARK.length)}\n`);
      else if (process.argv.includes("--verbose")) process.stdout.write(`  | ${line}\n`);
    };
    show({ onLog, onExit }).catch(reject);
  });
