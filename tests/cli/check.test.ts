/** `check`: paths, formats, exit status. */
import { readFileSync, symlinkSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { sarifProblems } from "../harness/sarif-schema.ts";
import { runCli } from "./run-cli.ts";

const CLEAN = "shop mill {\n}\n";
/** One error, at line 2, columns 10 to 13. */
const WRONG = "material a {\n  covers 3 h\n  family glaze\n}\n";
/** One hint and nothing worse. */
const HINT = 'use "clean.finish"\nshop other {\n}\n';

const places = (stdout: string): readonly string[] =>
  stdout.split("\n").filter((line) => /^\S+:\d+:\d+ \w+ [\w-]+$/u.test(line));
const parsed = (stdout: string) => JSON.parse(stdout) as readonly Record<string, unknown>[];

describe("exit status", () => {
  const files = { "clean.finish": CLEAN, "wrong.finish": WRONG, "hint.finish": HINT };
  test.each([
    [["check", "clean.finish"], 0],
    [["check", "wrong.finish"], 1],
    [["check", "hint.finish"], 0],
    [["check", "hint.finish", "--fail-on", "warning"], 0],
    [["check", "hint.finish", "--fail-on", "hint"], 1],
    [["check", "wrong.finish", "--fail-on=error"], 1],
    [["check", "none.finish"], 2],
    [["check", "none.finish", "wrong.finish"], 2],
    [["check", "--fail-on", "information"], 2],
    [["check", "--format", "xml"], 2],
    [["check", "--formt", "json"], 2],
    [["chek"], 2],
    [[], 2],
    [["--help"], 0],
    [["check", "--help"], 0],
    [["help", "check"], 0],
    [["--version"], 0],
  ])("%j ends with %i", async (argv, status) => {
    expect((await runCli(argv, { files })).status).toBe(status);
  });

  test("wrong use says what was meant, on stderr alone", async () => {
    const wrong = await runCli(["check", "--formt", "json"]);
    expect(wrong.stdout).toBe("");
    expect(wrong.stderr).toContain("finishwright: unknown option '--formt'\n(Did you mean --format?)");
    expect((await runCli(["chek"])).stderr).toContain("(Did you mean check?)");
    expect((await runCli(["check", "--format", "xml"])).stderr).toContain(
      "Allowed choices are text, lines, json, sarif, github, gitlab, junit.",
    );
    expect((await runCli(["--version"])).stdout).toBe("1.2.3\n");
    expect((await runCli(["--help"])).stdout).toContain("Exit status:\n  0  done, and nothing at or above");
    expect((await runCli([])).stderr).toContain("Usage: finishwright");
  });
});

describe("paths", () => {
  test("the current folder is searched, without node_modules and dot folders", async () => {
    const files = {
      "b.finish": CLEAN,
      "deep/er/wrong.finish": WRONG,
      "node_modules/x/wrong.finish": WRONG,
      ".cache/wrong.finish": WRONG,
      "notes.txt": "covers 3 h",
    };
    const outcome = await runCli(["check"], { files });
    expect(places(outcome.stdout)).toEqual(["deep/er/wrong.finish:2:10 error wrong-unit"]);
    expect(outcome.stdout).toMatch(/1 error in 2 files\.\nNo findings does not mean safe: .*\n$/u);
  });

  test("files are named as they are given, folders relative to where the command runs", async () => {
    const files = { "deep/wrong.finish": WRONG };
    expect(places((await runCli(["check", "./deep/wrong.finish"], { files })).stdout)).toEqual([
      "./deep/wrong.finish:2:10 error wrong-unit",
    ]);
    expect(places((await runCli(["check", "./deep/"], { files })).stdout)).toEqual([
      "deep/wrong.finish:2:10 error wrong-unit",
    ]);
    expect(places((await runCli(["check", "."], { files, cwd: "deep" })).stdout)).toEqual([
      "wrong.finish:2:10 error wrong-unit",
    ]);
    expect(places((await runCli(["check", "../deep"], { files, cwd: "deep" })).stdout)).toEqual([
      "wrong.finish:2:10 error wrong-unit",
    ]);
    const absolute = await runCli(["check", "<folder>/deep"], { files });
    expect(places(absolute.stdout)).toEqual([`${absolute.folder}/deep/wrong.finish:2:10 error wrong-unit`]);
  });

  test("a file is checked once, however often it is given", async () => {
    const files = { "deep/wrong.finish": WRONG };
    const outcome = await runCli(["check", "deep", "deep/wrong.finish", "**/*.finish"], { files });
    expect(places(outcome.stdout)).toHaveLength(1);
  });

  test("patterns are expanded, also where a file ends otherwise", async () => {
    const files = { "a/wrong.finish": WRONG, "b/wrong.finish": WRONG, "c/old.txt": WRONG };
    expect(places((await runCli(["check", "{a,c}/*"], { files })).stdout)).toEqual([
      "a/wrong.finish:2:10 error wrong-unit",
      "c/old.txt:2:10 error wrong-unit",
    ]);
    expect((await runCli(["check", "c/old.txt"], { files })).status).toBe(1);
  });

  test.each([
    ["a missing path", ["none.finish"], {}, "There is no `none.finish` (in <folder>). Expected a recipe"],
    ["an empty folder", ["."], {}, "No recipes in the folder `.` (in <folder>)"],
    ["a folder of other files", ["."], { "a.txt": "" }, "no file in it ends in `.finish`"],
    ["a pattern that matches nothing", ["x*.finish"], {}, "No file matches `x*.finish` (in <folder>)."],
    ["an empty path", [""], {}, "An empty path was given."],
    ["standard input beside a file", ["-", "a.finish"], {}, "`-` is standard input and stands alone"],
  ])("%s is named on stderr and ends with 2", async (_, argv, files, message) => {
    const outcome = await runCli(["check", ...argv], { files });
    expect(outcome.status).toBe(2);
    expect(outcome.stdout).toBe("");
    expect(outcome.stderr).toContain(`finishwright: `);
    expect(outcome.stderr).toContain(message.replace("<folder>", outcome.folder));
    expect(outcome.stderr).not.toContain("    at ");
  });

  test("what cannot be read is named, and the rest is checked all the same", async () => {
    const files = {
      "latin.finish": Uint8Array.of(0x23, 0x20, 0x61, 0x0a, 0x23, 0x20, 0xe9, 0x0a),
      "wide.finish": Uint8Array.of(0xff, 0xfe, 0x23, 0x00),
      "cut.finish": Uint8Array.of(0x23, 0xc3),
      "locked.finish": CLEAN,
      "wrong.finish": WRONG,
    };
    const outcome = await runCli(["check", "."], { files, forbidden: ["locked.finish"] });
    expect(outcome.status).toBe(2);
    expect(places(outcome.stdout)).toEqual(["wrong.finish:2:10 error wrong-unit"]);
    expect(outcome.stderr.split("\n").slice(0, -1)).toEqual([
      "finishwright: `cut.finish` is not UTF-8 text: it ends in the middle of a letter. Save it as UTF-8.",
      "finishwright: `latin.finish` is not UTF-8 text: byte E9 in line 2 is none. Save it as UTF-8.",
      "finishwright: `locked.finish` may not be read: you have no permission for it.",
      "finishwright: `wide.finish` is written in UTF-16; recipes are UTF-8. Save it as UTF-8.",
    ]);
    const json = await runCli(["check", ".", "--format", "json"], { files, forbidden: ["locked.finish"] });
    expect(json.status).toBe(2);
    expect(parsed(json.stdout)).toHaveLength(1);
  });
});

describe("links and closed folders", () => {
  const files = { "shop/clean.finish": CLEAN, "stock/wrong.finish": WRONG };

  test("a link to a recipe is a recipe; folders that links lead to are not gone into", async () => {
    const prepare = (folder: string): void => {
      symlinkSync("../stock/wrong.finish", path.join(folder, "shop", "linked.finish"));
      symlinkSync("..", path.join(folder, "shop", "up"));
      symlinkSync("../stock", path.join(folder, "shop", "stock.finish"));
    };
    const below = await runCli(["check", "shop", "--read-also", "stock"], { files, prepare });
    expect(places(below.stdout)).toEqual(["shop/linked.finish:2:10 error wrong-unit"]);
    expect(below).toMatchObject({ status: 1, stderr: "" });
    // Under its own name and under that of the link it is one file.
    expect(places((await runCli(["check", "."], { files, prepare })).stdout)).toHaveLength(1);
  });

  test("a link that leads nowhere is named as one, given or found", async () => {
    const prepare = (folder: string): void => {
      symlinkSync("none.finish", path.join(folder, "shop", "lost.finish"));
      symlinkSync("round.finish", path.join(folder, "shop", "round.finish"));
    };
    const found = await runCli(["check", "shop"], { files, prepare });
    expect(found.status).toBe(2);
    expect(found.stderr).toBe(
      ["lost", "round"]
        .map(
          (name) =>
            `finishwright: \`shop/${name}.finish\` is a broken link. Fix it, or give the target file.\n`,
        )
        .join(""),
    );
    const given = await runCli(["check", "shop/lost.finish"], { files, prepare });
    expect(given.status).toBe(2);
    expect(given.stderr).toContain("is a broken link.");
  });

  test("a folder below that may not be looked into is named, and the rest is checked all the same", async () => {
    const outcome = await runCli(["check"], { files, forbidden: ["shop"] });
    expect(outcome.status).toBe(2);
    expect(places(outcome.stdout)).toHaveLength(1);
    expect(outcome.stderr).toBe(
      "finishwright: The folder `shop` may not be read: you have no permission for it. Ask for the permission, or leave it out.\n",
    );
  });
});

describe("used files", () => {
  const files = { "main.finish": 'use "sub/wrong.finish"\n', "sub/wrong.finish": WRONG };

  test("are read for their meaning; their findings are printed only when they are asked for", async () => {
    expect((await runCli(["check", "main.finish"], { files })).status).toBe(0);
    expect((await runCli(["check", "main.finish", "sub"], { files })).status).toBe(1);
  });

  test("are named where something in them cannot be read, for people", async () => {
    const text = await runCli(["check", "main.finish"], { files });
    expect(text.stdout).toBe(
      "Nothing found in 1 file.\nNo findings does not mean safe: labels and safety data sheets come first.\n",
    );
    expect(text.stderr).toBe(
      "finishwright: `sub/wrong.finish` is used here and has an error of its own: see `finishwright check sub/wrong.finish`.\n",
    );
    expect((await runCli(["check", "main.finish", "--format", "json"], { files })).stderr).toBe("");
  });

  test("that cannot be read are findings on the `use` line, not problems of the run", async () => {
    const missing = await runCli(["check", "main.finish"], { files: { "main.finish": 'use "no.finish"\n' } });
    expect(missing.status).toBe(1);
    expect(places(missing.stdout)).toEqual(["main.finish:1:5 error use-not-found"]);
    const latin = { "main.finish": 'use "l.finish"\n', "l.finish": Uint8Array.of(0x23, 0xe9) };
    const broken = await runCli(["check", "main.finish"], { files: latin });
    expect(broken.status).toBe(1);
    expect(broken.stdout.replace(/\s+/gu, " ")).toContain("it is not UTF-8 text");
  });
});

describe("one finding a rule, line and job", () => {
  const TWO = "recipe r {\n  safety hat, wig\n}\n";

  test("holds for two unknown words of a line, for other programs", async () => {
    const files = { "a.finish": TWO };
    const { stdout } = await runCli(["check", "a.finish", "--format", "json"], { files });
    // `hat` is the first of the two: columns 10 to 13.
    expect(parsed(stdout)).toEqual([
      expect.objectContaining({ line: 2, column: 10, endColumn: 13, rule: "unknown-word" }),
    ]);
    expect(parsed(stdout)[0]?.message).toMatch(/`hat`.*`wig`/su);
    const sarif = await runCli(["check", "a.finish", "--format", "sarif"], { files });
    expect(JSON.parse(sarif.stdout).runs[0].results).toHaveLength(1);
  });

  test("people see every word marked", async () => {
    const { stdout } = await runCli(["check", "a.finish"], { files: { "a.finish": TWO } });
    expect(places(stdout)).toEqual(["a.finish:2:10 error unknown-word", "a.finish:2:15 error unknown-word"]);
  });

  test("two jobs that a rule speaks of on one line stay two", async () => {
    const job = (name: string) => `job ${name} {\n  piece shelf\n  apply stained to top\n}\n`;
    const text = `piece shelf {
  surface top {
    shape area 1 m2
    wood  pine
  }
}
recipe stained {
  safety ventilate, gloves, wet_rags, no_ignition
  layer  oil_stain, wiped off
  wait   until cured
  layer  oil_varnish
  wait   until cured
}
${job("one")}${job("two")}`;
    const { stdout } = await runCli(["check", "a.finish", "--format", "json"], {
      files: { "a.finish": text },
    });
    expect(parsed(stdout).map(({ line, rule }) => `${line} ${rule}`)).toEqual([
      "9 blotchy-stain",
      "9 blotchy-stain",
    ]);
  });
});

describe("json", () => {
  test("is one array with the fields of the language reference and no others", async () => {
    const files = { "wrong.finish": WRONG };
    const { stdout } = await runCli(["check", "wrong.finish", "--format", "json"], { files });
    const [finding, ...others] = parsed(stdout);
    expect(others).toEqual([]);
    expect(finding).toEqual({
      file: "wrong.finish",
      line: 2,
      column: 10,
      endLine: 2,
      endColumn: 13,
      rule: "wrong-unit",
      severity: "error",
      headline: expect.stringContaining("`covers` wants area per litre") as string,
      why: "",
      remedy:
        "If it is the time to the next coat, write `recoat 3 h`; until then a typical time counts. The coverage stands on the can.",
      where: null,
      message: expect.stringContaining("`covers` wants area per litre") as string,
      parts: [
        {
          rule: "wrong-unit",
          severity: "error",
          line: 2,
          column: 10,
          headline: expect.stringContaining("`covers` wants area per litre") as string,
        },
      ],
    });
    expect(Object.keys(finding!)).toEqual([
      "file",
      "line",
      "column",
      "endLine",
      "endColumn",
      "rule",
      "severity",
      "headline",
      "why",
      "remedy",
      "where",
      "message",
      "parts",
    ]);
    expect(
      (await runCli(["check", "a.finish", "--format", "json"], { files: { "a.finish": "" } })).stdout,
    ).toBe("[]\n");
    expect((await runCli(["check", "no.finish", "--format", "json"])).stdout).toBe("[]\n");
  });

  test("columns are UTF-16 units, lines end at LF, CRLF and CR, and a byte order mark counts for nothing", async () => {
    const at = async (text: string | Uint8Array) => {
      const outcome = await runCli(["check", "a.finish", "--format", "json"], {
        files: { "a.finish": text },
      });
      return parsed(outcome.stdout).map(({ line, column, endColumn }) => [line, column, endColumn]);
    };
    // The bee outside the basic plane is two units, the umlaut one.
    expect(await at('material a "🐝ü" { covers 3 h\n family glaze\n}')).not.toEqual([]);
    expect(await at("\uFEFFmaterial a {\n  covers 3 h\n  family glaze\n}\n")).toEqual([[2, 10, 13]]);
    expect(await at("material a {\r\n  covers 3 h\r\n  family glaze\r\n}\r\n")).toEqual([[2, 10, 13]]);
    expect(await at("material a {\r  covers 3 h\r  family glaze\r}\r")).toEqual([[2, 10, 13]]);
    expect(await at('use "🐝ü.finish" x\n')).toContainEqual([1, 5, 17]);
  });
});

describe("lines", () => {
  test("are one a finding, and none where there is none", async () => {
    const files = { "clean.finish": CLEAN, "wrong.finish": WRONG };
    const wrong = await runCli(["check", ".", "--format", "lines"], { files });
    expect(wrong.stdout).toMatch(/^wrong\.finish:2:10: error: [^\n]*`3 h`[^\n]* \[wrong-unit\]\n$/u);
    expect(wrong.status).toBe(1);
    expect((await runCli(["check", "clean.finish", "--format", "lines"], { files })).stdout).toBe("");
  });
});

describe("sarif", () => {
  interface Sarif {
    readonly version: string;
    readonly $schema: string;
    readonly runs: readonly {
      readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string }[] } };
      readonly columnKind: string;
      readonly results: readonly {
        readonly ruleId: string;
        readonly ruleIndex: number;
        readonly level: string;
        readonly message: { readonly text: string };
        readonly locations: readonly unknown[];
        readonly fixes?: readonly unknown[];
      }[];
    }[];
  }

  const logOf = async (files: Readonly<Record<string, string>>): Promise<Sarif> =>
    JSON.parse((await runCli(["check", ".", "--format", "sarif"], { files })).stdout);

  test("is what its schema asks for, with related places, fixes of two files, merged findings and none", async () => {
    const samples = new URL("../../samples/", import.meta.url);
    const texts = ["mistakes.finish", "stock.finish", "shop.finish"].map((name) => [
      name,
      readFileSync(new URL(name, samples), "utf8"),
    ]);
    const log = await logOf({ ...Object.fromEntries(texts), "a b/ä#%.finish": WRONG });
    const results = log.runs.flatMap((run) => run.results);
    expect(results.length).toBeGreaterThan(10);
    for (const part of ["relatedLocations", "fixes", "properties"])
      expect(
        results.some((result) => Object.hasOwn(result, part)),
        part,
      ).toBe(true);
    expect(sarifProblems(log)).toEqual([]);
    expect(sarifProblems(await logOf({ "clean.finish": CLEAN }))).toEqual([]);
  });

  test("what is no SARIF is not taken for it by that schema", async () => {
    const log = await logOf({ "wrong.finish": WRONG });
    const [run] = log.runs;
    const [result] = run!.results;
    const broken = [
      { ...log, version: "2.0.0" },
      { ...log, runs: [{ ...run, results: [{ ...result, level: "information" }] }] },
      { ...log, runs: [{ ...run, results: [{ ...result, message: {} }] }] },
      { ...log, runs: [{ ...run, results: [{ ...result, because: "wax" }] }] },
      { ...log, runs: [{ ...run, tool: {} }] },
      { version: "2.1.0" },
    ];
    for (const each of broken) expect(sarifProblems(each)).not.toEqual([]);
  });

  test("is version 2.1.0 with rules, levels, places and fixes", async () => {
    const files = { "my recipes/wrong.finish": `${WRONG}shop s {\n  crw 2\n}\n`, "clean.finish": CLEAN };
    const outcome = await runCli(["check", ".", "--format", "sarif"], { files });
    const log = JSON.parse(outcome.stdout) as Sarif;
    expect(log.version).toBe("2.1.0");
    expect(log.$schema).toMatch(/sarif-schema-2\.1\.0\.json$/u);
    const [run] = log.runs;
    const rules = run!.tool.driver.rules;
    expect(run!.columnKind).toBe("utf16CodeUnits");
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
    for (const result of run!.results) {
      expect(rules[result.ruleIndex]!.id).toBe(result.ruleId);
      expect(["error", "warning", "note", "none"]).toContain(result.level);
      expect(result.message.text).not.toBe("");
    }
    expect(run!.results[0]).toMatchObject({
      ruleId: "wrong-unit",
      level: "error",
      locations: [
        {
          physicalLocation: {
            artifactLocation: { uri: "my%20recipes/wrong.finish" },
            region: { startLine: 2, startColumn: 10, endLine: 2, endColumn: 13 },
          },
        },
      ],
    });
    expect(run!.results.find(({ ruleId }) => ruleId === "unknown-field")!.fixes).toEqual([
      {
        description: { text: "Change to `crew`" },
        artifactChanges: [
          {
            artifactLocation: { uri: "my%20recipes/wrong.finish" },
            replacements: [
              {
                deletedRegion: { startLine: 6, startColumn: 3, endLine: 6, endColumn: 6 },
                insertedContent: { text: "crew" },
              },
            ],
          },
        ],
      },
    ]);
  });
});

