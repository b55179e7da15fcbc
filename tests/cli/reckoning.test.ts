/** The commands that reckon: totals, schedule, shopping, compare; and explain, the server and the demo. */
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

describe("totals", () => {
  test("as JSON have the fields of the language reference and no others", async () => {
    const { status, stdout } = await runCli(["totals", "job.finish", "--format", "json"], { files: FILES });
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual({
      jobs: [
        {
          name: "shelf_job",
          area_m2: 2,
          surfaces: [{ name: "board", area_m2: 2, dry_film_um: 60 }],
          // 2 × 2 m2 / 10 × 1.1
          materials: [
            {
              name: "clear_coat",
              litres: 0.44,
              containers: [{ litres: 0.5, count: 1, price: 10 }],
              cost: 10,
            },
          ],
          // 30 min + 2 × 15 min
          hands_on_h: 1,
          // Coats end at 09:45 and 12:00, then two hours.
          elapsed_h: 5,
          finish: "2027-03-08T14:00:00",
          in_service: "2027-03-09T12:00:00",
          voc_g: 44,
          material_cost: 10,
          labour_cost: 20,
          total_cost: 37,
          saving: 63,
        },
      ],
    });
    expect(Object.keys((JSON.parse(stdout) as { jobs: object[] }).jobs[0]!)).toEqual([
      "name",
      "area_m2",
      "surfaces",
      "materials",
      "hands_on_h",
      "elapsed_h",
      "finish",
      "in_service",
      "voc_g",
      "material_cost",
      "labour_cost",
      "total_cost",
      "saving",
    ]);
  });

  test("as text have units, currency, containers and weekdays", async () => {
    const { stdout } = await runCli(["totals", "job.finish"], { files: FILES });
    expect(stdout).toBe(
      [
        "shelf_job “One shelf”  job.finish",
        "  Surfaces",
        "    board                             2 m2  60 um dry film",
        "  Materials",
        "    clear_coat                      0.44 L  1 × 0.5 L for 10.00 EUR",
        "  Time",
        "    hands-on                           1 h",
        "    elapsed                            5 h",
        "    finish            Mon 2027-03-08 14:00",
        "    in service        Tue 2027-03-09 12:00",
        "  Fumes",
        "    VOC                               44 g",
        "  Fumes by the hour (a coat's grams leave evenly from its first stroke to half of touch dry, a step's to half an hour after it: common practice, no source)",
        // The family is dry to the touch in 1 h: 22 g leave from 09:30 to 10:15 and from 11:45 to 12:30, 22 · 30/45 =
        // 14.67 and 22 · 15/45 = 7.33.
        "    most in an hour                   15 g  from the start",
        "    Mon 2027-03-08                    44 g  hourly from 09:00: 15 7 7 15",
        "  Cost",
        // 0.88 L of a can of 1 L for 10.00
        "    materials                    10.00 EUR  whole cans; 8.80 EUR worth is used",
        "    supplies                      2.00 EUR",
        "    labour                       20.00 EUR",
        "    pieces                        5.00 EUR",
        "    total                        37.00 EUR",
        "    saving                       63.00 EUR",
        "",
      ].join("\n"),
    );
  });

  test("say which line is missing where a figure is not known", async () => {
    const bare = JOB.replace(/ {2}in .*\n {2}start .*\n/u, "").replace("  new    100.00\n", "");
    const files = { ...FILES, "job.finish": bare };
    const { stdout } = await runCli(["totals", "job.finish"], { files });
    expect(stdout).toMatch(/finish +not known {2}no `in` \(the shop\), no `start`\n/u);
    expect(stdout).toMatch(/labour +not known {2}no `in` \(the shop\)\n/u);
    expect(stdout).toMatch(/saving +not known {2}no `new` price for `shelf`\n/u);
    const json = await runCli(["totals", "job.finish", "--format", "json"], { files });
    expect(JSON.parse(json.stdout)).toMatchObject({
      jobs: [{ finish: null, labour_cost: null, saving: null }],
    });
  });

  test("are of the jobs asked for; a job that is not there is wrong use", async () => {
    const files = {
      ...FILES,
      "two.finish":
        'use "job.finish"\njob other {\n  piece shelf\n  apply clearing(clear: clear_coat) to all\n}\n',
    };
    const names = async (...argv: string[]): Promise<readonly string[]> => {
      const { stdout } = await runCli(["totals", ...argv, "--format", "json"], { files });
      return (JSON.parse(stdout) as { jobs: { name: string }[] }).jobs.map(({ name }) => name);
    };
    expect(await names("two.finish")).toEqual(["other"]);
    expect(await names()).toEqual(["shelf_job", "other"]);
    expect(await names("--job", "other")).toEqual(["other"]);
    const wrong = await runCli(["totals", "--job", "othr"], { files });
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).toBe("finishwright: There is no job `othr`. Did you mean `other`?\n");
    expect(wrong.stdout).toBe("");
  });

  test("of a file with errors are printed all the same, with a word on stderr and status 1", async () => {
    const files = { ...FILES, "job.finish": `${JOB}shop broken {\n  crw 2\n}\n` };
    const { status, stdout, stderr } = await runCli(["totals", "job.finish"], { files });
    expect(status).toBe(1);
    expect(stdout).toContain("37.00 EUR");
    expect(stderr).toBe(
      "finishwright: `job.finish` has an error, so its totals may be wrong: see `finishwright check job.finish`.\n",
    );
  });

  test("may be wrong where a file that is used cannot be read in part; a mistake of the trade there changes none", async () => {
    const stock = FILES["stock.finish"];
    const misread = { ...FILES, "stock.finish": stock.replace("10 m2/L", "10 h") };
    const wrong = await runCli(["totals", "job.finish"], { files: misread });
    expect(wrong.status).toBe(1);
    expect(wrong.stderr).toBe(
      "finishwright: `stock.finish` is used here and has an error, so the totals may be wrong: see `finishwright check stock.finish`.\n",
    );
    const oily = `${stock}recipe oiling {\n  layer drying_oil\n}\n`;
    const trade = await runCli(["check", "stock.finish"], { files: { "stock.finish": oily } });
    expect(trade.stdout).toContain("error rags-not-wetted");
    expect(
      await runCli(["totals", "job.finish"], { files: { ...FILES, "stock.finish": oily } }),
    ).toMatchObject({
      status: 0,
      stderr: "",
    });
  });

  test("of one job do not suffer from errors in the files of others", async () => {
    const files = { ...FILES, "other.finish": "job other {\n  piece nothing\n}\n" };
    expect((await runCli(["totals"], { files })).status).toBe(1);
    for (const command of ["totals", "shopping"]) {
      const one = await runCli([command, "--job", "shelf_job"], { files });
      expect(one).toMatchObject({ status: 0, stderr: "" });
    }
  });

  test("of no jobs are none", async () => {
    const json = await runCli(["totals", "stock.finish", "--format", "json"], { files: FILES });
    expect(JSON.parse(json.stdout)).toEqual({ jobs: [] });
    const text = await runCli(["totals", "stock.finish"], { files: FILES });
    expect(text.stderr).toContain("These files have no jobs");
    expect((await runCli(["totals", "none.finish"])).status).toBe(2);
  });
});

