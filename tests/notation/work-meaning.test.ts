/** What lines of work mean: the actions that they become, and the litres that they take. */
import { describe, expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";

const text = (lines: string, parameters = "", materials = ""): string => `
material clear {
  family precatalyzed lacquer
  covers 8 m2/L
  thin   lacquer thinner, up to 30 %
  packs  1 L for 10.00
${materials}}
piece chair {
  surface seat {
    shape area 1 m2
    wood  beech
  }
}
recipe work(${parameters}) {
  ${lines}
}
job one {
  piece chair x 2
  spare 0 %
  apply work to seat
}
`;

const runOf = (source: string) => analyse({ "a.finish": source }).jobs("a.finish")[0]!;
const actionsOf = (source: string) => runOf(source).runs[0]!.moments.map(({ action }) => action);

const litresOf = (source: string): number | null | undefined =>
  runOf(source).needs.find(({ material }) => material.name === "clear")?.totals.litres;

describe("work", () => {
  test("is done as often as it says, and left to act each time", () => {
    const actions = actionsOf(text("step strip with paint_stripper x 2, leave 30 min"));
    expect(actions.map((action) => [action.op, action.op === "wait" ? action.hours : undefined])).toEqual([
      ["step", undefined],
      ["wait", 0.5],
      ["step", undefined],
      ["wait", 0.5],
    ]);
  });

  test("is repeated as a parameter says", () => {
    const actions = actionsOf(text("step dust x times", "times: number = 3"));
    expect(actions.map(({ op }) => op)).toEqual(["step", "step", "step"]);
  });

  test("keeps what else is said of it", () => {
    const [action] = actionsOf(text('step dust "vacuum", "by the window"'));
    expect(action).toMatchObject({ op: "step", what: "vacuum, by the window" });
  });

  test("is noted above its first coat", () => {
    const actions = actionsOf(text('layer clear x 2, "a test patch"'));
    expect(actions.map((action) => (action.op === "note" ? action.text : action.op))).toEqual([
      "a test patch",
      "layer",
      "wait",
      "layer",
    ]);
  });
});

describe("coats", () => {
  test("are one fewer than the parameter", () => {
    const actions = actionsOf(text("layer clear x coats - 1, wet_on_wet 5 min", "coats: number = 3"));
    expect(actions.map(({ op }) => op)).toEqual(["layer", "wait", "layer"]);
  });

  test("lie on one another wet, and the second is no haste", () => {
    const wet = analyse({ "a.finish": text("layer clear x 2, wet_on_wet 20 min") });
    const rules = wet.findings("a.finish").map(({ rule }) => rule);
    expect(rules).not.toContain("recoat-too-early");
    const waited = analyse({ "a.finish": text("layer clear x 2, between wait 20 min") });
    expect(waited.findings("a.finish").map(({ rule }) => rule)).toContain("recoat-too-early");
  });

  test("are thinned with what the label names", () => {
    const layer = actionsOf(text("layer clear, by spray, thinned 5:1")).find(({ op }) => op === "layer");
    expect(layer).toMatchObject({ thinned: { a: 5, b: 1, thinner: { name: "lacquer_thinner" } } });
  });
});

describe("litres", () => {
  // 2 pieces · 1 m2 / 8 m2/L = 0.25 L on the piece.
  test("by the transfer that is stated: 0.25 L / 0.4", () => {
    expect(litresOf(text("layer clear, by spray, transfer 40 %"))).toBeCloseTo(0.625, 9);
  });

  test("by what is lost: 0.25 L / 0.75", () => {
    expect(litresOf(text("layer clear, by spray, loss 25 %"))).toBeCloseTo(0.25 / 0.75, 9);
  });

  test("of some of the pieces: 0.25 L · 1/2", () => {
    expect(litresOf(text("layer clear, only 1 of 2"))).toBeCloseTo(0.125, 9);
  });

  test("of two coats wet on wet: each is a coat of its own", () => {
    expect(litresOf(text("layer clear x 2, wet_on_wet 20 min"))).toBeCloseTo(0.5, 9);
  });
});
