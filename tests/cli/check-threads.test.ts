/** `check --threads`: the built program says in several threads what it says in one, in the same order. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import fc from "fast-check";
import { afterAll, expect, test } from "vitest";
import { IS_LONG_RUN } from "../harness/share.ts";
import { runCli } from "./run-cli.ts";

const PROGRAM = path.resolve(import.meta.dirname, "../../server/dist/finishwright.cjs");
const root = mkdtempSync(path.join(tmpdir(), "finishwright-threads-"));
afterAll(() => rmSync(root, { recursive: true }));

/** More than two batches, so that either thread has some and one has more. */
const COUNT = 250;

function check(folder: string, ...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, "check", ...args], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 1 << 26,
  });
  return { status, stdout, stderr };
}

const line = fc.constantFrom(
  "step sand 40",
  "step sand 180",
  "layer drying_oil",
  "layer paste_wax",
  "layer hall_clear x 2",
  "wait until cured",
  "wait 1",
  "layer {",
);
const text = fc
  .tuple(
    fc.array(line, { minLength: 1, maxLength: 5 }),
    fc.constantFrom("", 'use "base.finish"\n', "# as in text 3.finish\n"),
  )
  .map(([lines, head]) => `${head}recipe coat {\n${lines.map((each) => `  ${each}\n`).join("")}}\n`);

test("every format is byte for byte the same", { timeout: 300_000 }, () => {
  const folders = fc.sample(fc.array(text, { minLength: COUNT, maxLength: COUNT }), {
    numRuns: IS_LONG_RUN ? 4 : 1,
    seed: 20261130,
  });
  for (const texts of folders) {
    const at = mkdtempSync(path.join(root, "folder-"));
    for (const [number, each] of texts.entries()) writeFileSync(path.join(at, `text ${number}.finish`), each);
    writeFileSync(
      path.join(at, "base.finish"),
      "material hall_clear {\n  family waterborne polyurethane\n}\n",
    );
    for (const format of ["text", "json"]) {
      const one = check(at, "--format", format, "--threads", "1");
      expect(one.stdout.length).toBeGreaterThan(10_000);
      expect(check(at, "--format", format, "--threads", "3")).toEqual(one);
    }
  }
});

test.each(["0", "65", "two", "1.5"])("--threads %s is no number of threads", async (given) => {
  const { status, stderr } = await runCli(["check", "--threads", given]);
  expect(status).toBe(2);
  expect(stderr).toContain("Give a number from 1 to 64.");
});
