/**
 * Jobs that start from what others left, in long chains and in rings, and statements and notes over thousands of lines:
 * checking them takes little more than in proportion. Measured as exponents (see `growth.ts`), never as seconds.
 */
import { describe, expect, test } from "vitest";
import { isSameData } from "../../server/src/core/same-data.ts";
import { shareOf } from "../../server/src/core/schedule/shop/job-share.ts";
import type { Schedule } from "../../server/src/core/schedule/types.ts";
import { habitOf, unitsForAll } from "../../server/src/core/units-told.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { sheetReport } from "../../server/src/reports/sheet-report.ts";
import { sectionOf } from "../../server/src/views/section/section.ts";
import { analyseAnew as analyse } from "../harness/check-text.ts";
import { growth, MOST_GROWTH } from "../harness/growth.ts";

const times = (size: number, unit: (index: number) => string): string =>
  Array.from({ length: size }, (_, index) => unit(index)).join("");

const surface = (name: string, more = ""): string =>
  `  surface ${name} {\n    shape area 1 m2\n    wood pine\n${more}  }\n`;
const piece = (name: string, surfaces: string): string => `piece ${name} {\n${surfaces}}\n`;
const job = (name: string, of: string, applied: string, more = ""): string =>
  `job ${name} {\n  piece ${of}\n${more}  apply ${applied}\n}\n`;
const leftBy = (index: number): string => (index > 0 ? `    existing as left by j${index - 1}\n` : "");
const after = (index: number): string => (index > 0 ? `  after j${index - 1}\n` : "");

const dust = (name: string): string => `recipe ${name} {\n  step dust\n}\n`;
const COAT =
  "material m {\n  family waterborne polyurethane\n  covers 10 m2/L\n  recoat 2 h to 24 h\n}\nrecipe r {\n  layer m\n  wait until recoat\n}\n";
const TABLE = piece("p", surface("s"));

const afterAnother = (size: number): string =>
  `${dust("r")}${TABLE}${times(size, (i) => job(`j${i}`, "p", "r to s", after(i)))}`;
const inRing = (size: number): string =>
  `${dust("r")}${TABLE}${times(size, (i) => job(`j${i}`, "p", "r to s", `  after j${(i + 1) % size}\n`))}`;
const onOwnSurfaces = (size: number): string =>
  `${piece(
    "p",
    times(size, (i) => surface(`s${i}`)),
  )}${times(size, (i) => `${dust(`r${i}`)}${job(`j${i}`, "p", `r${i} to s${i}`, after(i))}`)}`;
const asLeft = (recipe: string) => (size: number) =>
  `${recipe}${times(size, (i) => `${piece(`p${i}`, surface("s", leftBy(i)))}${job(`j${i}`, `p${i}`, "r to s")}`)}`;
const asLeftUntouched = (size: number): string =>
  `${dust("r")}${times(
    size,
    (i) =>
      `${piece(`p${i}`, `${surface("s", leftBy(i))}${surface("t")}`)}${job(`j${i}`, `p${i}`, "r to t")}${job(`k${i}`, `p${i}`, "r to s")}`,
  )}`;

const check = (text: string) => analyse({ "a.finish": text }).findings("a.finish");

