/** `recipe`: a short recipe to publish, and what never stands in it unless it is asked for. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runCli } from "./run-cli.ts";

/** Everything that a workshop keeps to itself has a word of its own here. */
const JOB = ({
  layer = "clear_2 x 3, by pad, between sand 220",
  more = "",
} = {}): string => `## secret-material
material clear_2 "Pale clear" {
  family waterborne acrylic
  covers 10 m2/L
  recoat 2 h
  cure   7 days
  rated  21 C, 50 % RH
  packs  1 L for 43.21
  batch  "secret-batch"
}
## secret-piece
piece board_3 "Reading board" {
  bought 12.34
  note   "secret-note"
  surface face_1 "Face" {
    shape area 2 m2
    wood  beech
    note  "secret-note"
  }
  surface back_1 "Back" {
    shape area 1 m2
    wood  beech
  }
}
shop mill_4 "secret-shop" {
  air    21 C, 50 % RH
  hours  Mon to Fri 09:00 to 17:00
  labour 20.00 per h
}
## secret-recipe
recipe work_5 {
  for    wood
  safety dust_mask, gloves
  note   "secret-note"
  step   sand 120, 150, takes 30 min
  step   dust, takes 10 min
  layer  ${layer}, takes 30 min
  wait   until cured
}
job job_6 "secret-job" {
  piece    board_3
  owner    "secret-owner"
  delivery "secret-delivery"
  note     "secret-note"
  in       mill_4
  start    2027-03-08 09:00
  apply    work_5() to face_1
  apply    work_5() to back_1
${more}}
`;

const RECORD = `  done     2027-03-08 10:00 sand on face_1, by "secret-hand", photo "secret-photo.jpg", note "secret-note"
`;

const recipe = (text: string, ...more: readonly string[]) =>
  runCli(["recipe", "job.finish", ...more], { files: { "job.finish": text } });

test("with what and how, as Markdown: surfaces together, coats in a row as one step", async () => {
  const { stdout, status } = await recipe(JOB());
  expect(status).toBe(0);
  expect(stdout).toContain("# Reading board\n\nRecipe, in short\n\n## What it takes\n");
  expect(stdout).toContain("- Pale clear: waterborne acrylic, clear\n");
  expect(stdout).toContain("- Gloves: Wear gloves of the kind that its safety data sheet names.\n");
  // The label's 2 h and 7 days hold: the shop has the air that it is rated for.
  expect(stdout.slice(stdout.indexOf("## Face"))).toBe(`## Face, Back

- Face: beech, taken as bare: nothing is stated
- Back: beech, taken as bare: nothing is stated

The waits are for air of 21 C and 50 % RH.

1. Sand with grit 120, then 150.
2. Take the dust off.
3. 3 coats: Pale clear, by pad. Between two of them: wait until the next coat can go on: 2 h by its label; sand with grit 220; take the dust off.
4. Wait until it has cured: 7 days by its label.

*This recipe tells how one job was planned or done, and certifies nothing as safe. Try it on a hidden spot first: your wood, your air and your products are others.*
`);
});

test("a coat that is only needed sometimes is a step of its own", async () => {
  const { stdout } = await recipe(JOB({ layer: "clear_2 x 2 to 3, by pad" }));
  expect(stdout).toContain("2 coats: Pale clear, by pad. Between two of them: wait until the next coat");
  expect(stdout).toContain("One coat: Pale clear, if it is needed, by pad.");
});

test("the cautions defer to label, data sheet, local codes and licensed practice", async () => {
  const old = JOB().replace(
    "    wood  beech\n    note",
    "    wood  beech\n    existing alkyd paint\n    note",
  );
  const { stdout } = await recipe(old);
  expect(stdout).toContain(
    "Read the label and the safety data sheet of every product first, and follow local codes and licensed practice",
  );
  // A test of one piece is none of another.
  expect(stdout).toContain("That is said of this piece alone. Have an old coating on yours tested");
  expect(stdout).toContain("- Face: beech, on it alkyd paint");
});

