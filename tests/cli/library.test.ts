/** The library as the package has it: the built bundle, through the example of its page. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { check, format, plan, totals } from "../../server/src/entry/library.ts";
import { FILES } from "./bench.ts";

const PAGE = readFileSync(new URL("../../server/docs/library.md", import.meta.url), "utf8");
const BUNDLE = path.resolve(import.meta.dirname, "../../server/dist/library.cjs");

test("the example of the page runs, and prints what the page says", () => {
  const [, script = "", output] = /```js\n([\s\S]*?)```[\s\S]*?```text\n([\s\S]*?)```/u.exec(PAGE) ?? [];
  const folder = mkdtempSync(path.join(tmpdir(), "finishwright-library-"));
  try {
    const file = path.join(folder, "example.mjs");
    writeFileSync(file, script.replace('"finishwright"', JSON.stringify(pathToFileURL(BUNDLE).href)));
    expect(execFileSync(process.execPath, [file], { encoding: "utf8" })).toBe(output);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

test("totals and plans are those of the shelf", () => {
  // 2 coats of 2 m2 / 10 m2/L × 1.1; 30 min and 2 × 15 min by hand; 10 + 20 + 2 + 5.
  expect(totals(FILES)).toMatchObject([
    { file: "job.finish", name: "shelf_job", hands_on_h: 1, total_cost: 37, materials: [{ litres: 0.44 }] },
  ]);
  // Dust to 09:30, coats to 09:45 and, 2 h later, to 12:00, and the wait after it.
  const [job] = plan(FILES);
  expect(job).toMatchObject({ file: "job.finish", status: "planned", finish: "2027-03-08T14:00:00" });
  expect(job!.items.map(({ end }) => end?.slice(11, 16))).toEqual([
    "09:30",
    "09:45",
    "11:45",
    "12:00",
    "14:00",
  ]);
});

test("findings have places, and a text that is not given is one", () => {
  const found = check({ "shop/job.finish": FILES["job.finish"] });
  expect(found[0]).toMatchObject({ file: "shop/job.finish", line: 1, severity: "error" });
  expect(found[0]!.message).toContain("it is not among the texts that were given");
  // Seen from its folder, it is.
  const both = check({ "shop/job.finish": FILES["job.finish"], "shop/stock.finish": FILES["stock.finish"] });
  expect(both.map(({ severity }) => severity)).not.toContain("error");
});

test("no text makes it throw", () => {
  for (const text of ["", "{", "job {", "\u0000", 'use "recipe.finish"', "recipe a { follow a }"]) {
    expect(() => [check(text), totals(text), plan(text), format(text)]).not.toThrow();
  }
});