describe("jobs", () => {
  const texts: readonly [string, (size: number) => string][] = [
    ["after one another", afterAnother],
    ["after themselves", inRing],
    ["after one another, each on a surface of its own", onOwnSurfaces],
    ["on pieces as other jobs left them", asLeft(dust("r"))],
    ["on pieces as other jobs left them, with a coat each", asLeft(COAT)],
    ["on pieces that other jobs left alone", asLeftUntouched],
  ];
  test.each(texts)("%s", (_, make) => {
    expect(growth(make, check, { from: 64, to: 1024 })).toBeLessThan(MOST_GROWTH);
  });

  test("of one shop get their parts of its plan without going through each other", () => {
    const plan = (jobs: number, hours: number): Schedule => ({
      status: "planned",
      startAt: "2027-03-08T09:00",
      elapsedHours: jobs,
      lowerBound: jobs,
      exact: true,
      gap: 0,
      conflicts: [],
      items: Array.from({ length: jobs }, (_, at) => ({
        ...{ id: `j${at}/top:0`, chain: `j${at}/top`, start: at, end: at + hours },
        ...{ slack: 0, critical: true, pauses: [] },
      })),
      sessions: Array.from({ length: jobs }, (_, at) => ({
        ...{ kind: "sand", start: at, end: at + hours, hours, fixed: 0, person: 0, items: [`j${at}/top:0`] },
      })),
    });
    // Each begins when it may: nobody waits for another.
    const shop = (jobs: number) => {
      const members = Array.from({ length: jobs }, (_, at) => {
        const day = new Date(Date.UTC(2027, 2, 8, 9 + at)).toISOString().slice(0, 16);
        const alone: Schedule = { ...plan(0, 0), startAt: day, lastWorkHours: 1 };
        return { key: `job_${at}`, name: `job_${at}`, input: { chains: [] }, alone, after: [] };
      });
      return { members, before: plan(jobs, 1), now: plan(jobs, 1) };
    };
    const sharesOf = ({ members, before, now }: ReturnType<typeof shop>) => {
      // The plan is a new one each time, as it is when it comes from the planner.
      const [a, b, list] = [{ ...before }, { ...now }, [...members]];
      return list.map((_, place) => isSameData(shareOf(a, list, place), shareOf(b, list, place)));
    };
    expect(sharesOf(shop(3))).toEqual([true, true, true]);
    expect(growth(shop, sharesOf, { from: 256, to: 4096 })).toBeLessThan(MOST_GROWTH);
  });

  test("after one another are not gone through from each of them when a line is typed elsewhere", () => {
    const opened = (size: number) => {
      const [text, analyst] = [afterAnother(size), createAnalyst({ resolve: (_, path) => path })];
      analyst.setFile("a.finish", text);
      analyst.analysis().findings("a.finish");
      return { text, analyst };
    };
    const edit = ({ text, analyst }: ReturnType<typeof opened>) => {
      analyst.setFile("a.finish", `${text}# seen\n`);
      return analyst.analysis().findings("a.finish");
    };
    expect(growth(opened, edit, { from: 256, to: 1024 })).toBeLessThan(MOST_GROWTH);
  });

  test("with many pieces have a sheet whose lines look no piece up among all", () => {
    const worked = (size: number) => {
      const coated = `${COAT.replace("  recoat", "  sold 1 L for 20.00\n  recoat")}${times(size, (i) => piece(`p${i}`, surface("s")))}`;
      const pieces = times(size, (i) => `  piece p${i}\n`);
      const analyst = createAnalyst({ resolve: (_, path) => path });
      analyst.setFile("a.finish", `${coated}job j {\n${pieces}  apply r to s\n}\n`);
      const analysis = analyst.analysis();
      analysis.totals("a.finish");
      return analysis;
    };
    const made = growth(worked, (analysis) => analysis.sheets("a.finish"), { from: 2048, to: 2048 });
    expect(made).toBeLessThan(MOST_GROWTH);
  });

  test("find out once in what units their file is written", () => {
    const programs = (size: number) => ({
      size,
      program: analyse({
        "a.finish": `${dust("r")}${TABLE}${times(size, (i) => job(`j${i}`, "p", "r to s"))}`,
      }).program,
    });
    const work = ({ size, program }: ReturnType<typeof programs>) =>
      unitsForAll(
        (file) => habitOf(program, file),
        Array.from({ length: size }, () => "a.finish"),
      );
    expect(growth(programs, work, { from: 250, to: 2000 })).toBeLessThan(MOST_GROWTH);
  });

  test("on a surface with hundreds of old coats are drawn by looking at each coat a few times", () => {
    const looksPerCoat = (size: number): number => {
      const coats = surface("s", `    existing ${times(size, () => "alkyd paint, ")}paste wax\n`);
      const text = `${dust("r")}${piece("p", coats)}${job("j", "p", "r to s")}`;
      const run = analyse({ "a.finish": text }).jobs("a.finish")[0]!.runs[0]!;
      let looks = 0;
      const layers = new Proxy(run.final.layers, {
        get(target, key) {
          looks += 1;
          return Reflect.get(target, key);
        },
      });
      const { old } = sectionOf({ ...run, final: { ...run.final, layers } }, "s");
      expect(old.reduce((sum, { count }) => sum + count, 0)).toBe(size + 1);
      return looks / size;
    };
    expect(looksPerCoat(1000)).toBeLessThan(10);
  });

  test("in a chain of fifteen hundred are all worked out", () => {
    for (const text of [afterAnother(1500), asLeft(dust("r"))(1500), asLeftUntouched(1500)]) {
      const analysis = analyse({ "a.finish": text });
      expect(analysis.findings("a.finish").filter(({ rule }) => rule === "internal-error")).toEqual([]);
      expect(analysis.jobs("a.finish").length).toBeGreaterThanOrEqual(1500);
    }
  });

  test("the last of a chain has the coats of all", () => {
    const last = analyse({ "a.finish": asLeft(COAT)(60) })
      .jobs("a.finish")
      .at(-1);
    expect(last!.runs[0]!.final.layers.length).toBe(60);
  });

  test("in a ring are named, each of them", () => {
    const rings = check(inRing(200)).filter(({ rule }) => rule === "follow-cycle");
    expect(rings.length).toBe(200);
  });

  test("that lead to a ring are not in it", () => {
    const text = `${inRing(2)}${job("k", "p", "r to s", "  after j0\n")}`;
    const rings = check(text).filter(({ rule }) => rule === "follow-cycle");
    expect(rings.map(({ message }) => /`(\w+)` would/.exec(message)?.[1])).toEqual(["j0", "j1"]);
  });
});

