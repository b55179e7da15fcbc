/** `diff`: what changed in meaning between files and folders. Every expected figure is worked out beside it. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { FILES, JOB, STOCK } from "./bench.ts";
import { runCli } from "./run-cli.ts";

const PAGE = readFileSync(new URL("../../server/docs/changes.md", import.meta.url), "utf8");

/** Three coats of a clear that needs 3 h instead of two coats of one that needs 2 h. */
const CHANGED = {
  "old/stock.finish": STOCK,
  "old/job.finish": JOB,
  "new/stock.finish": STOCK.replace("recoat 2 h", "recoat 3 h"),
  "new/job.finish": JOB.replace("coats: number = 2", "coats: number = 3"),
};

describe("diff", () => {
  test("tells every figure before, after and by how much", async () => {
    const { status, stdout, stderr } = await runCli(["diff", "old", "new"], { files: CHANGED });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    const rows = stdout.split("\n").map((line) => line.trim().split(/ {2,}/u));
    expect(stdout).toContain("  Changed job: One shelf\n");
    expect(rows).toContainEqual(["coats", "2 → 3 (+1)"]);
    // A coat is 100 um wet with 30 % solids.
    expect(rows).toContainEqual(["thickest film", "60 um → 90 um (+30 um)"]);
    // 2 m2 / 10 m2/L × 1.1 a coat
    expect(rows).toContainEqual(["litres", "0.44 L → 0.66 L (+0.22 L)"]);
    // 30 min of dust and 15 min a coat
    expect(rows).toContainEqual(["hands-on", "1 h → 1 h 15 min (+15 min)"]);
    // 30 min, then coats of 15 min with their waits: 2 × 2 h 15 min, and 3 × 3 h 15 min
    expect(rows).toContainEqual(["elapsed", "5 h → 10 h 15 min (+5 h 15 min)"]);
    // The last coat ends at 12:00, and at 9:30 + 3 × 15 min + 2 × 3 h = 16:15; each cures for a day.
    expect(rows).toContainEqual(["full use", "Tue 9 Mar 2027 12:00 → Tue 9 Mar 2027 16:15 (+4 h 15 min)"]);
    // A can of half a litre, and one of a litre.
    expect(rows).toContainEqual([
      "Clear",
      "0.44 L, 1 × 0.5 L, 10.00 EUR → 0.66 L, 1 × 1 L, 16.00 EUR (+0.22 L)",
    ]);
    // 1.25 h × 20.00
    expect(rows).toContainEqual(["labour", "20.00 EUR → 25.00 EUR (+5.00 EUR)"]);
    // 10 + 20 + 2 of supplies + 5 for the shelf against 16 + 25 + 2 + 5
    expect(rows).toContainEqual(["total", "37.00 EUR → 48.00 EUR (+11.00 EUR)"]);
    expect(rows).toContainEqual(["Clear, wait for the next coat", "2 h → 3 h (+1 h)"]);
    expect(stdout).toContain(`    Work on Shelf: board
        Wait until the next coat can go on
      + Coat of Clear, 15 min
      + Wait until the next coat can go on
`);
    expect(stdout).toContain(`  Changed material: Clear
    Written
      - recoat 2 h to 24 h
      + recoat 3 h to 24 h
`);
    expect(stdout.endsWith("\n2 files change in meaning, of 2 files.\n")).toBe(true);
  });

  test("layout, comments, the order of facts and friendly forms are no change of meaning", async () => {
    const files = {
      "old.finish": FILES["stock.finish"],
      "new.finish": `# From the tin.
material   clear_coat "Clear" {
  packs  500 mL for 10.00, 1 L for 16.00 # the small one is for touching up
  family waterborne polyurethane
  covers 10 m2/L
    solids 30 %
  cure 1 day
  recoat 2 h to 24 h

  voc    100 g/L
  rated  20 C, 50 % RH
}
`,
    };
    const { status, stdout } = await runCli(["diff", "old.finish", "new.finish", "--exit-code"], { files });
    expect(status).toBe(0);
    expect(stdout).toBe(
      "new.finish: no change of meaning (layout and comments)\nNo change of meaning in 1 file. 1 file in another layout.\n",
    );
  });

  test("ends with 1 where something changed and the status is asked for", async () => {
    const run = async (...more: string[]) =>
      (await runCli(["diff", "old", "new", ...more], { files: CHANGED })).status;
    expect(await run()).toBe(0);
    expect(await run("--exit-code")).toBe(1);
  });

  test("findings come, go and say something else", async () => {
    const files = {
      "old/stock.finish": STOCK,
      "old/job.finish": JOB,
      "new/stock.finish": STOCK,
      // An hour is too short for a coat that needs two.
      "new/job.finish": JOB.replace("    wait until recoat", "    wait 1 h"),
    };
    const there = await runCli(["diff", "old", "new", "--format", "json"], { files });
    const findingsOf = (stdout: string) =>
      JSON.parse(stdout).files.flatMap(
        ({ changes }: { readonly changes: readonly { findings: object[] }[] }) =>
          changes.flatMap(({ findings }) => findings),
      );
    expect(findingsOf(there.stdout)).toEqual([
      expect.objectContaining({ kind: "new", rule: "recoat-too-early", severity: "warning" }),
    ]);
    const back = await runCli(["diff", "new", "old", "--format", "json"], { files });
    expect(findingsOf(back.stdout)).toEqual([
      expect.objectContaining({ kind: "gone", rule: "recoat-too-early", severity: "warning" }),
    ]);
    const text = await runCli(["diff", "old", "new"], { files });
    expect(text.stdout).toContain("    Findings\n      + warning: ");
    expect(text.stdout).toContain(
      "      - Wait until the next coat can go on\n      + Wait 1 h\n        Coat of Clear, 15 min\n",
    );
  });

  test("a change of a used file is told of the jobs that it reaches, and of no other", async () => {
    const other = JOB.replace('use "stock.finish"', "").replaceAll("clear_coat", "varnish");
    const files = {
      ...Object.fromEntries(
        ["old", "new"].flatMap((folder) => [
          [`${folder}/job.finish`, JOB],
          [`${folder}/apart.finish`, `${other}${STOCK.replace("clear_coat", "varnish")}`],
        ]),
      ),
      "old/stock.finish": STOCK,
      "new/stock.finish": STOCK.replace("1 L for 16.00", "1 L for 9.00"),
    };
    const { stdout } = await runCli(["diff", "old", "new", "--format", "json"], { files });
    const { files: changed, looked } = JSON.parse(stdout);
    expect(looked).toBe(3);
    expect(changed.map(({ after }: { readonly after: string }) => after)).toEqual([
      "new/job.finish",
      "new/stock.finish",
    ]);
    // The litre is cheaper than the half now: 9 for 10, and with labour, supplies and the shelf 36 for 37.
    expect(changed[0].changes).toMatchObject([
      {
        kind: "job",
        title: "One shelf",
        figures: {
          material_cost: { before: 10, after: 9 },
          total_cost: { before: 37, after: 36 },
          saving: { before: 63, after: 64 },
        },
        materials: [
          {
            title: "Clear",
            before: { litres: 0.44, containers: [{ litres: 0.5, count: 1, price: 10 }], cost: 10 },
            after: { litres: 0.44, containers: [{ litres: 1, count: 1, price: 9 }], cost: 9 },
          },
        ],
        work: [],
        written: [],
      },
    ]);
  });

  test("new and removed declarations and files are told as such", async () => {
    const files = {
      "old/stock.finish": STOCK,
      "old/gone.finish": 'material wax "Wax" {\n  family wax\n}\n',
      "new/stock.finish": `${STOCK}material oil "Oil" {\n  family drying oil\n}\n`,
    };
    const { stdout } = await runCli(["diff", "old", "new"], { files });
    expect(stdout).toContain("old/gone.finish (removed)\n  Removed material: Wax\n");
    expect(stdout).toContain("new/stock.finish\n  New material: Oil\n");
  });

  test("a file with another name is the one with the same text, or with most of the same lines", async () => {
    const files = {
      "old/stock.finish": STOCK,
      "old/job.finish": JOB,
      "old/wax.finish": 'material wax "Wax" {\n  family wax\n}\n',
      "new/tins/stock.finish": STOCK,
      // Three coats now, and what it uses has moved.
      "new/shelf.finish": JOB.replace("coats: number = 2", "coats: number = 3").replace(
        "stock.finish",
        "tins/stock.finish",
      ),
      // It shares nothing with the wax that is gone but the line of its family.
      "new/paste.finish": 'material paste "Paste" {\n  family wax\n}\n',
    };
    const { stdout } = await runCli(["diff", "old", "new"], { files });
    expect(stdout).toContain("new/shelf.finish (renamed from old/job.finish)\n");
    // 2 coats of 15 min and 3: the job is the same one as before.
    expect(stdout).toMatch(/hands-on +1 h → 1 h 15 min \(\+15 min\)/u);
    expect(stdout).toContain("old/wax.finish (removed)\n");
    expect(stdout).toContain("new/paste.finish (new)\n");
    expect(stdout).toContain(
      "new/tins/stock.finish: no change of meaning (renamed from old/stock.finish)\n3 files change in meaning, 1 in name alone, of 4 files.\n",
    );
    const markdown = await runCli(["diff", "old", "new", "--format", "markdown"], { files });
    expect(markdown.stdout).toContain("### `new/shelf.finish` (renamed from `old/job.finish`)\n");
    expect(markdown.stdout).toContain(
      "No change of meaning, only another name: `new/tins/stock.finish` (was `old/stock.finish`)\n",
    );
    const json = JSON.parse((await runCli(["diff", "old", "new", "--format", "json"], { files })).stdout);
    expect(json.renamed_only).toEqual([{ before: "old/stock.finish", after: "new/tins/stock.finish" }]);
    expect(
      json.files.map(({ after, renamed }: { readonly after: string; readonly renamed: boolean }) => [
        after,
        renamed,
      ]),
    ).toEqual([
      ["new/paste.finish", false],
      ["new/shelf.finish", true],
      [null, false],
    ]);
  });

  test("of several files with the same text the one with the same name is followed first", async () => {
    const files = {
      "old/a/stock.finish": STOCK,
      "old/b/stock.finish": STOCK,
      "old/c/tins.finish": STOCK,
      "new/d/tins.finish": STOCK,
      "new/e/stock.finish": STOCK,
    };
    const { stdout } = await runCli(["diff", "old", "new", "--format", "json"], { files });
    const { renamed_only, files: changed } = JSON.parse(stdout);
    expect(renamed_only).toEqual([
      { before: "old/c/tins.finish", after: "new/d/tins.finish" },
      { before: "old/a/stock.finish", after: "new/e/stock.finish" },
    ]);
    expect(changed).toMatchObject([{ before: "old/b/stock.finish", after: null, status: "removed" }]);
  });

  test("as Markdown has tables and diffs for a pull request", async () => {
    const { stdout } = await runCli(["diff", "old", "new", "--format", "markdown"], { files: CHANGED });
    expect(stdout).toContain("### `new/job.finish`\n\n**Changed recipe: clearing**\n");
    expect(stdout).toContain(
      "| | before | after | difference |\n| --- | ---: | ---: | ---: |\n| coats | 2 | 3 | +1 |\n| thickest film |",
    );
    expect(stdout).toContain("```diff\n  Wait until the next coat can go on\n+ Coat of Clear, 15 min\n");
  });

  test("hostile titles do nothing to a terminal or a page", async () => {
    const hostile = "x\u001b[31m | @team, #12 <img src=x> [a](https://example.org) \u202e```";
    const files = {
      ...CHANGED,
      "new/job.finish": CHANGED["new/job.finish"].replace(
        '"One shelf"',
        JSON.stringify(hostile).replaceAll("\\u001b", "\u001b"),
      ),
    };
    const text = await runCli(["diff", "old", "new"], { files });
    expect(text.stdout).toContain("Changed job: x");
    const markdown = await runCli(["diff", "old", "new", "--format", "markdown"], { files });
    for (const { stdout } of [text, markdown])
      for (const sign of ["\u001b", "\u202e"]) expect(stdout).not.toContain(sign);
    const heading = markdown.stdout.split("\n").find((line) => line.startsWith("**Changed job"));
    // Hosts call whom a page mentions, and link what it numbers.
    expect(heading).toContain(String.raw`\| @<!-- -->team, \#<!-- -->12 \<img src=x\> \[a\]`);
    // The fence is longer than the one in the title.
    expect(markdown.stdout).toContain("````diff\n- job shelf_job");
  });

  test("is shown on its page as it is", async () => {
    const { stdout } = await runCli(["diff", "old", "new"], { files: CHANGED });
    expect(PAGE).toContain(`\`\`\`text\n${stdout}\`\`\`\n`);
  });

  test("as JSON rounds as the other commands do, and says null for what is not there", async () => {
    const { stdout } = await runCli(["diff", "old", "new", "--format", "json"], { files: CHANGED });
    const { files, layout_only } = JSON.parse(stdout);
    expect(layout_only).toEqual([]);
    expect(files[0]).toMatchObject({ before: "old/job.finish", after: "new/job.finish", status: "changed" });
    const job = files[0].changes.find(({ kind }: { readonly kind: string }) => kind === "job");
    expect(job.figures.elapsed_h).toEqual({ before: 5, after: 10.25 });
    expect(job.figures.finish).toEqual({ before: "2027-03-08T14:00:00", after: "2027-03-08T19:15:00" });
    expect(job.waits).toEqual([{ material: "Clear", stage: "recoat", before_h: 2, after_h: 3 }]);
  });

  test("files are no folders", async () => {
    const { status, stderr } = await runCli(["diff", "old", "new/job.finish"], { files: CHANGED });
    expect(status).toBe(2);
    expect(stderr).toContain("`diff OLD NEW` takes two files or two folders.");
  });
});

describe("diff --textconv", () => {
  test("says what a file says, a line for every fact", async () => {
    const { status, stdout } = await runCli(["diff", "--textconv", "job.finish"], { files: FILES });
    expect(status).toBe(0);
    expect(stdout).toContain(`piece shelf "Shelf"
  bought 5.00
  built 1990
  new_price 100.00
  surface board
  surface board › shape panel 2 m x 1 m
`);
    expect(stdout).toContain(
      "  layer clear x coats, takes 15 min › wait until recoat\n  wait until recoat\n",
    );
  });

  test("takes one file", async () => {
    expect((await runCli(["diff", "--textconv"], { files: FILES })).stderr).toBe(
      "finishwright: `--textconv` takes one file.\n",
    );
    expect((await runCli(["diff", "--textconv", "none.finish"], { files: FILES })).status).toBe(2);
  });
});