describe("schedule", () => {
  test("as text is a list in the order of time", async () => {
    const { status, stdout } = await runCli(["schedule", "job.finish"], { files: FILES });
    expect(status).toBe(0);
    expect(stdout).toBe(
      [
        "shelf_job “One shelf”",
        "  Mon 2027-03-08",
        "    09:00 to 09:30  board  dust                     critical",
        "    09:30 to 09:45  board  clear_coat, coat 1 of 2  critical",
        "    09:45 to 11:45  board  wait until recoat        critical",
        "    11:45 to 12:00  board  clear_coat, coat 2 of 2  critical",
        "    12:00 to 14:00  board  wait until recoat        critical",
        "  Elapsed 5 h, finished Mon 2027-03-08 14:00; no plan is shorter.",
        "  In service Tue 2027-03-09 12:00.",
        "",
      ].join("\n"),
    );
  });

  test("as JSON has the items with their hours", async () => {
    const { stdout } = await runCli(["schedule", "job.finish", "--format", "json"], { files: FILES });
    const { jobs } = JSON.parse(stdout) as { jobs: { items: unknown[] }[] };
    expect(jobs[0]).toMatchObject({ name: "shelf_job", status: "planned", elapsed_h: 5, exact: true });
    expect(jobs[0]!.items[1]).toEqual({
      surface: "board",
      piece: 1,
      kind: "layer",
      what: "clear_coat, coat 1 of 2",
      start: "2027-03-08T09:30:00",
      end: "2027-03-08T09:45:00",
      start_h: 0.5,
      end_h: 0.75,
      slack_h: 0,
      critical: true,
    });
  });

  test("as a calendar is read by a calendar library", async () => {
    const { stdout } = await runCli(["schedule", "job.finish", "--format", "ics"], { files: FILES });
    const calendar = new ICAL.Component(ICAL.parse(stdout) as unknown as string);
    const events = calendar.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));
    expect(events.map(({ summary, startDate }) => `${startDate.toString()} ${summary}`)).toEqual([
      "2027-03-08T09:00:00 dust (board)",
      "2027-03-08T09:30:00 clear_coat\\, coat 1 of 2 (board)".replace("\\", ""),
      "2027-03-08T09:45:00 wait until recoat (board)",
      "2027-03-08T11:45:00 clear_coat, coat 2 of 2 (board)",
      "2027-03-08T12:00:00 wait until recoat (board)",
    ]);
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(5);
  });

  test("without dates has hours after the start, and no calendar", async () => {
    const files = { ...FILES, "job.finish": JOB.replace(/ {2}start .*\n/u, "") };
    const text = await runCli(["schedule", "job.finish"], { files });
    expect(text.stdout).toContain("  From the start\n    0 h to 30 min         board  dust  ");
    expect(text.stdout).toContain("  No dates: no `start`.\n");
    const ics = await runCli(["schedule", "job.finish", "--format", "ics"], { files });
    expect(ics.status).toBe(2);
    expect(ics.stdout).toBe("");
    expect(ics.stderr).toContain("The job `shelf_job` has no dates");
  });

  test("needs one file", async () => {
    expect((await runCli(["schedule"])).stderr).toContain("missing required argument 'file'");
    expect((await runCli(["schedule", "none.finish"])).status).toBe(2);
  });
});