describe("one recipe", () => {
  test("of thousands of notes", () => {
    const make = (size: number): string =>
      `recipe r {\n${times(size, () => '  note "mind the grain"\n')}  step sand 80\n}\n${TABLE}${job("j", "p", "r to s")}`;
    expect(growth(make, check, { from: 256, to: 8192 })).toBeLessThan(MOST_GROWTH);
  });

  test("with a statement over thousands of lines", () => {
    const make = (size: number): string =>
      `# allow no-dust-mask: tried\nrecipe r {\n  step sand 80${times(size, () => ",\n 80")}\n}\n`;
    expect(growth(make, check, { from: 512, to: 16_384 })).toBeLessThan(MOST_GROWTH);
  });
});

test("a sheet lists the gravest findings, and counts the others", () => {
  // Each of two hundred recipes is cut off where so many have followed each other, and draws on a hundred that are.
  const text = `${times(300, (i) => `recipe r${i} {\n  follow r${i + 1}\n}\n`)}${dust("r300")}`;
  const analysis = analyse({ "a.finish": text });
  const [first] = analysis.sheets("a.finish");
  expect(first!.findings.length).toBeGreaterThan(51);
  const sheet = sheetReport(analysis, [first!], "text", (file) => file).replace(/\s*!*\s+/g, " ");
  expect(sheet).toContain(` ${first!.findings.length - 20} more findings are not listed here.`);
  expect(sheet).toContain(" 20. error");
  expect(sheet).not.toContain(" 21. error");
});

describe("recipes given to each other", () => {
  const text = (size: number): string =>
    times(
      size,
      (i) =>
        `recipe r${i}(a: recipe, b: recipe) {\n  follow a(a: b, b: a)\n  follow b(a: a, b: b)\n}\nrecipe t${i} {\n  follow r${i}(a: r${i}, b: r${(i + 1) % size})\n}\n`,
    );

  test("may mean so much that it is cut off", () => {
    const make = (size: number) => analyse({ "a.finish": text(size) });
    const work = (analysis: ReturnType<typeof make>) => analysis.semanticTokens("a.finish", "all");
    expect(growth(make, work, { from: 64, to: 256 })).toBeLessThan(MOST_GROWTH);
  });

  test("are renamed only where all is known that a name may mean", () => {
    const few = analyse({ "a.finish": text(3) });
    const many = analyse({ "a.finish": text(200) });
    const at = "recipe ".length;
    expect(few.rename("a.finish", at, "other")).toHaveProperty("edits");
    expect(many.rename("a.finish", at, "other")).toEqual({
      refusal: expect.stringContaining("nothing can be renamed"),
    });
  });
});
