/**
 * Recipes that unroll to thousands of steps or double at every `follow`: they end, they say what they cannot reckon, and
 * up to the limit nothing is lost. No test here is timed; without the limits most would never end.
 */
import { describe, expect, test } from "vitest";
import { gapsOf } from "../../../server/src/views/missing-inputs.ts";
import { analyse, findingsOf } from "../../harness/check-text.ts";
import { board, clear, job } from "../totals/job-text.ts";
import { assumedRunsOf } from "./run-of.ts";

const recipes = (count: number, lines: (name: (index: number) => string, index: number) => string): string =>
  Array.from(
    { length: count },
    (_, index) => `recipe r${index} {\n${lines((i) => `r${i}`, index)}\n}\n`,
  ).join("");

const resultOf = (text: string, apply: string) =>
  analyse({
    "test.finish": clear() + board() + text + job("board", "face").replace(/apply \w+/u, `apply ${apply}`),
  }).jobs("test.finish")[0]!;

describe("recipes in recipes", () => {
  test("ninety deep are reckoned", () => {
    const deep = recipes(90, (name, i) => (i === 0 ? "step dust, takes 1 h" : `follow ${name(i - 1)}`));
    expect(resultOf(deep, "r89").totals).toMatchObject({ hands_on_h: 1, elapsed_h: 1 });
  });

  test("a hundred and fifty deep are not, and that is said", () => {
    const deep = recipes(150, (name, i) => (i === 0 ? "step dust, takes 1 h" : `follow ${name(i - 1)}`));
    const result = resultOf(deep, "r149");
    expect(result.totals).toMatchObject({ elapsed_h: null, material_cost: null });
    expect(gapsOf(result, "finish")).toContain("a recipe with too many steps to calculate");
  });

  test("that double with every level and do nothing end", () => {
    const doubling = recipes(40, (name, i) =>
      i === 0 ? "for wood" : `follow ${name(i - 1)}\nfollow ${name(i - 1)}`,
    );
    const left = (name: string): readonly string[] =>
      resultOf(doubling, name).runs.flatMap(({ moments }) => moments.map(({ action }) => action.op));
    expect(left("r39")).toEqual(["open"]);
    // Ten levels are 1023 lines of `follow`, all of them gone through.
    expect(left("r10")).toEqual([]);
  });

  test("that double and do something are run for five hundred coats each, not for as many as may be", () => {
    const doubling = recipes(40, (name, i) =>
      i === 0 ? "layer clear" : `follow ${name(i - 1)}\nfollow ${name(i - 1)}`,
    );
    const runs = assumedRunsOf(clear() + doubling);
    // r0 to r8 are 1, 2, 4 … 256 coats, which is 511; each of the 31 above is 500 coats and the place where it is left.
    expect(runs.reduce((sum, { moments }) => sum + moments.length, 0)).toBe(511 + 31 * 501);
  });

  test("that all follow all end, and every one is told", () => {
    const all = recipes(14, (name) => Array.from({ length: 14 }, (_, i) => `follow ${name(i)}`).join("\n"));
    const cycles = findingsOf(all).filter(({ rule }) => rule === "follow-cycle");
    // Each recipe follows itself at least.
    expect(cycles.length).toBeGreaterThanOrEqual(14);
  });
});

describe("many steps", () => {
  test("five thousand are reckoned, one more is not", () => {
    const steps = (count: number) => `recipe long {\n${"step dust, takes 1 min\n".repeat(count)}}\n`;
    const { totals } = resultOf(steps(5000), "long");
    expect(totals.hands_on_h).toBeCloseTo(5000 / 60, 9);
    expect(totals.elapsed_h).toBeCloseTo(5000 / 60, 9);
    expect(resultOf(steps(5001), "long").totals.elapsed_h).toBeNull();
  });

  test("what is done between four hundred coats is reckoned", () => {
    const layer = "layer clear x 200, takes 1 min {\nstep dust, takes 1 min\n}\n";
    const { totals } = resultOf(
      `recipe once {\n${layer}}\nrecipe long {\nfollow once\nfollow once\n}\n`,
      "long",
    );
    // Twice 200 coats and the 199 dustings between them, a minute each: 798 min.
    expect(totals.hands_on_h).toBeCloseTo(798 / 60, 9);
    expect(totals.elapsed_h).toBeCloseTo(798 / 60, 9);
  });

  test("four hundred coats are all in the film and in the litres", () => {
    const { totals } = resultOf("recipe long {\nlayer clear x 200\nlayer clear x 200\n}\n", "long");
    // 1000 / 10 · 33 % = 33 um a coat; 2 m2 / 10 · 400 · 1.1 = 88 L
    expect(totals.surfaces[0]!.dry_film_um).toBeCloseTo(400 * 33, 6);
    expect(totals.materials[0]!.litres).toBeCloseTo(88, 9);
  });
});

describe("what was put on last", () => {
  const PUTTY = "material putty {\nfamily wood filler\nrecoat 4 h\nrated 21 C, 50 % RH\n}\n";
  const QUICK = clear("recoat 1 h", "rated 21 C, 50 % RH");

  test("is the filling where that came after the coat, though no time is stated between", () => {
    const text = (wait: string) =>
      `${QUICK}${PUTTY}recipe work {\nsafety dust_mask\nlayer clear\nstep fill with putty\n${wait}\nstep sand 220\nstep dust\nlayer clear\nwait until cured\n}\n`;
    const rules = (wait: string) => findingsOf(text(wait)).map(({ rule }) => rule);
    // 4 h from the filling, not 1 h from the coat.
    expect(rules("wait until recoat")).not.toContain("filler-not-dry");
    expect(rules("wait 1 h")).toContain("filler-not-dry");
  });
});
