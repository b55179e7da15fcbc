/** What the server answers about a file with a finding on every line costs its length, and not the square of it. */
import process from "node:process";
import { describe, expect, test } from "vitest";
import { SEVERITIES } from "../../server/src/core/findings.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { type Analysis, INLAY_HINT_KINDS } from "../../server/src/features/types.ts";
import { serverAnswers } from "../attack/edited-server.ts";
import { growth, MOST_GROWTH } from "../harness/growth.ts";

/** Seconds of the processor for all that an editor asks about one file. */
async function cpuSeconds(text: string): Promise<number> {
  const start = process.cpuUsage();
  await serverAnswers([new Map([["a.finish", text]])], 13);
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}

const unclosed = (recipes: number): string => `material m {\n  colour ${"recipe r {\n".repeat(recipes)}\n}\n`;

test("recipes that are never closed, each of them a finding that may be allowed", async () => {
  /** The least of three, since other threads of the process are counted as well. */
  const least = async (text: string): Promise<number> => {
    const measured: number[] = [];
    for (let turn = 0; turn < 3; turn += 1) measured.push(await cpuSeconds(text));
    return Math.min(...measured);
  };
  const [few, many] = [await least(unclosed(250)), await least(unclosed(1000))];
  // Four times the length; where every finding reads the text again, it is twelve times the work.
  expect(many / few).toBeLessThan(8);
});

describe("jobs that go through one recipe, each with a finding", () => {
  /** An analysis of so many jobs, whose findings and totals are known. */
  const analysed = (jobs: number): Analysis => {
    const pieces = Array.from(
      { length: jobs },
      (_, at) =>
        `piece p${at} {\n  surface s {\n    shape area 1 m2\n    wood pine\n  }\n}\njob j${at} {\n  piece p${at}\n  apply r to s, t\n}\n`,
    );
    const analyst = createAnalyst({ resolve: (_, path) => path });
    analyst.setFile("a.finish", `recipe r {\n  step dust\n  wait 1 h\n}\n${pieces.join("")}`);
    const analysis = analyst.analysis();
    expect(analysis.findings("a.finish").length).toBeGreaterThanOrEqual(jobs);
    return analysis;
  };
  // What is asked is worked out anew each time, what it is asked of need not be.
  const made = new Map<number, Analysis>();
  const make = (jobs: number): Analysis => {
    const known = made.get(jobs) ?? analysed(jobs);
    made.set(jobs, known);
    return known;
  };
  const sizes = { from: 250, to: 2000 };
  test("lenses", () => {
    const lenses = growth(make, (it) => it.jobLenses("a.finish", SEVERITIES), sizes);
    expect(lenses).toBeLessThanOrEqual(MOST_GROWTH);
  });
  test("what is next in each of them", () => {
    const next = growth(
      (jobs) => ({ analysis: make(jobs), lenses: make(jobs).jobLenses("a.finish", SEVERITIES) }),
      ({ analysis, lenses }) => lenses.map(({ span }) => analysis.nextToRecord("a.finish", span)),
      sizes,
    );
    expect(next).toBeLessThanOrEqual(MOST_GROWTH);
  });
  test("hints", () => {
    const whole = { start: 0, end: Number.MAX_SAFE_INTEGER };
    const hints = growth(make, (it) => it.inlayHints("a.finish", whole, INLAY_HINT_KINDS), sizes);
    expect(hints).toBeLessThanOrEqual(MOST_GROWTH);
  });
});

test("hints of a recipe of many layers, each of another material", () => {
  const times = (size: number, line: (at: number) => string): string =>
    Array.from({ length: size }, (_, at) => line(at)).join("");
  const made = new Map<number, Analysis>();
  const make = (size: number): Analysis => {
    const known = made.get(size);
    if (known) return known;
    const analyst = createAnalyst({ resolve: (_, path) => path });
    const materials = times(size, (at) => `material m${at} {\n  family acrylic paint\n}\n`);
    const recipe = `recipe r {\n${times(size, (at) => `  layer m${at}\n`)}}\n`;
    analyst.setFile(
      "a.finish",
      `${materials}${recipe}piece p {\n  surface top {\n    shape area 1 m2\n    wood oak\n  }\n}\njob j {\n  piece p\n  apply r to top\n}\n`,
    );
    const analysis = analyst.analysis();
    analysis.totals("a.finish");
    made.set(size, analysis);
    return analysis;
  };
  const whole = { start: 0, end: Number.MAX_SAFE_INTEGER };
  const hints = growth(make, (it) => it.inlayHints("a.finish", whole, INLAY_HINT_KINDS), {
    from: 500,
    to: 4000,
  });
  expect(hints).toBeLessThanOrEqual(MOST_GROWTH);
});
