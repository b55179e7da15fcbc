/**
 * What the record of a job tells is marked on its sheet and in its plan, and stands beside what was planned.
 *
 * The shelf: planned 30 min of dust and two coats of 15 min and 0.22 L, so 60 min, 20.00 of labour, one can of 500 mL for
 * 10.00, with 2.00 of supplies and 5.00 for the shelf 37.00. Dust and the first coat took 50 min and 0.25 L: 50 + 15 = 65 min,
 * 21.67, and 0.25 + 0.22 L still come out of the can: 38.67. Of the can 0.25 L are left.
 */
import { expect, test } from "vitest";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

const withRecord = (line: string, job = JOB): string =>
  job.replace("  supplies 2.00\n", `  supplies 2.00\n  done     ${line}\n`);
const BEGUN = withRecord("2027-03-08 09:50 coat 1 of clear_coat on board, took 50 min, used 250 mL");
const of = async (argv: readonly string[], job = BEGUN): Promise<string> =>
  (await runCli(argv, { files: { ...FILES, "job.finish": job } })).stdout;
const blanks = (text: string): string => text.replaceAll(/ +/gu, " ");

test("totals tell what was planned, what it comes to, and what stands in the shop", async () => {
  const told = blanks(await of(["totals", "job.finish"]));
  expect(
    told.slice(told.indexOf(" Planned and actual")),
  ).toBe(` Planned and actual, by the record up to Mon 8 Mar 2027 09:50
 hands-on 1 h 5 min planned 1 h; 50 min of it done
 materials 10.00 EUR planned 10.00 EUR
 labour 21.67 EUR planned 20.00 EUR
 total 38.67 EUR planned 37.00 EUR
 In the shop now
 clear_coat 0.25 L 0.25 L used
`);
  expect(await of(["totals", "job.finish"], JOB)).not.toContain("Planned and actual");
});

test("a plan says what is done", async () => {
  const lines = (await of(["schedule", "job.finish"])).split("\n").map((line) => blanks(line.trim()));
  expect(lines.filter((line) => line.endsWith(" done"))).toEqual([
    // 50 min for both, half of them planned for each twentieth: 30 : 15, ending at 09:50.
    expect.stringMatching(/^09:00 to 09:\d\d board dust done$/),
    expect.stringMatching(/^09:\d\d to 09:50 board clear_coat, coat 1 of 2 done$/),
  ]);
  const { jobs } = JSON.parse(await of(["schedule", "job.finish", "--format", "json"]));
  expect(jobs[0].items.map(({ critical }: { readonly critical: boolean }) => critical)).toEqual([
    false,
    false,
    true,
    true,
    true,
  ]);
  // Recoat 2 h after.
  expect(lines).toContain("11:50 to 12:05 board clear_coat, coat 2 of 2 critical");
});

test.each([
  // A wait has a box as well, and no number.
  ["text", /^\[x\] {3}\d\. /gmu, /^\[ \] {3}(?:\d\. | {3}Wait)/gmu],
  ["markdown", /^\d\. \[x\] /gmu, /^(?:\d\.|-) \[ \] /gmu],
])("a sheet as %s has the boxes of what is done ticked", async (format, ticked, open) => {
  const sheet = await of(["sheet", "job.finish", "--format", format]);
  // Dust and a coat; the wait, a coat and its wait are left.
  expect(sheet.match(ticked)).toHaveLength(2);
  expect(sheet.match(open)).toHaveLength(3);
});

test("a sheet for the phone counts from what is done", async () => {
  const sheet = await of(["sheet", "job.finish", "--format", "html"]);
  expect(sheet.match(/data-piece="0" data-done="2027-03-08T09:50" checked disabled/gu)).toHaveLength(2);
  expect(sheet.match(/data-piece="0" aria-label/gu)).toHaveLength(1);
});

test("of two pieces only the one that is done is ticked", async () => {
  const two = JOB.replace("  piece    shelf\n", "  piece    shelf x 2\n");
  const job = withRecord("2027-03-08 09:50 dust on board, piece 2", two);
  const text = await of(["sheet", "job.finish"], job);
  expect(text).toContain("[x] Shelf 2");
  expect(text.match(/\[x\]/gu)).toHaveLength(1);
  const html = await of(["sheet", "job.finish", "--format", "html"], job);
  expect(html.match(/data-done/gu)!.length).toBeGreaterThanOrEqual(1);
  expect(html).toContain('data-piece="2" data-done="2027-03-08T09:50" checked disabled');
  expect(html).not.toContain('data-piece="1" data-done');
});
