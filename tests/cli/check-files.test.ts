/** `check` looks into most files a few at a time; what it finds is what one look at all of them finds. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { checkFiles } from "../../server/src/cli/check-files.ts";
import type { CliIo } from "../../server/src/cli/io.ts";
import { load } from "../../server/src/cli/load.ts";
import { nodeFiles } from "../../server/src/cli/node-files.ts";
import { runGit } from "../../server/src/cli/node-git.ts";
import { nodeWatch } from "../../server/src/cli/node-watch.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";

const LONE = 250;

const job = (name: string): string =>
  `job ${name} {\n  piece desk\n  in mill\n  start 2027-03-08\n  apply sealed to top\n}\n`;

/** Most files are by themselves; two use others, one uses what is not there, and one speaks of others in a comment. */
const FILES: Readonly<Record<string, string>> = {
  "shop.finish": `shop mill {\n  room 3 m x 3 m x 2.5 m\n  air 20 C, 50 % RH\n  hours Mon to Fri 09:00 to 17:00\n}\n`,
  "base.finish": `use "shop.finish"\npiece desk {\n  surface top {\n    shape panel 2000 mm x 1000 mm x 30 mm\n    wood oak\n  }\n}\n\nrecipe sealed {\n  safety vapour_respirator, no_ignition, ventilate, gloves\n  layer nitrocellulose_lacquer x 3 {\n    wait until recoat\n  }\n  wait until cured\n}\n`,
  "first.finish": `use "base.finish"\n\n${job("first")}`,
  "second.finish": `use "./base.finish"\n\n${job("second")}`,
  "lost.finish": 'use "nowhere.finish"\nmaterial a {\n  family glaze\n}\n',
  "plain.finish": "# Speaks of lone-7.finish and of my base.finish.\nmaterial b {\n  family glaze\n}\n",
  ...Object.fromEntries(
    Array.from({ length: LONE }, (_, i) => [
      `lone-${i}.finish`,
      `recipe coat_${i} {\n  step sand 120\n  layer drying_oil\n  step sand ${i % 2 === 0 ? 40 : 180}\n}\n`,
    ]),
  ),
};

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), "finishwright-"));
  for (const [name, text] of Object.entries(FILES)) writeFileSync(path.join(folder, name), text);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** `analysts` gets the number of files that each analyst was given. */
const ioWith = (analysts: number[]): CliIo => ({
  createAnalyst: (options) => {
    const analyst = createAnalyst(options);
    const at = analysts.push(0) - 1;
    return {
      ...analyst,
      setFile(file, text) {
        analysts[at]! += 1;
        analyst.setFile(file, text);
      },
    };
  },
  readInput: () => Promise.reject(new Error("Nothing is read here.")),
  stdout: { write: () => {}, isTTY: false, columns: 80 },
  stderr: { write: () => {}, isTTY: false, columns: 80 },
  cwd: folder,
  env: {},
  files: nodeFiles,
  watch: nodeWatch,
  git: runGit,
  version: "1.2.3",
  processors: 1,
  build: () => "one",
  cacheFolder: () => folder,
  home: folder,
  now: () => "2027-03-01T08:00:00Z",
  startLanguageServer: () => Promise.resolve(),
});

test("finds what one look at all files finds", async () => {
  const { files, complete } = await checkFiles(ioWith([]), ["."]);
  const whole = await load(ioWith([]), ["."]);
  expect(complete).toBe(true);
  expect(files.map(({ path: file, findings }) => ({ file, findings }))).toEqual(
    whole.asked.map(({ path: file }) => ({ file, findings: whole.analysis.findings(file) })),
  );
  expect(files.flatMap(({ findings }) => findings).length).toBeGreaterThan(LONE);
});

test("has at most a hundred files in memory that no other concerns, and together only those that others do", async () => {
  const analysts: number[] = [];
  let tidied = 0;
  const tidy = (): void => {
    tidied += 1;
  };
  await checkFiles({ ...ioWith(analysts), tidy }, ["."]);
  expect(tidied).toBe(3); // after each part that is let go of
  // 249 by themselves; lone-7, of which a comment speaks, and the six that use others, are used or name another.
  expect(analysts).toEqual([100, 100, 49, 7]);
});
