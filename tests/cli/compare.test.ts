/** `compare`: two jobs, or two versions of one, side by side. */
import { describe, expect, test } from "vitest";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

describe("compare", () => {
  test("takes no folders, and says so", async () => {
    const { status, stderr } = await runCli(["compare", ".", "job.finish"], { files: FILES });
    expect(status).toBe(2);
    expect(stderr).toBe("finishwright: `.` is a folder. Name the file of the job: `FILE` or `FILE:JOB`.\n");
  });

  const files = {
    ...FILES,
    "two.finish": `use "job.finish"
job once {
  piece shelf
  in    room
  start 2027-03-08 09:00
  apply clearing(clear: clear_coat, coats: 1) to board
}
job thrice {
  piece shelf
  apply clearing(clear: clear_coat, coats: 3) to board
}
`,
  };

  test("puts two jobs side by side", async () => {
    const { status, stdout } = await runCli(["compare", "job.finish", "two.finish:once"], { files });
    expect(status).toBe(0);
    const rows = stdout.split("\n").map((line) => line.trim().split(/ {2,}/u));
    expect(rows[0]).toEqual(["shelf_job", "once", "difference"]);
    expect(rows).toContainEqual(["coats", "2", "1", "−1"]);
    expect(rows).toContainEqual(["clear_coat", "0.44 L", "0.22 L", "−0.22 L"]);
    expect(rows).toContainEqual(["hands-on", "1 h", "45 min", "−15 min"]);
    expect(rows).toContainEqual(["elapsed", "5 h", "2 h 45 min", "−2 h 15 min"]);
    expect(rows).toContainEqual(["VOC", "44 g", "22 g", "−22 g"]);
    // The dates that people ask for, in their order.
    expect(
      rows.map(([name]) => name).filter((name) => /^(?:finish|last work|light use|full use)$/u.test(name!)),
    ).toEqual(["last work", "light use", "full use"]);
    expect(rows).toContainEqual(["last work", "Mon 8 Mar 2027 12:00", "Mon 8 Mar 2027 09:45", "−2 h 15 min"]);
    expect(rows).toContainEqual(["light use", "Tue 9 Mar 2027 12:00", "Tue 9 Mar 2027 09:45", "−2 h 15 min"]);
    // 10 + 15 + 5 against 10 + 20 + 2 + 5
    expect(rows).toContainEqual(["total", "37.00 EUR", "30.00 EUR", "−7.00 EUR"]);
  });

  test("puts three jobs side by side, in tables that fit", async () => {
    const argv = ["compare", "job.finish", "two.finish:once", "two.finish:thrice", "two.finish:once"];
    const { status, stdout } = await runCli(argv, { files });
    expect(status).toBe(0);
    const rows = stdout.split("\n").filter((line) => !line.startsWith("Not known"));
    expect(Math.max(...rows.map((line) => line.length))).toBeLessThanOrEqual(80);
    const tables = stdout
      .split("\n\n")
      .map((table) => table.split("\n").map((line) => line.trim().split(/ {2,}/u)));
    // The job of the same name twice: each is named with its file.
    expect(tables.map(([head]) => head)).toEqual([
      ["job.finish:shelf_job", "two.finish:once"],
      ["two.finish:thrice", "two.finish:once"],
    ]);
    expect(tables[0]).toContainEqual(["coats", "2", "1"]);
    expect(tables[1]).toContainEqual(["coats", "3", "1"]);
    expect(tables[1]).toContainEqual(["clear_coat", "0.66 L", "0.22 L"]);
    expect(tables[1]).toContainEqual(["last work", "not known", "Mon 8 Mar 2027 09:45"]);
    expect(stdout).toContain("Not known of two.finish:thrice: labour");
  });

  test("as JSON has three jobs, and what each of the others has more or less than the first", async () => {
    const argv = ["compare", "job.finish", "two.finish:once", "two.finish:thrice", "--format", "json"];
    const told = JSON.parse((await runCli(argv, { files })).stdout);
    expect(told.jobs.map(({ job, coats }: { job: string; coats: number }) => [job, coats])).toEqual([
      ["shelf_job", 2],
      ["once", 1],
      ["thrice", 3],
    ]);
    // 0.44 L of two coats, and 0.22 L a coat
    expect(told.differences).toMatchObject([
      { coats: -1, litres: -0.22, materials: [{ name: "clear_coat", litres: -0.22 }] },
      { coats: 1, litres: 0.22, materials: [{ name: "clear_coat", litres: 0.22 }] },
    ]);
  });

  test("as JSON has both sides and what B has more or less, null where it is not known", async () => {
    const { status, stdout } = await runCli(
      ["compare", "job.finish", "two.finish:thrice", "--format", "json"],
      { files },
    );
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual({
      a: {
        file: "job.finish",
        job: "shelf_job",
        title: "One shelf",
        area_m2: 2,
        coats: 2,
        // 2 × 100 um × 30 %
        dry_film_um: 60,
        // 2 × 2 m2 / 10 × 1.1
        litres: 0.44,
        // 30 min + 2 × 15 min
        hands_on_h: 1,
        // 09:00, dust to 09:30, coats to 09:45 and 12:00, 2 h
        elapsed_h: 5,
        finish: "2027-03-08T14:00:00",
        last_work: "2027-03-08T12:00:00",
        light_use: "2027-03-09T12:00:00",
        in_service: "2027-03-09T12:00:00",
        voc_g: 44,
        material_cost: 10,
        labour_cost: 20,
        // 10 + 20 + 2 + 5
        total_cost: 37,
        saving: 63,
        currency: "EUR",
        materials: [{ name: "clear_coat", litres: 0.44, cost: 10 }],
        // The recipe's own: waterborne on bare beech, and nothing sanded after it.
        findings: { error: 0, warning: 1, information: 0, hint: 0 },
        rules: [{ rule: "grain-not-knocked-down", severity: "warning", count: 1 }],
      },
      b: {
        file: "two.finish",
        job: "thrice",
        title: null,
        area_m2: 2,
        coats: 3,
        dry_film_um: 90,
        litres: 0.66,
        // 30 min + 3 × 15 min
        hands_on_h: 1.25,
        // Without a shop day and night: 30 min + 3 × (15 min + 2 h)
        elapsed_h: 7.25,
        finish: null,
        last_work: null,
        light_use: null,
        in_service: null,
        voc_g: 66,
        // 0.66 L: a litre for 16.00, or two half litres for 20.00
        material_cost: 16,
        labour_cost: null,
        total_cost: 21,
        saving: 79,
        currency: null,
        materials: [{ name: "clear_coat", litres: 0.66, cost: 16 }],
        // The recipe's own: waterborne on bare beech, and nothing sanded after it.
        findings: { error: 0, warning: 1, information: 0, hint: 0 },
        rules: [{ rule: "grain-not-knocked-down", severity: "warning", count: 1 }],
      },
      difference: {
        area_m2: 0,
        coats: 1,
        dry_film_um: 30,
        litres: 0.22,
        hands_on_h: 0.25,
        elapsed_h: 2.25,
        finish_h: null,
        last_work_h: null,
        light_use_h: null,
        in_service_h: null,
        voc_g: 22,
        material_cost: 6,
        labour_cost: null,
        total_cost: -16,
        saving: 16,
        materials: [{ name: "clear_coat", litres: 0.22 }],
        findings: { error: 0, warning: 0, information: 0, hint: 0 },
      },
    });
  });

  test("two versions of a file, by their paths, with the findings that one brings", async () => {
    const versions = {
      "old/stock.finish": FILES["stock.finish"],
      "old/job.finish": JOB,
      "new/stock.finish": FILES["stock.finish"].replace("100 g/L", "50 g/L"),
      // An hour is too short for a coat that needs two.
      "new/job.finish": JOB.replace("    wait until recoat", "    wait 1 h"),
    };
    const argv = ["compare", "old/job.finish", "new/job.finish"];
    const text = await runCli(argv, { files: versions });
    const rows = text.stdout.split("\n").map((line) => line.trim().split(/ {2,}/u));
    expect(rows[0]).toEqual(["shelf_job", "old/job.finish", "new/job.finish", "difference"]);
    expect(rows).toContainEqual(["elapsed", "5 h", "4 h", "−1 h"]);
    expect(rows).toContainEqual(["VOC", "44 g", "22 g", "−22 g"]);
    expect(rows).toContainEqual(["warning recoat-too-early", "0", "1", "+1"]);
    const json = await runCli([...argv, "--format", "json"], { files: versions });
    expect(JSON.parse(json.stdout)).toMatchObject({
      a: { file: "old/job.finish", job: "shelf_job", findings: { warning: 1 } },
      b: {
        file: "new/job.finish",
        job: "shelf_job",
        findings: { warning: 2 },
        rules: [
          { rule: "grain-not-knocked-down" },
          { rule: "recoat-too-early", severity: "warning", count: 1 },
        ],
      },
      // 14:00 and 12:00 the next day against an hour earlier.
      difference: { elapsed_h: -1, finish_h: -1, in_service_h: -1, voc_g: -22, findings: { warning: 1 } },
    });
  });

  test("takes no money of one currency from money of another", async () => {
    const foreign = { ...FILES, "other.finish": JOB.replace("currency EUR", "currency SEK") };
    const argv = ["compare", "job.finish", "other.finish"];
    const { difference } = JSON.parse(
      (await runCli([...argv, "--format", "json"], { files: foreign })).stdout,
    );
    expect(difference).toMatchObject({ litres: 0, elapsed_h: 0, total_cost: null, saving: null });
    const rows = (await runCli(argv, { files: foreign })).stdout.split("\n");
    expect(
      rows
        .find((row) => row.includes("total"))!
        .trim()
        .split(/ {2,}/u),
    ).toEqual(["total", "37.00 EUR", "37.00 SEK"]);
  });

  test("says once what is missing for the figures that are not known", async () => {
    const { stdout } = await runCli(["compare", "job.finish", "two.finish:thrice"], { files });
    expect(stdout).toContain(
      "Not known of thrice: last work, light use, full use (no `in` (the shop), no `start`).\nNot known of thrice: labour (no `in` (the shop)).\n",
    );
  });

  test("asks which job of several is meant", async () => {
    const several = await runCli(["compare", "job.finish", "two.finish"], { files });
    expect(several.status).toBe(2);
    expect(several.stderr).toBe(
      "finishwright: `two.finish` has several jobs. Name one: `two.finish:once`, `two.finish:thrice`.\n",
    );
    const wrong = await runCli(["compare", "job.finish", "two.finish:onec"], { files });
    expect(wrong.stderr).toContain("There is no job `onec`. Did you mean `once`?");
    expect((await runCli(["compare", "job.finish", "none.finish:once"], { files })).status).toBe(2);
    expect((await runCli(["compare", "job.finish", "stock.finish"], { files })).stderr).toContain(
      "`stock.finish` has no jobs to compare",
    );
    expect((await runCli(["compare", "job.finish"], { files })).status).toBe(2);
  });
});
