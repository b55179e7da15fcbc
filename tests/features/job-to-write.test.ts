/** The job that a recipe lacks: offered where it is clear what the recipe is for, and formatted, and found in order. */
import { expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";

const RECIPE = `recipe oiled {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition, wet_rags
  step   sand 120, 180
  step   dust
  layer  oil_varnish x 2, between wait overnight
  wait   until cured
}
`;
const PIECE = (name: string, ...surfaces: readonly string[]) => `piece ${name} {
  built 2015
${surfaces.map((surface) => `  surface ${surface} {\n    shape panel 800 mm x 600 mm\n    wood  beech\n  }\n`).join("")}}
`;

function written(text: string, at = text.indexOf("step   sand")) {
  const fix = analyse({ "test.finish": text }).jobToWrite("test.finish", { start: at, end: at });
  return fix && { title: fix.title, text: text.slice(0, fix.edits[0]!.span.start) + fix.edits[0]!.text };
}

test("of a recipe that can only be meant for one surface", () => {
  const job = written(RECIPE + PIECE("table", "top"));
  expect(job?.title).toBe("Write the job that applies `oiled` to `top`");
  expect(job?.text).toBe(
    `${RECIPE}${PIECE("table", "top")}\njob oiled_job {\n  piece table\n  apply oiled to top\n}\n`,
  );
  const analysis = analyse({ "test.finish": job!.text });
  const start = job!.text.indexOf("job oiled_job");
  expect(analysis.formatting("test.finish").filter(({ span }) => span.start >= start)).toEqual([]);
  expect(analysis.jobs("test.finish").map(({ runs }) => runs.length)).toEqual([1]);
  expect(written(job!.text)).toBeUndefined();
});

test("of all surfaces of two pieces, under a name that is free", () => {
  const text = RECIPE + PIECE("table", "top", "apron") + PIECE("oiled_job", "seat");
  expect(written(text)?.text.slice(text.length)).toBe(
    "\njob oiled_job_2 {\n  piece table\n  piece oiled_job\n  apply oiled to table.top, table.apron, oiled_job.seat\n}\n",
  );
});

test.each([
  ["on a piece", RECIPE + PIECE("table", "top"), "built"],
  ["where nothing is there to apply it to", RECIPE, "step"],
  [
    "where an argument is wanted",
    RECIPE.replace("oiled", "oiled(oil: material)") + PIECE("table", "top"),
    "step",
  ],
])("none %s", (_, text, at) => {
  expect(written(text, text.indexOf(at))).toBeUndefined();
});

test("a hover says what a recipe without a job is checked on", () => {
  const card = (text: string) =>
    analyse({ "test.finish": text }).hover("test.finish", text.indexOf("oiled") + 1)?.markdown;
  expect(card(RECIPE + PIECE("table", "top"))).toContain(
    "no job here applies it; it is checked on `top` of `table`, which it seems to be for",
  );
  expect(card(RECIPE)).toMatch(/no job here applies it$/mu);
});