describe("shopping", () => {
  const second = JOB.replace("job shelf_job", "job again").replace(/use .*\n/u, 'use "stock.finish"\n');
  const files = {
    "stock.finish": FILES["stock.finish"],
    "a.finish": JOB,
    "b.finish": second
      .replace(/\bshelf\b/gu, "rack")
      .replace(/\bclearing\b/gu, "clearing_too")
      .replace("shop room", "shop shed")
      .replace("in       room", "in       shed"),
  };

  test("adds litres up before cans are chosen", async () => {
    // Twice 0.44 L is 0.88 L: one can of a litre for 16.00 instead of two of half a litre for 20.00.
    const { status, stdout } = await runCli(["shopping", "--format", "json"], { files });
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual({
      materials: [
        {
          name: "clear_coat",
          title: "Clear",
          litres: 0.88,
          on_hand: 0,
          containers: [{ litres: 1, count: 1, price: 16 }],
          cost: 16,
          currency: "EUR",
          jobs: ["shelf_job", "again"],
        },
      ],
      currency: "EUR",
      total_cost: 16,
      totals: [{ currency: "EUR", total_cost: 16 }],
    });
  });

  test("takes off once what is on hand", async () => {
    const stock = FILES["stock.finish"].replace("  sold", "  on_hand 400 mL\n  sold");
    const { stdout } = await runCli(["shopping"], { files: { ...files, "stock.finish": stock } });
    // 0.88 − 0.4 = 0.48 L
    expect(stdout).toBe(
      "clear_coat  0.88 L  0.4 L on hand  1 × 0.5 L  10.00 EUR\ntogether                                      10.00 EUR\n",
    );
  });

  test("tells materials of one name apart by their files, for people", async () => {
    const own = second
      .replace(/\bshelf\b/gu, "rack")
      .replace(/\bclearing\b/gu, "clearing_too")
      .replace("stock.finish", "old/stock.finish");
    const apart = { ...files, "b.finish": own, "old/stock.finish": FILES["stock.finish"] };
    const { stdout } = await runCli(["shopping", "a.finish", "b.finish"], { files: apart });
    expect(stdout).toBe(
      [
        "clear_coat (stock.finish)      0.44 L    1 × 0.5 L  10.00 EUR",
        "clear_coat (old/stock.finish)  0.44 L    1 × 0.5 L  10.00 EUR",
        "together                                            20.00 EUR",
        "",
      ].join("\n"),
    );
    const markdown = await runCli(["shopping", "a.finish", "b.finish", "--format", "markdown"], {
      files: apart,
    });
    expect(markdown.stdout).toContain("Clear (`clear_coat`) (old/stock.finish), 10.00 EUR");
  });

  test("of no jobs adds nothing up, for people", async () => {
    const { status, stdout, stderr } = await runCli(["shopping", "stock.finish"], { files });
    expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
    expect(stderr).toContain("so there is nothing to buy");
  });

  test("as CSV and as Markdown", async () => {
    expect((await runCli(["shopping", "--format", "csv"], { files })).stdout).toBe(
      "material,title,litres,on_hand,can_litres,count,price,cost,currency,jobs\r\nclear_coat,Clear,0.88,0,1,1,16.00,16.00,EUR,shelf_job again\r\n",
    );
    expect((await runCli(["shopping", "a.finish", "--format", "markdown"], { files })).stdout).toBe(
      "# Shopping list\n\n- [ ] 1 × 0.5 L Clear (`clear_coat`), 10.00 EUR, for `shelf_job`\n\nTogether 10.00 EUR.\n",
    );
  });

  test("says what it cannot know", async () => {
    const stock = FILES["stock.finish"].replace(/ {2}sold .*\n/u, "");
    const { stdout } = await runCli(["shopping", "a.finish"], { files: { ...files, "stock.finish": stock } });
    expect(stdout).toContain("no `sold` for `clear_coat`");
    expect(stdout).toContain("without what is not known");
    const lists = { ...files, "stock.finish": stock };
    const of = async (format: string): Promise<string> =>
      (await runCli(["shopping", "a.finish", "--format", format], { files: lists })).stdout;
    expect(JSON.parse(await of("json"))).toMatchObject({
      materials: [{ litres: 0.44, containers: [], cost: null }],
      total_cost: null,
      totals: [{ currency: "EUR", total_cost: null }],
    });
    // No number of cans, no price and no cost; 0 would be taken for nothing to buy.
    expect(await of("csv")).toContain("clear_coat,Clear,0.44,0,,,,,EUR,shelf_job\r\n");
    expect(await of("markdown")).toContain(
      "- [ ] 0.44 L of Clear (`clear_coat`) (no `sold` for `clear_coat`), for `shelf_job`\n\nTogether 0.00 EUR, without what is not known.\n",
    );
  });

  describe("in shops of two currencies", () => {
    const abroad = {
      ...files,
      "stock.finish": FILES["stock.finish"].replace("  sold", "  on_hand 500 mL\n  sold"),
      "b.finish": files["b.finish"].replace("currency EUR", "currency SEK"),
    };

    test("is a list for each, and what is on hand is taken off once", async () => {
      // 0.44 L of the 0.5 L on hand go into the first job; 0.44 − 0.06 = 0.38 L are bought for the second.
      const { stdout, stderr } = await runCli(["shopping"], { files: abroad });
      expect(stderr).toBe(
        "finishwright: The shops have several currencies, so there is a list for each: EUR, SEK.\n",
      );
      expect(stdout).toBe(
        [
          "clear_coat  0.44 L  0.5 L on hand   nothing to buy",
          "together                                             0.00 EUR",
          "",
          "clear_coat  0.44 L  0.06 L on hand  1 × 0.5 L       10.00 SEK",
          "together                                            10.00 SEK",
          "",
        ].join("\n"),
      );
    });

    test("has no sum over both", async () => {
      const { stdout } = await runCli(["shopping", "--format", "json"], { files: abroad });
      expect(JSON.parse(stdout)).toMatchObject({
        materials: [
          { on_hand: 0.5, cost: 0, currency: "EUR", jobs: ["shelf_job"] },
          { on_hand: 0.06, cost: 10, currency: "SEK", jobs: ["again"] },
        ],
        currency: null,
        total_cost: null,
        totals: [
          { currency: "EUR", total_cost: 0 },
          { currency: "SEK", total_cost: 10 },
        ],
      });
      const list = await runCli(["shopping", "--format", "markdown"], { files: abroad });
      expect(list.stdout).toContain("Together 10.00 SEK.\n");
      expect(list.stdout).not.toContain("EUR");
    });
  });

  test("a job after another finds what that leaves, however they are asked for", async () => {
    const stock = FILES["stock.finish"].replace("  sold", "  on_hand 500 mL\n  sold");
    const chained = {
      "stock.finish": stock,
      "a.finish": `${JOB}job later {\n  piece shelf\n  after shelf_job\n  apply clearing(clear: clear_coat) to board\n}\n`,
    };
    const needs = async (...argv: string[]): Promise<unknown> => {
      const { stdout } = await runCli(["shopping", ...argv, "--format", "json"], { files: chained });
      return (JSON.parse(stdout) as { materials: unknown[] }).materials[0];
    };
    // Both: 0.88 − 0.5 = 0.38 L. The later alone: 0.5 − 0.44 = 0.06 L are left to it.
    expect(await needs()).toMatchObject({
      litres: 0.88,
      on_hand: 0.5,
      containers: [{ litres: 0.5, count: 1 }],
    });
    expect(await needs("--job", "later")).toMatchObject({ litres: 0.44, on_hand: 0.06 });
  });

  test("CSV keeps quotes, commas and signs of other alphabets as RFC 4180 has it", async () => {
    const stock = FILES["stock.finish"].replace('"Clear"', String.raw`"Clear, \"dull\" – für außen"`);
    const { stdout } = await runCli(["shopping", "a.finish", "--format", "csv"], {
      files: { ...files, "stock.finish": stock },
    });
    const [, line] = stdout.split("\r\n");
    expect(line).toBe('clear_coat,"Clear, ""dull"" – für außen",0.44,0,0.5,1,10.00,10.00,EUR,shelf_job');
  });
});

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
    expect(rows).toContainEqual(["finish", "Mon 2027-03-08 14:00", "Mon 2027-03-08 11:45", "−2 h 15 min"]);
    // 10 + 15 + 5 against 10 + 20 + 2 + 5
    expect(rows).toContainEqual(["total", "37.00 EUR", "30.00 EUR", "−7.00 EUR"]);
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
      "Not known of thrice: finish, in service (no `in` (the shop), no `start`).\nNot known of thrice: labour (no `in` (the shop)).\n",
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

