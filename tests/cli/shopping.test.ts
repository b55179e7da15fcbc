/** `shopping`: what to buy over several jobs. */
import { describe, expect, test } from "vitest";
import { FILES, JOB } from "./bench.ts";
import { runCli } from "./run-cli.ts";

/** The recipe says `safety dust_mask`, and its coats go on with a brush where no line says by what. */
const ALSO = "\nAlso needed, by the lines of the recipes:\n  to put it on: brush\n  to wear: dust mask\n";

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
    const stock = FILES["stock.finish"].replace("  packs", "  on_hand 400 mL\n  packs");
    const { stdout } = await runCli(["shopping"], { files: { ...files, "stock.finish": stock } });
    // 0.88 − 0.4 = 0.48 L
    expect(stdout).toBe(
      "clear_coat  0.88 L  0.4 L on hand  1 × 0.5 L  10.00 EUR\ntogether                                      10.00 EUR\n" +
        ALSO,
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
      ].join("\n") + ALSO,
    );
    const markdown = await runCli(["shopping", "a.finish", "b.finish", "--format", "markdown"], {
      files: apart,
    });
    expect(markdown.stdout).toContain("Clear (`clear_coat`) (old/stock.finish), 10.00 EUR");
  });

  test("of no jobs adds nothing up, for people", async () => {
    const { status, stdout, stderr } = await runCli(["shopping", "stock.finish"], { files });
    expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
    expect(stderr).toContain("These files have no jobs to buy for.");
  });

  test("as CSV and as Markdown", async () => {
    expect((await runCli(["shopping", "--format", "csv"], { files })).stdout).toBe(
      "material,title,litres,on_hand,can_litres,count,price,cost,currency,jobs\r\nclear_coat,Clear,0.88,0,1,1,16.00,16.00,EUR,shelf_job again\r\n",
    );
    expect((await runCli(["shopping", "a.finish", "--format", "markdown"], { files })).stdout).toBe(
      "# Shopping list\n\n- [ ] 1 × 0.5 L Clear (`clear_coat`), 10.00 EUR, for `shelf_job`\n\nTogether 10.00 EUR.\n\nAlso needed, by the lines of the recipes:\n\n- [ ] brush\n- [ ] dust mask\n",
    );
  });

  test("says what it cannot know", async () => {
    const stock = FILES["stock.finish"].replace(/ {2}packs .*\n/u, "");
    const { stdout } = await runCli(["shopping", "a.finish"], { files: { ...files, "stock.finish": stock } });
    expect(stdout).toContain("no `packs` for `clear_coat`");
    expect(stdout).toContain("excluding items without a price");
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
      "- [ ] 0.44 L of Clear (`clear_coat`) (no `packs` for `clear_coat`), for `shelf_job`\n\nTogether 0.00 EUR, excluding items without a price.\n",
    );
  });

  describe("in shops of two currencies", () => {
    const abroad = {
      ...files,
      "stock.finish": FILES["stock.finish"].replace("  packs", "  on_hand 500 mL\n  packs"),
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
          "clear_coat  0.44 L  0.5 L on hand  nothing to buy",
          "together                                            0.00 EUR",
          "",
          "clear_coat  0.44 L  60 mL on hand  1 × 0.5 L       10.00 SEK",
          "together                                           10.00 SEK",
          "",
        ].join("\n") + ALSO,
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
    const stock = FILES["stock.finish"].replace("  packs", "  on_hand 500 mL\n  packs");
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
