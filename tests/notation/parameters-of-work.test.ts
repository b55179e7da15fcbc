/** Parameters for how a coat goes on, with what it is sanded and how it is thinned: brush and spray in one recipe. */
import { describe, expect, test } from "vitest";
import { analyse, findingsOf } from "../harness/check-text.ts";
import { languageFindings } from "./blocks.ts";
import { formatted, meaningOf } from "./said.ts";

const text = (head: string, call: string, lines = DEFAULT_LINES) => `piece board {
  surface face {
    shape area 10 m2
    wood  beech
  }
}

recipe work(${head}) {
  ${lines}
}

job it {
  piece board
  spare 0 %
  apply work${call}
}
`;
const HEAD = "how: method = pad, paper: grits = 120/150/180, thinning: ratio = 4:1";
const DEFAULT_LINES = "step  sand paper\n  layer waterborne_acrylic, by how, thinned thinning with water";

const actionsOf = (written: string) =>
  analyse({ "test.finish": written })
    .jobs("test.finish")[0]!
    .runs[0]!.moments.map(({ action }) => action);

const worked = (written: string) => {
  const actions = actionsOf(written);
  const step = actions.find((action) => action.op === "step");
  const layer = actions.find((action) => action.op === "layer");
  return {
    grits: step?.grits,
    method: layer?.method,
    thinned: layer?.thinned && [layer.thinned.a, layer.thinned.b],
  };
};

describe("a method, grits and a ratio", () => {
  test("stand for what the recipe says where the job says nothing", () => {
    expect(languageFindings(text(HEAD, ""))).toEqual([]);
    expect(worked(text(HEAD, ""))).toEqual({ grits: [120, 150, 180], method: "pad", thinned: [4, 1] });
  });

  test("are given by the job", () => {
    const given = text(HEAD, "(how: hvlp, paper: 220/320, thinning: 10:1)");
    expect(languageFindings(given)).toEqual([]);
    expect(worked(given)).toEqual({ grits: [220, 320], method: "hvlp", thinned: [10, 1] });
  });

  test("of one grit, and next to grits of the line", () => {
    const one = text(
      HEAD,
      "(paper: 220)",
      `step  sand 80, paper\n  layer waterborne_acrylic, by how, thinned thinning with water`,
    );
    expect(languageFindings(one)).toEqual([]);
    expect(worked(one).grits).toEqual([80, 220]);
  });

  test("take litres as their methods do", () => {
    // 10 m2 at the family's 10 m2/L: 1 L by hand, 1/0.65 L in a mist; 4 of 5 parts are the material.
    const litres = (call: string) =>
      analyse({ "test.finish": text(HEAD, call) })
        .jobs("test.finish")[0]!
        .totals.materials.find(({ name }) => name === "waterborne_acrylic")!.litres;
    expect(litres("")).toBeCloseTo(0.8, 6);
    expect(litres("(how: hvlp)")).toBeCloseTo(0.8 / 0.65, 6);
  });

  test("are handed on by a recipe", () => {
    const handed = text(
      HEAD,
      "(how: spray)",
      "follow inner(how: how, thinning: thinning, paper: paper)",
    ).replace("recipe work", `recipe inner(${HEAD}) {\n  ${DEFAULT_LINES}\n}\n\nrecipe work`);
    expect(languageFindings(handed)).toEqual([]);
    expect(worked(handed)).toEqual({ grits: [120, 150, 180], method: "spray", thinned: [4, 1] });
  });

  test("keep their form in the formatter", () => {
    const written = text(HEAD, "(how: hvlp, paper: 220/320, thinning: 10:1)");
    expect(formatted(written)).toBe(written);
    expect(formatted(written.replace("10:1", "10 : 1"))).toBe(written);
    expect(meaningOf(formatted(written))).toBe(meaningOf(written));
  });

  test.each([
    ["(how: fettle)", "may-be-several"],
    ["(how: 3)", "wrong-argument"],
    ["(thinning: 3)", "wrong-argument"],
    ["(thinning: 0:1)", "wrong-argument"],
    ["(paper: pad)", "wrong-argument"],
    ["(paper: 4:1)", "wrong-argument"],
    ["(paper: 100000)", "bad-number"],
  ])("%s is refused once", (call, rule) => {
    expect(languageFindings(text(HEAD, call)).map((finding) => finding.rule)).toEqual([rule]);
  });

  test("a spray given to the recipe brings what spraying asks for", () => {
    const rules = (call: string) =>
      findingsOf(text(HEAD, call))
        .map(({ message }) => message)
        .join();
    expect(rules("(how: hvlp)")).not.toBe(rules("(how: brush)"));
  });
});

describe("a sheen", () => {
  const LINES = "layer waterborne_acrylic, sheen shine";
  const sheenOf = (head: string, call: string) => {
    const layer = actionsOf(text(head, call, LINES)).find((action) => action.op === "layer");
    return layer?.sheen;
  };

  test("is what the recipe says, or what the job gives, in words or gloss units", () => {
    expect(sheenOf("shine: sheen = satin", "")).toBe("satin");
    expect(sheenOf("shine: sheen = dead flat", "")).toBe("dead flat");
    expect(sheenOf("shine: sheen = satin", "(shine: semi-gloss)")).toBe("semi-gloss");
    expect(sheenOf("shine: sheen", "(shine: dead flat)")).toBe("dead flat");
    // Gloss of 80 units at 60 degrees is that of the highest level.
    expect(sheenOf("shine: sheen", "(shine: 80)")).toBe("gloss");
  });

  test("may be spelt as it is said, and takes the plain form", () => {
    const said = text("shine: sheen = semi gloss", "(shine: dead matt)", LINES);
    expect(languageFindings(said)).toEqual([]);
    expect(formatted(said)).toContain("shine: sheen = semi-gloss");
    expect(formatted(said)).toContain("work(shine: dead flat)");
    expect(meaningOf(formatted(said))).toBe(meaningOf(said));
  });

  test("must be one", () => {
    const wrong = (head: string, call: string) =>
      languageFindings(text(head, call, LINES)).map(({ rule }) => rule);
    expect(wrong("shine: sheen = shiny", "")).toEqual(["unknown-word"]);
    expect(wrong("shine: sheen", "(shine: 4:1)")).toEqual(["wrong-argument"]);
    expect(wrong("shine: sheen", "(shine: 120)")).toEqual(["wrong-argument"]);
    expect(wrong("shine: sheen", "")).toEqual(["missing-argument"]);
  });
});