describe("explain", () => {
  test("says what a rule is about", async () => {
    const { status, stdout } = await runCli(["explain", "coat-over-wax"]);
    expect(status).toBe(0);
    expect(stdout).toContain("coat-over-wax");
    expect(stdout).toContain("Take the wax off with `step dewax`");
  });

  test("knows near misses, and lists all rules without a name", async () => {
    const near = await runCli(["explain", "coat-over-wx"]);
    expect(near.status).toBe(2);
    expect(near.stderr).toBe(
      "finishwright: There is no rule `coat-over-wx`. Did you mean `coat-over-wax`?\n",
    );
    expect((await runCli(["explain"])).stdout).toContain("grit-jump");
  });
});

describe("the others", () => {
  test("language-server serves, whatever an editor adds", async () => {
    for (const argv of [[], ["--stdio"], ["--pipe=x", "--clientProcessId=1"], ["--node-ipc"]]) {
      expect(await runCli(["language-server", ...argv])).toMatchObject({ status: 0, stdout: "serving\n" });
    }
  });

  test("demo ends well, although it shows mistakes", async () => {
    const { status, stdout } = await runCli(["demo"]);
    expect(stdout).toContain("error coat-over-wax");
    expect(stdout).toContain("in service");
    expect(status).toBe(0);
    expect((await runCli(["--help"])).stdout).not.toContain("demo");
  });
});
