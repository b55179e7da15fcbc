/** How a run of the editor's tests ends: by what the editor does, not by a clock, and always with its closing line. */
import type { Page } from "playwright-core";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { SUITE_MARK } from "../editor/report.ts";
import { runSuite, withClosingLine } from "../editor/run-suite.ts";

const written: string[] = [];
beforeEach(() => {
  written.length = 0;
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    written.push(String(text));
    return true;
  });
});
afterEach(() => vi.restoreAllMocks());
const lines = (): readonly string[] => written.join("").trimEnd().split("\n");

type Listeners = Parameters<Parameters<typeof runSuite>[0]>[0];

/** A page of which every turn calls `turn` with its number. */
const run = (turn: (count: number, listeners: Required<Listeners>) => void): Promise<number> =>
  withClosingLine((said) =>
    runSuite(async (listeners) => {
      let count = 0;
      const evaluate = async (): Promise<void> => {
        count += 1;
        turn(count, listeners as Required<Listeners>);
      };
      return { evaluate } as unknown as Page;
    }, said),
  );

const say = ({ onLog }: Required<Listeners>, line: string): void => onLog("log", [SUITE_MARK + line]);

test("ends as its tests do, with their line", async () => {
  const code = await run((count, listeners) => {
    if (count !== 2) return;
    say(listeners, "ok   a");
    say(listeners, "1 passed, 0 failed");
    listeners.onExit(0);
  });
  expect(code).toBe(0);
  expect(lines()).toEqual(["ok   a", "1 passed, 0 failed"]);
});

test("an editor that is at work is not given up, however long it takes", async () => {
  const code = await run((count, listeners) => {
    if (count % 400 === 0) listeners.onLog("log", ["still there"]);
    if (count < 5000) return;
    say(listeners, "1 passed, 0 failed");
    listeners.onExit(0);
  });
  expect(code).toBe(0);
});

test("one that does nothing any more is, and what had passed is counted", async () => {
  const code = await run((count, listeners) => {
    if (count === 1) say(listeners, "ok   a");
  });
  expect(code).toBe(1);
  expect(lines()).toContain("Error: The editor did not come to an end.");
  expect(lines().at(-1)).toBe("1 passed, 1 failed");
});

test("one that ends before its tests fails, whatever it says of itself", async () => {
  const code = await run((_, listeners) => {
    say(listeners, "ok   a");
    listeners.onExit(0);
  });
  expect(code).toBe(1);
  expect(lines().at(-1)).toBe("1 passed, 1 failed");
});

test("one that does not even start has a closing line, too", async () => {
  const code = await withClosingLine(async () => {
    throw new Error("There is no editor here yet.");
  });
  expect(code).toBe(1);
  expect(lines().at(-1)).toBe("0 passed, 1 failed");
});