test("mistakes that are left in it are told", async () => {
  const { stdout, status } = await recipe(
    JOB().replace("  safety dust_mask, gloves\n", "  safety dust_mask, gloves\n  layer  paste_wax\n"),
  );
  expect(status).toBe(1);
  expect(stdout).toMatch(/The check of this recipe found (?:an error|\d+ errors) not put right here\./u);
});

describe("what never stands in it", () => {
  const SECRETS = /secret-[\w.]+|43[.,]21|12[.,]34|\w+_\d|job\.finish/gu;

  test.each(["text", "markdown", "html"])("nothing of the workshop, as %s", async (format) => {
    const { stdout, status } = await recipe(JOB({ more: RECORD }), "--format", format);
    expect(status).toBe(0);
    expect(stdout.match(SECRETS)).toBeNull();
    // Behind the looks of a page.
    expect(stdout.slice(stdout.indexOf("<main>") + 1)).not.toMatch(/\d\.\d\d\b/u);
  });

  test.each([
    ["owner", ["secret-owner"]],
    ["people", ["secret-hand"]],
    ["delivery", ["secret-delivery"]],
    ["photos", ["secret-photo.jpg"]],
    ["photos, people", ["secret-hand", "secret-photo.jpg"]],
  ])("%s is asked for by name, and nothing with it", async (asked, told) => {
    for (const command of ["recipe", "care"]) {
      const { stdout } = await runCli([command, "job.finish", "--with", asked, "--format", "html"], {
        files: { "job.finish": JOB({ more: RECORD }).replace('  batch  "secret-batch"\n', "") },
      });
      expect(stdout.match(SECRETS), command).toEqual(told);
    }
  });

  test("prices, where they are asked for, are those of the totals", async () => {
    const files = { "job.finish": JOB() };
    const totals = JSON.parse(
      (await runCli(["totals", "job.finish", "--format", "json"], { files })).stdout,
    ) as {
      jobs: { labour_cost: number; total_cost: number }[];
    };
    const { labour_cost, total_cost } = totals.jobs[0]!;
    // 3 m2 · 3 coats / 10 · 1.1 = 0.99 L: one can
    expect((await recipe(JOB(), "--with", "prices")).stdout).toContain(
      `- Prices: materials 43.21, labour ${labour_cost.toFixed(2)}, in all ${total_cost.toFixed(2)}\n`,
    );
  });
});

test("a coat more than the recipe has is told as it was really put on", async () => {
  const more = ["1", "2", "3", "4"].map(
    (coat, day) => `  done     2027-03-${10 + 2 * day} 10:00 coat ${coat} of clear_2 on face_1\n`,
  );
  const { stdout } = await recipe(JOB({ more: more.join("") }));
  // The fourth goes on as it is: the recipe has no work between it and the third.
  expect(stdout).toContain(
    "3. 3 coats: Pale clear, by pad. Between two of them: wait until the next coat can go on: 2 h by its label; sand with grit 220; take the dust off.\n4. ",
  );
  expect(stdout).toContain("## Back\n");
});

test("a file without jobs has nothing to publish", async () => {
  expect(await recipe("recipe bare {\n  step dust\n}\n")).toMatchObject({
    status: 0,
    stdout: "",
    stderr: expect.stringContaining("has no job that works on a piece, so there can be no recipe of it"),
  });
});

describe("written to a file", () => {
  let away = "";
  beforeAll(() => {
    away = mkdtempSync(path.join(tmpdir(), "finishwright-recipe-"));
  });
  afterAll(() => rmSync(away, { recursive: true }));

  test("as its ending says, over what was made before, and over nothing else", async () => {
    const page = path.join(away, "board.html");
    expect((await recipe(JOB(), "-o", page)).status).toBe(0);
    expect(readFileSync(page, "utf8")).toContain('<ol start="1">\n<li>Sand with grit 120, then 150.</li>');
    const file = path.join(away, "board.md");
    expect((await recipe(JOB(), "-o", file)).status).toBe(0);
    expect((await recipe(JOB({ layer: "clear_2" }), "-o", file)).status).toBe(0);
    writeFileSync(file, "mine\n");
    const refused = await recipe(JOB(), "-o", file);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain("was not made by `recipe`");
    expect(readFileSync(file, "utf8")).toBe("mine\n");
  });
});
