/** Names over several files and over recipes that are handed on: what is reported, and where it stands. */
import { describe, expect, test } from "vitest";
import { analyse, lineOf } from "../harness/check-text.ts";

const NAMES =
  /^(?:syntax|use-|follow-cycle|repeated-field|duplicate-name|unused-name|unknown-name|wrong-argument|missing-argument)/u;

/** `3 use-cycle "b.finish"` for every finding about names in the first of the files. */
function namesIn(files: Readonly<Record<string, string>>): readonly string[] {
  const [first, text] = Object.entries(files)[0]!;
  return analyse(files)
    .findings(first)
    .filter(({ rule }) => NAMES.test(rule))
    .map(({ rule, span }) => `${lineOf(text, span.start)} ${rule} ${text.slice(span.start, span.end)}`);
}

const material = (name: string) => `material ${name} {\n family soap\n}\n`;
const recipe = (name: string, ...lines: readonly string[]) =>
  `recipe ${name} {\n${lines.map((line) => ` ${line}\n`).join("")}}\n`;

describe("letters of any script", () => {
  test.each(["chêne_fumé", "Österreich_2", "кресло", "塗装", "लकड़ी", "ไม้สัก", "𝓐b1"])(
    "%s is a name",
    (name) => {
      expect(namesIn({ "a.finish": material(name) + recipe("r", `layer ${name}`) })).toEqual([]);
    },
  );

  test("an accent is the same letter, written as one sign or as two", () => {
    const text = material("che\u0302ne") + recipe("r", "layer chêne");
    expect(namesIn({ "a.finish": text })).toEqual([]);
    expect(namesIn({ "a.finish": material("che\u0302ne") + material("chêne") })).toEqual([
      "4 duplicate-name chêne",
    ]);
  });
});

test("a name that is half typed is taken for what begins with it", () => {
  const text = recipe("r", "layer waterborne_polyur");
  const [finding] = analyse({ "a.finish": text })
    .findings("a.finish")
    .filter(({ rule }) => rule === "unknown-name");
  expect(finding?.message).toContain("`waterborne_polyurethane`");
  expect(finding?.message).not.toContain("waterborne_lacquer");
});

test("one cause is one finding: what names a parameter that lacks its type is not unknown as well", () => {
  const text = "recipe r(clear, coats, cure) {\n layer clear x coats\n wait cure\n}\n";
  expect(
    new Set(namesIn({ "a.finish": text }).map((found) => found.split(" ").slice(0, 2).join(" "))),
  ).toEqual(new Set(["1 syntax"]));
});

describe("recipes that are handed on", () => {
  test("a file whose material only they are given is used", () => {
    const files = {
      "a.finish": `use "b.finish"\nrecipe r(finish: recipe) {\n follow finish(clear: m)\n}\n`,
      "b.finish": material("m"),
    };
    expect(namesIn(files)).toEqual([]);
  });
});

