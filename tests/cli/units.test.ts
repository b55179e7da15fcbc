/**
 * The units that figures are told in: those of the text, or those that are asked for. Two shelves of 20 ft2 with two coats at
 * 100 ft2/qt and a tenth to spare take 2 × 20 × 2 / 100 × 1.1 = 0.88 qt, which are 0.946353 × 0.88 = 0.83 L; 40 ft2 are
 * 40 × 0.09290304 = 3.72 m2 (NIST Handbook 44, appendix C). 68 F are (68 - 32) / 1.8 = 20 C.
 */
import { describe, expect, test } from "vitest";
import type { UnitSystem } from "../../server/src/core/measure/shown-figures.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { Analysis } from "../../server/src/features/types.ts";
import { readSettings } from "../../server/src/lsp/settings.ts";
import { plan } from "../harness/planner.ts";
import { runCli } from "./run-cli.ts";

const TEXT = `material clear "Clear" {
  family waterborne polyurethane
  covers 100 ft2/qt
  recoat 2 h
  limits 50 F to 86 F
  packs  946 mL for 20.00
}

piece shelf "Shelf" {
  surface top {
    shape area 20 ft2
    wood  beech
    existing bare
  }
}

shop room "Room" {
  air   68 F, 50 % RH
  hours Mon to Fri 08:00 to 18:00
}

recipe coated "Coated" {
  for    wood
  safety dust_mask
  step   sand 120
  step   dust
  layer  clear x 2, by brush
  wait   until cured
}

job shelves "Shelves" {
  piece shelf x 2
  in    room
  start 2027-03-08 09:00
  apply coated to top
}
`;

const out = async (...argv: readonly string[]): Promise<string> =>
  (await runCli([argv[0]!, "a.finish", ...argv.slice(1)], { files: { "a.finish": TEXT } })).stdout;

describe("without a word, figures are told in the units of the text", () => {
  test("on the sheet", async () => {
    const sheet = await out("sheet");
    expect(sheet).toContain("2 × 20 ft2 = 40 ft2");
    expect(sheet).toContain("68 F and 50 % RH");
    expect(sheet).toContain("covers 100 ft2/qt");
    expect(sheet).toContain("put on at 50 F to 86 F");
    // A coat of both: 2 × 20 / 100 × 1.1.
    expect(sheet).toContain("0.44 qt");
    // Cans are what is sold.
    expect(sheet).toContain("1 × 946 mL");
    expect(sheet).not.toMatch(/\d (?:m2|L|C)\b/u);
  });

  test("in the reason why a cold room makes waits longer", async () => {
    // 56 F are 13.3 C, a difference of 10 C is one of 18 F.
    const cold = (family: string): Promise<string> =>
      runCli(["sheet", "a.finish"], {
        files: { "a.finish": TEXT.replace("68 F", "56 F").replace("waterborne polyurethane", family) },
      }).then(({ stdout }) => stdout.replace(/\s+/gu, " "));
    expect(await cold("waterborne polyurethane")).toMatch(/kPa at 56 F and 50 % RH/u);
    const oil = await cold("oil polyurethane");
    expect(oil).toContain("twice as slowly for every 18 F less: 56 F in the shop");
    expect(oil).not.toMatch(/\d C\b/u);
  });

  test("on the page of the sheet and in its drawing", async () => {
    const page = await out("sheet", "--format", "html");
    expect(page).toContain('<span class="takes">0.44\u00a0qt</span>');
    expect(page).toContain("coat 1 of 2, 0.44 qt");
    expect(page).toContain("40\u00a0ft²");
  });

  test("in totals and on the shopping list", async () => {
    const totals = await out("totals");
    expect(totals).toMatch(/together? |top +40 ft2/u);
    expect(totals).toMatch(/clear +0\.88 qt/u);
    expect(await out("shopping")).toMatch(/^clear +0\.88 qt/u);
  });
});

test("those that are asked for are told instead", async () => {
  const sheet = await out("sheet", "--units", "metric");
  expect(sheet).toContain("2 × 1.86 m2 = 3.72 m2");
  expect(sheet).toContain("20 C and 50 % RH");
  expect(await out("totals", "--units", "metric")).toMatch(/clear +0\.83 L/u);
  expect(await out("shopping", "--units", "metric")).toMatch(/^clear +0\.83 L/u);
  const metric = TEXT.replace("100 ft2/qt", "10 m2/L").replace("20 ft2", "2 m2").replace("68 F", "20 C");
  const { stdout } = await runCli(["totals", "b.finish", "--units", "us"], {
    files: { "b.finish": metric.replace("50 F to 86 F", "10 C to 30 C") },
  });
  // 4 m2 are 43.1 ft2.
  expect(stdout).toMatch(/top +43\.1 ft2/u);
});

