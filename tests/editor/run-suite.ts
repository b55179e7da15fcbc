/**
 * Waits for the tests in a page to come to their end, and prints what they say. However a run ends, its last line is
 * `N passed, N failed`.
 *
 * An editor that never gets as far as the tests must not hang for ever, and a busy machine must not end one that is at
 * work: what counts is how long the page does nothing. It is asked for a turn again and again; only so many turns in a
 * row without a word from the tests or the editor end the run.
 */
import process from "node:process";
import type { Page } from "playwright-core";
import type { PageOptions } from "./editor.ts";
import { SUITE_MARK } from "./report.ts";

/** Each turn takes a quarter of a second and whatever the page needs for an answer. */
const TURN_MS = 250;
const MOST_QUIET_TURNS = 480;
/** A page that does not answer at all does not turn. */
const NO_ANSWER_MS = 600_000;

/** What the tests of one run have said so far. */
export interface Said {
  passed: number;
  failed: number;
  /** Whether their own closing line has come. */
  isClosed: boolean;
}

/** Opens a page with `show`; the answer is its exit code. `--verbose` prints all that the extension host says. */
export const runSuite = (
  show: (listeners: Pick<PageOptions, "onLog" | "onExit">) => Promise<Page>,
  said: Said,
): Promise<number> =>
  new Promise((resolve, reject) => {
    let quietTurns = 0;
    let isOver = false;
    const onExit = (code: number): void => {
      isOver = true;
      resolve(code);
    };
    const onLog = (_type: string, args: readonly unknown[]): void => {
      quietTurns = 0;
      const line = args.map(String).join(" ");
      const at = line.indexOf(SUITE_MARK);
      if (at >= 0) print(line.slice(at + SUITE_MARK.length), said);
      else if (process.argv.includes("--verbose")) process.stdout.write(`  | ${line}\n`);
    };
    const watch = async (page: Page): Promise<void> => {
      for (; !isOver; quietTurns += 1) {
        if (quietTurns === MOST_QUIET_TURNS) throw new Error("The editor did not come to an end.");
        await turnOf(page);
      }
    };
    show({ onLog, onExit })
      .then(watch)
      .catch((error: unknown) => {
        isOver = true;
        reject(error);
      });
  });

/** A turn of the page: a while, measured by itself. A page that is loading another has none to give. */
const turnOf = async (page: Page): Promise<void> => {
  let limit: NodeJS.Timeout | undefined;
  const tooLate = new Promise<never>((_, reject) => {
    limit = setTimeout(() => reject(new Error("The editor's page does not answer.")), NO_ANSWER_MS);
  });
  const turn = page.evaluate((ms) => new Promise((wake) => setTimeout(wake, ms)), TURN_MS);
  try {
    await Promise.race([turn.catch(() => page.waitForTimeout(TURN_MS).catch(() => undefined)), tooLate]);
  } finally {
    clearTimeout(limit);
  }
};

const print = (line: string, said: Said): void => {
  process.stdout.write(`${line}\n`);
  if (line.startsWith("ok ")) said.passed += 1;
  else if (line.startsWith("FAIL ")) said.failed += 1;
  else if (/^\d+ passed, \d+ failed$/.test(line)) said.isClosed = true;
};

/** The exit code of `run`; what it throws, and an end before the tests', is told and counts as a failure. */
export const withClosingLine = async (run: (said: Said) => Promise<number>): Promise<number> => {
  const said: Said = { passed: 0, failed: 0, isClosed: false };
  let status = 1;
  try {
    status = await run(said);
    if (said.isClosed) return status;
    process.stdout.write("The editor came to an end before the tests did.\n");
  } catch (error) {
    process.stdout.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  }
  process.stdout.write(`${said.passed} passed, ${said.failed + 1} failed\n`);
  return status === 0 ? 1 : status;
};
