/** `find`: which recipes, jobs, pieces and surfaces are what is looked for. Expected matches are read off the files by hand. */
import { describe, expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { displayWidth } from "../../server/src/reports/display-text.ts";
import { findIn } from "../../server/src/views/find/find.ts";
import { growth, MOST_GROWTH } from "../harness/growth.ts";
import { plan } from "../harness/planner.ts";
import { runCli } from "./run-cli.ts";

const STOCK = `material flat_clear "Flat clear" {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h
  cure 1 day
  sheen flat
  packs 1 L for 16.00
}
material wax "Reading room wax" {
  family paste wax
}
shop mill_room "The mill" {
  hours Mon to Fri 09:00 to 17:00
  labour 20.00 per h
  currency EUR
}
recipe clear_it(coat: material = flat_clear) {
  step dust, takes 30 min
  layer coat x 2, takes 15 min
}
`;
const TABLES = `use "stock.finish"

piece table "Reading table" {
  meant_for children
  surface top "The top" {
    shape panel 2 m x 1 m
    wood red oak
    wear hard
    note "rings of cups"
  }
  surface base {
    shape area 1 m2
    wood beech
  }
}
job tables "Tables of the hall" {
  piece table
  in mill_room
  start 2027-03-08 09:00
  apply clear_it to top
}
`;
const SHELF = `use "stock.finish"

piece shelf {
  surface board {
    shape area 1 m2
    wood white oak
  }
}
recipe glossy {
  layer flat_clear, gloss
}
recipe spare "Left over" {
  layer wax
}
job shelves {
  piece shelf
  in mill_room
  apply glossy to board
}
`;
const files = {
  "stock.finish": STOCK,
  "a/tables.finish": TABLES.replace("stock", "../stock"),
  "shelf.finish": SHELF,
};

interface Match {
  readonly kind: string;
  readonly file: string;
  readonly line: number;
  readonly name: string;
}

async function found(...options: readonly string[]): Promise<readonly string[]> {
  const { stdout } = await runCli(["find", ...options, "--format", "json"], { files });
  const { found: all } = JSON.parse(stdout) as { readonly found: readonly Match[] };
  return all.map(({ kind, file, line, name }) => `${file}:${line} ${kind} ${name}`);
}

const TOP = [
  "a/tables.finish:3 piece table",
  "a/tables.finish:5 surface top",
  "a/tables.finish:16 job tables",
];
const RECIPE = "stock.finish:17 recipe clear_it";

describe("find", () => {
  test("what did I use on oak with a flat clear", async () => {
    expect(await found("--wood", "oak", "--sheen", "flat", "--family", "clear")).toEqual([...TOP, RECIPE]);
    const said = ["--sheen", "dead matt", "--family", "water-based poly", "--wood", "Red  Oak"];
    expect(await found(...said)).toEqual([...TOP, RECIPE]);
  });

  test("a line says which sheen its coat has", async () => {
    const names = await found("--wood", "oak", "--sheen", "high gloss");
    expect(names).toEqual([
      "shelf.finish:3 piece shelf",
      "shelf.finish:4 surface board",
      "shelf.finish:9 recipe glossy",
      "shelf.finish:15 job shelves",
    ]);
  });

  test("all that is asked for holds on one surface", async () => {
    expect(await found("--wood", "beech")).toEqual([
      "a/tables.finish:3 piece table",
      "a/tables.finish:11 surface base",
    ]);
    expect(await found("--wood", "beech", "--sheen", "flat")).toEqual([]);
    expect(await found("--wood", "beech", "--wear", "hard")).toEqual([]);
    expect(await found("--wood", "red oak", "--wear", "daily", "--for", "kids")).toEqual([...TOP, RECIPE]);
  });

  test("shop, material and words", async () => {
    expect(await found("--shop", "mill", "--for", "children")).toEqual([...TOP, RECIPE]);
    expect(await found("--shop", "mill_room", "--text", "RINGS", "--text", "hall")).toEqual([...TOP, RECIPE]);
    expect(await found("--material", "flat clear", "--kind", "job")).toEqual([
      TOP[2],
      "shelf.finish:15 job shelves",
    ]);
    expect(await found("--material", "reading room")).toEqual(["shelf.finish:12 recipe spare"]);
    expect(await found("--text", "wax")).toEqual(["shelf.finish:12 recipe spare"]);
  });

  test("hours, days and cost are those of the job, to the bound itself", async () => {
    // 30 min and twice 15 min are 1 h; 2 m2 x 2 coats / 10 m2/L are 0.4 L, and more with what stays in the brush: one
    // can of 16.00 and an hour of 20.00.
    const hall = ["--kind", "job", "--text", "hall"];
    expect(await found(...hall, "--hours-at-most", "1", "--cost-at-most", "36")).toEqual([TOP[2]]);
    expect(await found(...hall, "--hours-at-most", "0.99")).toEqual([]);
    expect(await found(...hall, "--cost-at-most", "35.99")).toEqual([]);
    expect(await found(...hall, "--days-at-most", "1")).toEqual([TOP[2]]);
    expect(await found(...hall, "--days-at-most", "0.04")).toEqual([]);
    // The shelves state no time of their own: what is not known is no match.
    expect(await found("--hours-at-most", "0.01", "--text", "shelves")).toEqual([]);
  });

  test("a wood that was mistyped is asked back", async () => {
    const said = async (wood: string) => (await runCli(["find", "--wood", wood], { files })).stderr;
    expect(await said("okk")).toContain("no wood is called `okk`. Did you mean `oak`?");
    expect(await said("ebony")).toContain("Ask for less, or in other words.");
  });

  test("tells one match a line, at most 80 columns", async () => {
    const { status, stdout, stderr } = await runCli(["find", "--wood", "oak", "--sheen", "flat"], { files });
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toBe(`a/tables.finish:3  piece Reading table: red oak, dead flat, in tables
a/tables.finish:5  surface The top: red oak, dead flat, in tables
a/tables.finish:16
  job Tables of the hall: red oak, dead flat  1 h, 36.00 EUR, Mon 8 Mar 2027
stock.finish:17  recipe clear it: red oak, dead flat, in tables
`);
    const long = {
      ...files,
      "a/tables.finish": files["a/tables.finish"].replace("Tables of", `Tables ${"of ".repeat(60)}`),
    };
    const cut = await runCli(["find", "--wood", "oak"], { files: long });
    for (const line of cut.stdout.split("\n")) expect(displayWidth(line)).toBeLessThanOrEqual(80);
    expect(cut.stdout).toContain("…");
  });

  test("ends with 1 where nothing is found and 2 on wrong use", async () => {
    const none = await runCli(["find", "--wood", "walnut"], { files });
    expect(none.status).toBe(1);
    expect(none.stdout).toBe("");
    const wrong: readonly (readonly [readonly string[], string])[] = [
      [[], "Say what you look for"],
      [["--kind", "job"], "Say what you look for"],
      [["--sheen", "shiny"], "is not a sheen. Write `dead flat`"],
      [["--family", "waterborne polyurethan"], "Did you mean `waterborne polyurethane`?"],
      [["--wear", "strong"], "is not a degree of wear"],
      [["--for", "cats"], "is not a kind of user"],
      [["--wood", "softwood"], "may be several woods"],
      [["--hours-at-most", "ten"], "Write a number"],
      [["--kind", "shop"], "recipe, job, piece, surface"],
      [["--text", " "], "at least a letter"],
      [["--wood", "oak", "--overwrite"], "`--overwrite` goes with `-o FILE`"],
      [["--wood", "oak", "-o", "shelf.finish"], "is a recipe"],
      [["--wood", "oak", "none.finish"], "none.finish"],
    ];
    for (const [options, message] of wrong) {
      const { status, stderr } = await runCli(["find", ...options], { files });
      expect(stderr.replace(/\s+/gu, " ")).toContain(message);
      expect(status).toBe(2);
    }
  });

  test("writes a new file, and over none that somebody may want", async () => {
    const argv = ["find", "--wood", "beech", "-o", "found.txt"];
    const kept = await runCli(argv, { files: { ...files, "found.txt": "mine" } });
    expect(kept.status).toBe(2);
    expect(kept.stderr).toContain("already exists, so it was not changed");
    for (const [more, before] of [
      [[], ""],
      [["--overwrite"], "mine"],
    ] as const) {
      const { status, stdout } = await runCli([...argv, ...more], {
        files: { ...files, "found.txt": before },
      });
      expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
    }
  });

  test("a file of many jobs costs in proportion", () => {
    const many = (size: number): string =>
      `${STOCK}piece p {\n  surface s {\n    shape area 1 m2\n    wood oak\n  }\n}\n${Array.from(
        { length: size },
        (_, index) => `job j${index} {\n  piece p\n  apply clear_it to s\n}\n`,
      ).join("")}`;
    const analysed = (size: number) => {
      const analyst = createAnalyst({ plan, resolve: (_, used) => used });
      analyst.setFile("a.finish", many(size));
      const analysis = analyst.analysis();
      analysis.jobs("a.finish");
      return analysis;
    };
    const query = { wood: "oak", texts: ["dust"], sheen: "dead flat", materials: ["clear"] };
    expect(findIn(analysed(500), ["a.finish"], query).length).toBe(503);
    const work = (analysis: ReturnType<typeof analysed>) => findIn(analysis, ["a.finish"], query);
    expect(growth(analysed, work, { from: 250, to: 2000 })).toBeLessThan(MOST_GROWTH);
  });
});