describe("files", () => {
  test("a used file passes on what it uses", () => {
    const files = {
      "a.finish": `use "b.finish"\n${recipe("r", "layer m")}`,
      "b.finish": 'use "c.finish"\n',
      "c.finish": material("m"),
    };
    expect(namesIn(files)).toEqual([]);
  });

  test("a name stands once over a file and all that it uses, however often the file is reached", () => {
    const both = `use "b.finish"\nuse "c.finish"\n${recipe("r", "layer k", "layer l")}`;
    const b = `use "d.finish"\n${material("k")}`;
    const c = `use "d.finish"\n${material("l")}`;
    expect(namesIn({ "a.finish": both, "b.finish": b, "c.finish": c, "d.finish": material("m") })).toEqual(
      [],
    );
    expect(namesIn({ "a.finish": both, "b.finish": material("k"), "c.finish": b + c })).toContain(
      '2 duplicate-name "c.finish"',
    );
    expect(
      namesIn({
        "a.finish": `use "b.finish"\n${material("m")}${recipe("r", "layer k")}`,
        "b.finish": b + material("m"),
      }),
    ).toEqual(["2 duplicate-name m"]);
  });

  test("what is built in may be shadowed, and each kind has its own names", () => {
    expect(namesIn({ "a.finish": material("oil_varnish") + recipe("r", "layer oil_varnish") })).toEqual([]);
    expect(namesIn({ "a.finish": `${material("p")}shop p {\n}\n${recipe("p", "layer p")}` })).toEqual([]);
  });

  test("files that go round, are used twice, or for nothing", () => {
    const r = recipe("r", "layer m");
    const b = material("m");
    expect(namesIn({ "a.finish": `use "b.finish"\n${r}`, "b.finish": `use "a.finish"\n${b}` })).toEqual([
      '1 use-cycle "b.finish"',
    ]);
    expect(namesIn({ "a.finish": `use "a.finish"\n` })).toEqual(['1 use-cycle "a.finish"']);
    expect(namesIn({ "a.finish": `use "b.finish"\nuse "./b.finish"\n${r}`, "b.finish": b })).toEqual([
      '2 repeated-field "./b.finish"',
    ]);
    expect(namesIn({ "a.finish": `use "b.finish"\n${recipe("r", "layer soap")}`, "b.finish": b })).toEqual([
      '1 unused-name "b.finish"',
    ]);
    expect(namesIn({ "a.finish": `use "b.finish"\n${recipe("r", "layer soap")}` })).toEqual([
      '1 use-not-found "b.finish"',
    ]);
  });
});

describe("a parameter under another name", () => {
  const coat = recipe("coat(paint: material, n: number)", "layer paint x n");

  test.each([
    ["coat(pant: soap, n: 2)", ["5 wrong-argument pant"]],
    ["coat(pant: soap)", ["5 missing-argument coat(pant: soap)", "5 wrong-argument pant"]],
    ["coat(varnish: soap, n: 2)", ["5 wrong-argument varnish"]],
  ])("%s: what was meant is not missing as well", (call, right) => {
    expect(namesIn({ "a.finish": coat + recipe("all", `follow ${call}`) })).toEqual(right);
  });
});

describe("a recipe that is handed on", () => {
  const frame = recipe("frame(r: recipe)", "follow r(n: 3)");

  test("takes what it is followed with", () => {
    const coat = recipe("coat(n: number)", "layer soap x n");
    expect(namesIn({ "a.finish": frame + coat + recipe("all", "follow frame(r: coat)") })).toEqual([]);
  });

  test("has no such parameter", () => {
    const coat = recipe("coat(m: number = 1)", "layer soap x m");
    expect(namesIn({ "a.finish": frame + coat + recipe("all", "follow frame(r: coat)") })).toEqual([
      "8 wrong-argument coat",
    ]);
  });

  test("needs more than it is followed with", () => {
    const coat = recipe("coat(n: number, m: number)", "layer soap x n", "layer soap x m");
    expect(namesIn({ "a.finish": frame + coat + recipe("all", "follow frame(r: coat)") })).toEqual([
      "9 missing-argument coat",
    ]);
  });

  test("stands as a default", () => {
    const text = recipe("frame(r: recipe = coat)", "follow r(n: 3)") + recipe("coat", "step dust");
    expect(namesIn({ "a.finish": text })).toEqual(["1 wrong-argument coat"]);
  });

  test("comes round where it is handed on, also when another file follows it", () => {
    const again = recipe("again", "follow frame(r: again)");
    const plain = recipe("frame(r: recipe)", "follow r");
    expect(namesIn({ "a.finish": plain + again })).toEqual(["5 follow-cycle follow frame(r: again)"]);
    expect(namesIn({ "a.finish": `use "b.finish"\n${again}`, "b.finish": plain })).toEqual([
      "3 follow-cycle follow frame(r: again)",
    ]);
  });
});