describe("text", () => {
  test("says once how to allow what a rule of the trade finds, and never for the text itself", async () => {
    const RUSHED = "recipe rushed {\n  for   wood\n  layer drying_oil, wiped off\n  wait  until cured\n}\n";
    const trade = await runCli(["check", "rushed.finish"], {
      files: { "rushed.finish": RUSHED + RUSHED.replace("rushed", "again") },
    });
    expect(trade.stdout.match(/# allow RULE: reason/gu)).toHaveLength(1);
    const language = await runCli(["check", "wrong.finish"], { files: { "wrong.finish": WRONG } });
    expect(language.stdout).not.toContain("# allow");
  });

  test("shows where, what, the line with its fault marked, and a count", async () => {
    const { stdout } = await runCli(["check", "wrong.finish"], { files: { "wrong.finish": WRONG } });
    expect(stdout.split("\n")[0]).toBe("wrong.finish:2:10 error wrong-unit");
    expect(stdout).toMatch(/\n\n1 error in 1 file\.\nNo findings does not mean safe:/u);
    expect(stdout).toContain("  2 |   covers 3 h\n    |          ^^^\n");
    expect(stdout.split("\n").every((line) => line.length <= 80)).toBe(true);
  });

  test("names all rules of a finding, on more lines where they do not fit on one", async () => {
    const text =
      "recipe oiled {\n  for    wood\n  step   sand 120\n  step   dust\n  layer  oil_varnish, wiped off\n}\n";
    const { stdout } = await runCli(["check", "a.finish"], { files: { "a.finish": text } });
    expect(stdout).toContain(
      "a.finish:5:3 error rags-not-wetted, no-dust-mask, flames-not-kept-away,\n    no-gloves, no-ventilation\n",
    );
    expect(stdout.split("\n").every((line) => line.length <= 80)).toBe(true);
  });

  test("marks stand under tabs and wide letters", async () => {
    const text = 'material a "木" {\n\tcovers\t3 h\n\tfamily glaze\n}\nuse "木目.finish"\n';
    const { stdout } = await runCli(["check", "a.finish"], { files: { "a.finish": text } });
    // Tab stops of four: `covers` begins in column 4, its value in column 12.
    expect(stdout).toContain(`  2 |     covers  3 h\n    |             ^^^\n`);
    // Each of the two signs takes two columns, and so do the quotes and letters one each: 1 + 4 + 7 + 1.
    expect(stdout).toContain(`  5 | use "木目.finish"\n    |     ^^^^^^^^^^^^^\n`);
  });

  test("a long line is shown around its fault", async () => {
    const words = Array.from({ length: 60 }, (_, i) => `duty${i}`).join(", ");
    const { stdout } = await runCli(["check", "a.finish"], {
      files: { "a.finish": `recipe r {\n  safety ${words}\n  step dust\n}\n` },
    });
    expect(stdout.split("\n").every((line) => line.length <= 80)).toBe(true);
    expect(stdout).toMatch(/\| ….*duty59\n\s+\|\s+\^{6}\n/u);
  });

  test("control characters never reach the terminal", async () => {
    const { stdout } = await runCli(["check", "a.finish"], {
      files: { "a.finish": 'use "\u001b[2Jx\u202e.finish"\n' },
    });
    expect(stdout).not.toContain("\u001b");
    expect(stdout).not.toContain("\u202e");
    expect(stdout).toContain("␛[2Jx");
  });

  test("is coloured on a terminal only, and as NO_COLOR and FORCE_COLOR say", async () => {
    const files = { "wrong.finish": WRONG };
    const isColoured = async (input: { readonly isTTY?: boolean; readonly env?: Record<string, string> }) =>
      (await runCli(["check", "wrong.finish"], { files, ...input })).stdout.includes("\u001b[");
    expect(await isColoured({})).toBe(false);
    expect(await isColoured({ isTTY: true })).toBe(true);
    expect(await isColoured({ isTTY: true, env: { NO_COLOR: "1" } })).toBe(false);
    expect(await isColoured({ isTTY: true, env: { TERM: "dumb" } })).toBe(false);
    expect(await isColoured({ env: { FORCE_COLOR: "1" } })).toBe(true);
    expect(await isColoured({ env: { FORCE_COLOR: "1", NO_COLOR: "1" } })).toBe(false);
    expect(await isColoured({ isTTY: true, env: { FORCE_COLOR: "0" } })).toBe(false);
  });

  test("half-typed text is checked like any other", async () => {
    const { status, stdout, stderr } = await runCli(["check", "a.finish"], {
      files: { "a.finish": "recipe r(\n  step san\nmaterial {\n" },
    });
    expect(status).toBe(1);
    expect(stdout).toContain("error syntax");
    expect(stderr).toBe("");
  });
});

describe("configuration", () => {
  const files = {
    "finishwright.config.json": '{ "rules": { "wrong-unit": "hint" } }',
    "deep/wrong.finish": WRONG,
    "own/finishwright.config.json": '{ "rules": { "wrong-unit": "off" } }',
    "own/wrong.finish": WRONG,
  };

  test("is the nearest one above each file", async () => {
    const outcome = await runCli(["check", "--fail-on", "warning"], { files });
    expect(outcome.status).toBe(0);
    expect(places(outcome.stdout)).toEqual(["deep/wrong.finish:2:10 hint wrong-unit"]);
  });

  test("with a mistake is named once and ends with 2", async () => {
    const outcome = await runCli(["check", "deep"], {
      files: {
        ...files,
        "finishwright.config.json": '{ "rules": { "wrong-unt": "off" } }',
        "deep/b.finish": "",
      },
    });
    expect(outcome.status).toBe(2);
    expect(outcome.stderr).toBe(
      "finishwright: `finishwright.config.json`: There is no rule `wrong-unt`. Did you mean `wrong-unit`?\n",
    );
  });
});
