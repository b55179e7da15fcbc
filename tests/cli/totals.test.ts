/** `totals`: sums of jobs, as text and as JSON. */
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
          last_work: "2027-03-08T12:00:00",
          light_use: "2027-03-09T12:00:00",
          full_use: "2027-03-09T12:00:00",
          in_service: "2027-03-09T12:00:00",
          voc_g: 44,
          material_cost: 10,
          labour_cost: 20,
          total_cost: 37,
          saving: 63,
          worth: {
            hour: 20,
            ways: [
              {
                way: "keep",
                money_out: 5,
                hours: 0,
                hours_worth: 0,
                money_in: 0,
                left: -5,
                missing: [],
              },
              // 10 + 2 + 5; an hour at 20; 17 + 20
              {
                way: "redo",
                money_out: 17,
                hours: 1,
                hours_worth: 20,
                money_in: 0,
                left: -37,
                missing: [],
              },
              {
                way: "buy_new",
                money_out: 100,
                hours: 0,
                hours_worth: 0,
                money_in: 0,
                left: -100,
                missing: [],
              },
              {
                way: "sell",
                money_out: 17,
                hours: 1,
                hours_worth: 20,
                money_in: null,
                left: null,
                missing: ["no `sell_price` for `shelf`"],
              },
            ],
            sold_hour: null,
          },
          reasons: {
            last_work: "`clear_coat, coat 2 of 2` on `board`",
            light_use: "a day after the last coat, `clear_coat, coat 2 of 2` on `board`",
            full_use: "cured 1 day after the last coat, `clear_coat, coat 2 of 2` on `board`",
          },
          notes: [],
          record: null,
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
      "last_work",
      "light_use",
      "full_use",
      "in_service",
      "voc_g",
      "material_cost",
      "labour_cost",
      "total_cost",
      "saving",
      "worth",
      "reasons",
      "notes",
      "record",
    ]);
  });

  test("as text are no wider than a terminal, whatever the names, and lose no word to that", async () => {
    const long = Object.entries(FILES).map(([file, text]) => [
      file,
      text.replaceAll(/\bclear_coat\b/gu, "clear_coat_of_the_old_mill"),
    ]);
    const { stdout } = await runCli(["totals", "job.finish"], { files: Object.fromEntries(long) });
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    // Beside a name of that length there is no room, so it stands below.
    expect(stdout).toContain("0.44 L\n        1 × 0.5 L for 10.00 EUR, 60 mL left over\n");
  });

  test("as text have units, currency, containers and weekdays", async () => {
    const { stdout } = await runCli(["totals", "job.finish"], { files: FILES });
    expect(stdout).toBe(
      [
        "shelf_job “One shelf”  job.finish",
        "  Surfaces",
        "    board                             2 m2  60 um dry film",
        "  Materials",
        "    clear_coat                      0.44 L  1 × 0.5 L for 10.00 EUR, 60 mL left",
        "                                            over",
        "  Time",
        "    hands-on                           1 h",
        "    elapsed                            5 h",
        "    last work         Mon 8 Mar 2027 12:00  `clear_coat, coat 2 of 2` on `board`",
        "    light use         Tue 9 Mar 2027 12:00  a day after the last coat,",
        "                                            `clear_coat, coat 2 of 2` on `board`",
        "    full use          Tue 9 Mar 2027 12:00  cured 1 day after the last coat,",
        "                                            `clear_coat, coat 2 of 2` on `board`",
        "  Fumes",
        "    VOC                               44 g",
        "  Fumes by the hour (a coat's grams leave evenly from its first stroke to half",
        "  of touch dry, a step's to half an hour after it: common practice, no source)",
        // The family is dry to the touch in 1 h: 22 g leave from 09:30 to 10:15 and from 11:45 to 12:30, 22 · 30/45 =
        // 14.67 and 22 · 15/45 = 7.33.
        "    most in an hour                   15 g  from the start",
        "    Mon 8 Mar 2027                    44 g  hourly from 09:00: 15 7 7 15",
        "  Cost",
        // 0.88 L of a can of 1 L for 10.00
        "    materials                    10.00 EUR  whole cans; 8.80 EUR worth is used",
        "    supplies                      2.00 EUR",
        "    labour                       20.00 EUR",
        "    pieces                        5.00 EUR",
        "    total                        37.00 EUR",
        "    saving                       63.00 EUR",
        // 63 and 20 of labour, for one hour
        "    an hour earns                83.00 EUR  new ones less all costs but labour",
        "  Is it worth it? (an hour of work at 20.00 EUR)",
        "                   you pay  hours  hours in money    you get  left over",
        "    keep as it is     5.00   none            none       none      -5.00",
        "    redo             17.00    1 h           20.00       none     -37.00",
        "    buy new         100.00   none            none       none    -100.00",
        "    redo and sell    17.00    1 h           20.00  not known  not known",
        "    Left over is what you get less what you pay and the hours in money. What you",
        "    pay has the 5.00 EUR for the pieces in it.",
        "    Redoing costs 63.00 EUR less than buying new.",
        "    Not known for `redo and sell`: no `sell_price` for `shelf`.",
        "",
      ].join("\n"),
    );
  });

  test("say which line is missing where a figure is not known", async () => {
    const bare = JOB.replace(/ {2}in .*\n {2}start .*\n/u, "").replace(/^ *new_price +100.00\n/mu, "");
    const files = { ...FILES, "job.finish": bare };
    const { stdout } = await runCli(["totals", "job.finish"], { files });
    expect(stdout).toMatch(/last work +not known {2}no `in` \(the shop\), no `start`\n/u);
    expect(stdout).toMatch(/labour +not known {2}no `in` \(the shop\)\n/u);
    expect(stdout).toMatch(/saving +not known {2}no `new_price` for `shelf`\n/u);
    const json = await runCli(["totals", "job.finish", "--format", "json"], { files });
    expect(JSON.parse(json.stdout)).toMatchObject({
      jobs: [{ finish: null, labour_cost: null, saving: null }],
    });
  });

  test("weigh selling, in eighty columns", async () => {
    const sold = JOB.replace(/^ *new_price +100.00\n/mu, "  sell_price 90.00\n").replace(
      /^ *labour.*\n/mu,
      "",
    );
    const { stdout } = await runCli(["totals", "job.finish"], { files: { ...FILES, "job.finish": sold } });
    const table = stdout.slice(stdout.indexOf("  Is it worth it?"));
    expect(table).toBe(
      [
        "  Is it worth it? (in EUR; what an hour of work costs is not given)",
        "                     you pay  hours  hours in money  you get  left over",
        "    keep as it is       5.00   none            none     none      -5.00",
        "    redo               17.00    1 h       not known     none  not known",
        "    buy new        not known   none            none     none  not known",
        "    redo and sell      17.00    1 h       not known    90.00  not known",
        "    Left over is what you get less what you pay and the hours in money. What you",
        "    pay has the 5.00 EUR for the pieces in it.",
        // 90 − 17
        "    Redone and sold, an hour of work brings 73.00 EUR.",
        "    Not known for `redo`: no `labour` in `room`.",
        "    Not known for `buy new`: no `new_price` for `shelf`.",
        "",
      ].join("\n"),
    );
    expect(Math.max(...table.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
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
