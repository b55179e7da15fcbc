/** Inlay hints: recipes in, their lines with what the editor shows behind them out. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";
import { hintedLines } from "./at-cursor.ts";

const STOCK = `material satin {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h
  cure   21 days
  rated  21 C, 50 % RH
}
material walnut {
  family gel stain
  covers 12 m2/L
  recoat 8 h
  cure   72 h
}
piece table {
  surface top {
    shape area 2 m2
    wood  red oak
  }
  surface base {
    shape area 1 m2
    wood  beech
  }
}
shop mill {
  air   18 C, 60 % RH
  hours Mon to Fri 09:00 to 17:00
}
`;

const RECIPE = `recipe clearing(clear: material) {
  step  sand 120, # not coarser
    150
  layer clear x 2, by pad { # the block is done between coats
    wait until recoat
    step dust
  }
  wait  24 h
}
`;

describe("elapsed", () => {
  const elapsed = (text: string): string => hintedLines(STOCK + text, { kinds: ["elapsed"] });

  test("a dated job shows when each line's turn comes, a repeated block its first", () => {
    expect(
      elapsed(
        `${RECIPE}job one {\n  piece table\n  in mill\n  start 2027-03-08 09:00\n  apply clearing(clear: satin) to top\n}\n`,
      ),
    ).toBe(
      [
        "150 | Mon 08 Mar 09:00",
        "layer clear x 2, by pad { | Mon 08 Mar 09:55",
        "wait until recoat | Mon 08 Mar 10:15",
        "step dust | Mon 08 Mar 13:15",
        "wait  24 h | Mon 08 Mar 13:45",
      ].join("\n"),
    );
  });

  test("without a date the hours after the start stand in", () => {
    expect(elapsed(`${RECIPE}job one {\n  piece table\n  apply clearing(clear: satin) to top\n}\n`)).toBe(
      [
        "150 | start",
        "layer clear x 2, by pad { | +55 min",
        "wait until recoat | +1 h 15 min",
        "step dust | +3 h 15 min",
        "wait  24 h | +3 h 45 min",
      ].join("\n"),
    );
  });

  test("two jobs show both, more of them the first and the last", () => {
    const job = (name: string, start: string): string =>
      `job ${name} {\n  piece table\n  in mill\n  start ${start}\n  apply r to top\n}\n`;
    const recipe = "recipe r {\n  step dust\n}\n";
    const two = `${recipe}${job("a", "2027-03-08")}${job("b", "2027-03-09")}`;
    expect(elapsed(two)).toBe("step dust | Mon 08 Mar 09:00 · Tue 09 Mar 09:00");
    expect(elapsed(`${two}${job("c", "2027-03-10")}`)).toBe(
      "step dust | Mon 08 Mar 09:00 … Wed 10 Mar 09:00",
    );
  });

  test("a recipe without a job counts the waits that it states, until one is not known", () => {
    expect(
      elapsed(
        "recipe r(clear: material) {\n  step dust\n  wait 72 h\n  layer clear\n  wait overnight\n  step dust\n  wait until cured\n  step dust\n}\n",
      ),
    ).toBe(
      [
        "layer clear | +3 days",
        "wait overnight | +3 days",
        "step dust | +3 days 16 h",
        "wait until cured | +3 days 16 h",
      ].join("\n"),
    );
  });
});

describe("litres", () => {
  const litres = (text: string, others = {}): string =>
    hintedLines(STOCK + text, { kinds: ["litres"], others });
  const job = (name: string, apply: string): string =>
    `job ${name} {\n  piece table x 2\n  apply ${apply}\n}\n`;

  test("of all coats, pieces and surfaces, spare included", () => {
    expect(litres(`${RECIPE}${job("one", "clearing(clear: satin) to top, base")}`)).toBe(
      "layer clear x 2, by pad { | 1.32 L",
    );
  });

  test("of all jobs together, each material named where there are several", () => {
    const jobs = `${job("one", "clearing(clear: satin) to top")}${job("two", "clearing(clear: satin) to base")}`;
    expect(litres(`${RECIPE}${jobs}`)).toBe("layer clear x 2, by pad { | 1.32 L for 2 jobs");
    const other = `${job("one", "clearing(clear: satin) to top")}${job("two", "clearing(clear: walnut) to base")}`;
    expect(litres(`${RECIPE}${other}`)).toBe(
      "layer clear x 2, by pad { | 0.88 L satin + 0.37 L walnut for 2 jobs",
    );
  });

  test("of a mix each part", () => {
    expect(litres(`recipe r {\n  layer satin, thinned 4:1 with water\n}\n${job("one", "r to top")}`)).toBe(
      "layer satin, thinned 4:1 with water | 0.35 L",
    );
    expect(
      litres(`recipe r {\n  layer walnut, thinned 4:1 with mineral_spirits\n}\n${job("one", "r to top")}`),
    ).toBe("layer walnut, thinned 4:1 with mineral_spirits | 0.29 L walnut + 0.073 L mineral_spirits");
  });

  test("nothing where nobody says how far a material goes, and none without a job", () => {
    expect(litres("recipe r {\n  layer satin\n}\n")).toBe("");
    expect(litres(`recipe r {\n  layer mystery\n}\n${job("one", "r to top")}`)).toBe("");
  });
});

describe("waits", () => {
  const waits = (text: string, others = {}): string =>
    hintedLines(STOCK + text, { kinds: ["waits"], others });
  const inMill = "job one {\n  piece table\n  in mill\n  apply r to top\n}\n";

  test("the label's time where no air is known, longer in damp and cold air", () => {
    const recipe = "recipe r {\n  layer satin\n  wait 3 h\n  layer satin\n  wait until cured\n}\n";
    expect(waits(recipe)).toBe("wait 3 h | needs 2 h\nwait until cured | cured after 21 days");
    expect(waits(`${recipe}${inMill}`)).toBe(
      "wait 3 h | too short, needs 3 h 1 min\nwait until cured | cured after 31 days 15 h",
    );
  });

  test("a stated wait that falls short says so; two waits count together", () => {
    expect(waits("recipe r {\n  layer satin\n  wait 1 h\n  layer satin\n}\n")).toBe(
      "wait 1 h | too short, needs 2 h",
    );
    expect(
      waits("recipe r {\n  layer satin\n  wait 1 h\n  step dust\n  wait 90 min\n  layer satin\n}\n"),
    ).toBe("wait 1 h | needs 2 h\nwait 90 min | needs 2 h");
  });

  test("oil below water must cure, oil below oil need not", () => {
    expect(waits("recipe r {\n  layer walnut\n  wait 1 day\n  layer satin\n}\n")).toBe(
      "wait 1 day | too short, cured after 3 days",
    );
    expect(waits("recipe r {\n  layer walnut\n  wait 1 day\n  layer walnut\n}\n")).toBe(
      "wait 1 day | needs 8 h",
    );
  });

  test("nothing before the first coat, and nothing for a material that nobody knows", () => {
    expect(waits("recipe r(m: material) {\n  wait 1 h\n  layer m\n  wait 1 h\n  layer m\n}\n")).toBe("");
  });

  test("jobs of other files speak where this file has none", () => {
    const others = { "job.finish": `use "test.finish"\n${inMill}` };
    expect(waits("recipe r {\n  layer satin\n  wait 3 h\n  layer satin\n}\n", others)).toBe(
      "wait 3 h | too short, needs 3 h 1 min",
    );
  });
});

test("hints come for the part of the file that is asked for, with their reasons", () => {
  const text = `${STOCK}recipe r {\n  layer satin\n  wait 3 h\n  layer satin\n}\njob one {\n  piece table\n  in mill\n  apply r to top\n}\n`;
  const at = text.indexOf("wait 3 h");
  const hints = analyse({ "test.finish": text }).inlayHints("test.finish", { start: at, end: at + 8 }, [
    "waits",
  ]);
  expect(hints).toHaveLength(1);
  expect(hints[0]).toMatchObject({ kind: "waits", offset: at + 8 });
  expect(hints[0]!.markdown).toContain("`one`, `top`: 3 h; `satin` needs");
  expect(hints[0]!.markdown).toContain("recoat 2 h × 1.51 = 3 h 1 min");
});

test("no text makes them fail, and each stands inside of it", () => {
  const text = `${STOCK}${RECIPE}job one {\n  piece table\n  in mill\n  start 2027-03-08\n  apply clearing(clear: satin) to all\n}\n`;
  fc.assert(
    fc.property(fc.nat(text.length), fc.nat(text.length), (a, b) => {
      const part = text.slice(0, Math.min(a, b)) + text.slice(Math.max(a, b));
      const analysis = analyse({ "test.finish": part });
      const whole = { start: 0, end: part.length };
      return (
        analysis
          .inlayHints("test.finish", whole, ["litres", "waits", "elapsed"])
          .every(({ offset, text: shown }) => offset <= part.length && shown !== "") &&
        analysis.jobLenses("test.finish", ["error"]).every(({ span }) => span.end <= part.length)
      );
    }),
    { numRuns: 60 },
  );
});
