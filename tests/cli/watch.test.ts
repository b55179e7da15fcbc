/** `check --watch`: checks again after every change of a recipe, and of nothing else. */
import { appendFileSync, mkdirSync, renameSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { nodeWatch, type Watch } from "../../server/src/cli/node-watch.ts";
import { runCli } from "./run-cli.ts";

const SOUND = "material clear {\n  family oil varnish\n}\n";
const WRONG = "material clear {\n  family oil varnsh\n}\n";

/** A watch that makes one change after the other whenever it is waited for, and ends after the last. */
function changing(folder: string, changes: readonly ((folder: string) => void)[]): Watch {
  const real = nodeWatch();
  const left = [...changes];
  return {
    ...real,
    next: () => {
      const change = left.shift();
      if (!change) return Promise.resolve(false);
      change(folder);
      return real.next();
    },
  };
}

const watched = (
  argv: readonly string[],
  files: Readonly<Record<string, string>>,
  ...changes: readonly ((folder: string) => void)[]
) =>
  runCli(["check", "--watch", "--quiet", ...argv], {
    files,
    watch: (folder) => changing(folder, changes),
  });

const rounds = (stderr: string): number => stderr.split("Checking again").length - 1;

describe("check --watch", () => {
  test("checks at once, and after every change, and ends with what it found last", async () => {
    const { stdout, stderr, status } = await watched(
      [".", "--format", "lines"],
      { "a.finish": WRONG },
      (folder) => writeFileSync(path.join(folder, "a.finish"), SOUND),
      (folder) => writeFileSync(path.join(folder, "b.finish"), WRONG),
    );
    expect(stdout.split("\n").map((line) => line.slice(0, 12))).toEqual(["a.finish:2:1", "b.finish:2:1", ""]);
    expect(rounds(stderr)).toBe(2);
    expect(status).toBe(1);
  });

  test("sees changes in folders below, new ones among them", async () => {
    const { stdout } = await watched([".", "--format", "lines"], { "a.finish": SOUND }, (folder) => {
      mkdirSync(path.join(folder, "new"));
      writeFileSync(path.join(folder, "draft.tmp"), WRONG);
      renameSync(path.join(folder, "draft.tmp"), path.join(folder, "deep.finish"));
    });
    expect(stdout).toContain("deep.finish:2:");
  });

  test("sees changes of what a file uses, outside of its folder", async () => {
    const { stderr } = await watched(
      ["jobs/a.finish"],
      { "finishwright.config.json": "{}", "jobs/a.finish": 'use "../stock.finish"\n', "stock.finish": SOUND },
      (folder) => writeFileSync(path.join(folder, "stock.finish"), WRONG),
    );
    expect(rounds(stderr)).toBe(1);
    expect(stderr).toContain("`stock.finish` is used here and has an error of its own");
  });

  test("takes a burst of changes for one, and lets other files be", async () => {
    const { stderr } = await watched(["."], { "a.finish": SOUND }, (folder) => {
      for (let time = 0; time < 20; time += 1) {
        writeFileSync(path.join(folder, "notes.txt"), "x");
        appendFileSync(path.join(folder, "a.finish"), "# more\n");
      }
    });
    expect(rounds(stderr)).toBe(1);
  });

  test.each([
    [["--fix"], "`--watch` only reports."],
    [["--diff"], "`--watch` only reports."],
    [["--write-baseline", "b.json"], "`--watch` only reports."],
    [["-"], "standard input is none."],
  ])("is refused with %s", async (argv, words) => {
    const { status, stderr } = await watched(argv, {});
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });
});
