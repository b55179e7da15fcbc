/** What lines of work mean: the actions that they become, and the litres that they take. */
import { describe, expect, test } from "vitest";
import type { Material } from "../../server/src/core/model/model.ts";
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

describe("buffing", () => {
  const buffed = actionsOf(text("layer clear x 2, buffed after 20 min"));

  test("follows each coat, before what is done between the coats", () => {
    expect(
      buffed.map((action) =>
        action.op === "wait"
          ? (action.hours ?? action.until)
          : action.op === "step"
            ? action.verb
            : action.op,
      ),
    ).toEqual(["layer", 20 / 60, "buff", "recoat", "layer", 20 / 60, "buff"]);
  });

  test("is judged as if it stood on lines of its own", () => {
    const rulesOf = (lines: string) =>
      analyse({ "a.finish": text(lines) })
        .findings("a.finish")
        .map(({ rule, severity }) => `${severity} ${rule}`)
        .sort();
    expect(rulesOf("layer clear, buffed after 20 min")).toEqual(
      rulesOf("layer clear\n  wait 20 min\n  step buff"),
    );
  });
});

describe("what is worn", () => {
  const source = text('safety gloves "butyl", "suit"\n  layer clear');

  test("is noted above the work, and the duty holds", () => {
    const [kind, suit, layer] = actionsOf(source);
    expect([kind, suit]).toMatchObject([{ text: "gloves: butyl" }, { text: "suit" }]);
    expect([...layer!.duties.keys()]).toEqual(["gloves"]);
  });
});

describe("labels", () => {
  const materialOf = (lines: string) =>
    actionsOf(text("layer m", "", `}\nmaterial m {\n${lines}\n`))[0] as { use: { material: Material } };

  // 1000 g / 30 m2 = 33.3 g/m2; 900 g/L / 33.3 g/m2 = 27 m2/L.
  test("by weight: 30 m2/kg of 0.9 kg/L are 27 m2/L", () => {
    expect(
      materialOf("family paste wax\ndensity 0.9 kg/L\ncovers 30 m2/kg").use.material.covers?.value,
    ).toBeCloseTo(27, 9);
  });

  // 453.59237 g/lb over 0.09290304 m2/ft2: 150 ft2/lb are 32.55 g/m2.
  test("by the pound: 150 ft2/lb of 1 kg/L are 30.722 m2/L", () => {
    expect(
      materialOf("family paste wax\ndensity 1 kg/L\ncovers 150 ft2/lb").use.material.covers?.value,
    ).toBeCloseTo(30.722, 3);
  });

  test("by the one pack that is stated: 2 m2 of a can of half a litre are 4 m2/L", () => {
    expect(
      materialOf("family paste wax\npacks 500 mL for 9.00\ncovers 2 m2/can").use.material.covers?.value,
    ).toBeCloseTo(4, 9);
  });

  // 20 parts of water to one are 2000 %.
  test("a cleaner is let down in water", () => {
    expect(materialOf("family cleaner\nthin water, 1:20").use.material.thin?.value).toEqual({
      thinner: "water",
      upTo: 2000,
    });
  });

  test("a night is 12 h, and the word stays", () => {
    const { recoat, docs } = materialOf("family paste wax\nrecoat overnight").use.material;
    expect(recoat?.value.earliest).toBe(12);
    expect(docs).toContain("overnight");
  });
});

describe("a surface that is not tested for lead", () => {
  const rulesOf = (line: string) =>
    analyse({
      "a.finish": text("step sand 120").replace(
        "wood  beech",
        `wood  beech\n    existing alkyd paint\n    ${line}`,
      ),
    })
      .findings("a.finish")
      .map(({ rule }) => rule);

  test("counts as one without the line", () => {
    expect(rulesOf("lead not_tested")).toEqual(rulesOf(""));
    expect(rulesOf("lead not_tested").join(" ")).toMatch(/lead/u);
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