test("the project file is asked before the text, and `--units` before the project file", async () => {
  const inProject = async (...argv: readonly string[]): Promise<string> =>
    (
      await runCli([argv[0]!, "a.finish", ...argv.slice(1)], {
        files: { "a.finish": TEXT, "finishwright.config.json": '{ "units": "metric" }' },
      })
    ).stdout;
  expect(await inProject("totals")).toMatch(/clear +0\.83 L/u);
  expect(await inProject("shopping")).toMatch(/^clear +0\.83 L/u);
  expect(await inProject("sheet")).toContain("20 C and 50 % RH");
  expect(await inProject("totals", "--units", "us")).toMatch(/clear +0\.88 qt/u);
});

test("jobs are compared in the units of the text, and in those that are asked for", async () => {
  const other = TEXT.replaceAll("job shelves", "job more").replace("x 2, by brush", "x 3, by brush");
  const compared = async (...argv: readonly string[]): Promise<string> =>
    (
      await runCli(["compare", "a.finish", "b.finish", ...argv], {
        files: { "a.finish": TEXT, "b.finish": other },
      })
    ).stdout;
  const text = await compared();
  // A third coat more: 1.32 qt are 0.44 qt more.
  expect(text).toMatch(/litres +0\.88 qt +1\.32 qt +\+0\.44 qt/u);
  expect(text).toMatch(/area +40 ft2 +40 ft2 +same/u);
  expect(text).toMatch(/clear +0\.88 qt +1\.32 qt +\+0\.44 qt/u);
  expect(await compared("--units", "metric")).toMatch(/litres +0\.83 L +1\.25 L +\+0\.42 L/u);
});

describe("in an editor", () => {
  const analysisOf = (units?: UnitSystem, project?: UnitSystem): Analysis => {
    const analyst = createAnalyst({
      resolve: (_, path) => path,
      plan,
      units: () => units,
      config: () => ({ rules: {}, ...(project ? { units: project } : {}) }),
    });
    analyst.setFile("a.finish", TEXT);
    return analyst.analysis();
  };
  const hover = (analysis: Analysis, word: string): string =>
    analysis.hover("a.finish", TEXT.indexOf(word))?.markdown ?? "";

  test("hovers, hints and the bench view tell figures as the text does", () => {
    const analysis = analysisOf();
    expect(hover(analysis, 'shelves "Shelves"')).toContain("area 40 ft2");
    expect(hover(analysis, 'shelves "Shelves"')).toContain("`clear` 0.88 qt");
    expect(hover(analysis, 'clear "Clear"')).toContain("100 ft2/qt");
    expect(hover(analysis, 'room "Room"')).toContain("air 68 F and 50 % RH");
    const whole = { start: 0, end: TEXT.length };
    const [hint] = analysis.inlayHints("a.finish", whole, ["litres"]);
    expect(hint?.parts[0]?.text).toContain("0.88 qt");
    const bench = analysis.bench("a.finish", "shelves");
    expect(bench?.materials[0]?.takes).toBe("0.88 qt");
    expect(bench?.surfaces[0]?.about).toContain("2 × 20 ft2 = 40 ft2");
    // A can is what is sold.
    expect(bench?.materials[0]?.cans).toEqual(["0.946 L"]);
  });

  test("a project's choice goes before the text, and a person's before the project", () => {
    expect(hover(analysisOf(undefined, "metric"), 'shelves "Shelves"')).toContain("`clear` 0.83 L");
    expect(hover(analysisOf("us", "metric"), 'shelves "Shelves"')).toContain("`clear` 0.88 qt");
    expect(analysisOf("metric").bench("a.finish", "shelves")?.materials[0]?.takes).toBe("0.83 L");
  });

  test("the setting leaves it to the project and the text, unless a person says otherwise", () => {
    expect(readSettings({}).settings.units).toBeUndefined();
    expect(readSettings({ figures: { units: "asWritten" } }).settings.units).toBeUndefined();
    expect(readSettings({ figures: { units: "us" } }).settings.units).toBe("us");
    expect(readSettings({ figures: { units: "imperial" } }).complaints).toEqual([
      'The setting finishwright.figures.units is "imperial", but takes one of: asWritten, metric, us.',
    ]);
  });
});

test("programs get litres and square metres whatever the text", async () => {
  const { jobs } = JSON.parse(await out("totals", "--format", "json", "--units", "us"));
  expect(jobs[0].area_m2).toBeCloseTo(3.716122, 6);
  expect(jobs[0].materials[0].litres).toBeCloseTo(0.832791, 6);
});
