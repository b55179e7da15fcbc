/** Inlay hints: recipes in, their lines with what the editor shows behind them out, parts as it parts them. */
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

test("words in quotes, passes and what acts on its own change nothing of a line's figures", () => {
  const job = "job one {\n  piece table\n  apply r to all\n}\n";
  const hints = (layer: string, step: string): string =>
    hintedLines(`${STOCK}recipe r {\n  ${step}\n  ${layer}\n  wait 1 h\n}\n${job}`, { kinds: ["litres"] })
      .replace(layer, "LAYER")
      .replace(step, "STEP");
  const plain = hints("layer satin x 2, by pad", "step clean with soap");
  // 3 m2 / 10 m2/L × 2 × 1.1
  expect(plain).toContain("0.66 L");
  expect(hints('layer satin x 2, by pad, "thin, with the grain"', "step clean with soap")).toBe(plain);
  expect(hints("layer satin x 2, by pad, passes 2, flash 10 min", "step clean with soap")).toBe(plain);
  expect(hints("layer satin x 2, by pad", "step clean with soap, leave 10 min")).toBe(plain);
});

describe("elapsed", () => {
  const elapsed = (text: string): string => hintedLines(STOCK + text, { kinds: ["elapsed"] });

  test("a dated job shows when each line's turn comes and each wait is over, a repeated block its first", () => {
    expect(
      elapsed(
        `${RECIPE}job one {\n  piece table\n  in mill\n  start 2027-03-08 09:00\n  apply clearing(clear: satin) to top\n}\n`,
      ),
    ).toBe(
      [
        "150 | Mon 8 Mar 09:00",
        "layer clear x 2, by pad { | Mon 8 Mar 09:55",
        // In steps of five minutes, rounded up.
        "wait until recoat | to Mon 8 Mar 13:20",
        "step dust | Mon 8 Mar 13:20",
        "wait  24 h | to Tue 9 Mar 13:50",
      ].join("\n"),
    );
  });

  test("the day loses its leading zero, and the hour keeps it", () => {
    const job = (start: string): string =>
      `job one {\n  piece table\n  in mill\n  start ${start}\n  apply r to top\n}\n`;
    const recipe = "recipe r {\n  step dust\n}\n";
    expect(elapsed(`${recipe}${job("2027-03-08 09:05")}`)).toBe("step dust | Mon 8 Mar 09:05");
    expect(elapsed(`${recipe}${job("2027-03-15 09:05")}`)).toBe("step dust | Mon 15 Mar 09:05");
  });

  test("without a date the hours after the start stand in", () => {
    expect(elapsed(`${RECIPE}job one {\n  piece table\n  apply clearing(clear: satin) to top\n}\n`)).toBe(
      [
        "150 | start",
        "layer clear x 2, by pad { | +55 min",
        "wait until recoat | to +3 h 15 min",
        "step dust | +3 h 15 min",
        // Hours of a day or more are rounded: 3 h 45 min + 24 h.
        "wait  24 h | to +1 day 4 h",
      ].join("\n"),
    );
  });

  test("several jobs show the first and the last", () => {
    const job = (name: string, start: string): string =>
      `job ${name} {\n  piece table\n  in mill\n  start ${start}\n  apply r to top\n}\n`;
    const recipe = "recipe r {\n  step dust\n}\n";
    const two = `${recipe}${job("a", "2027-03-08")}${job("b", "2027-03-09")}`;
    expect(elapsed(two)).toBe("step dust | 8 Mar … 9 Mar");
    expect(elapsed(`${two}${job("c", "2027-03-10")}`)).toBe("step dust | 8 Mar … 10 Mar");
    const sameDay = `${recipe}${job("a", "2027-03-08 10:30")}${job("b", "2027-03-08 14:00")}`;
    expect(elapsed(sameDay)).toBe("step dust | Mon 8 Mar 10:30 … 14:00");
  });

  test("a recipe without a job counts the waits that it states, until one is not known", () => {
    expect(
      elapsed(
        "recipe r(clear: material) {\n  step dust\n  wait 72 h\n  layer clear\n  wait overnight\n  step dust\n  wait until cured\n  step dust\n}\n",
      ),
    ).toBe(
      ["layer clear | +3 days", "wait overnight | to +3 days 16 h", "step dust | +3 days 16 h"].join("\n"),
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
    ).toBe("layer walnut, thinned 4:1 with mineral_spirits | 0.29 L walnut + 73 mL mineral_spirits");
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
    expect(waits(recipe)).toBe("wait 3 h | needs 2 h\nwait until cured | 21 days");
    expect(waits(`${recipe}${inMill}`)).toBe(
      "wait 3 h | ⚠ slightly short, needs 3 h 1 min\nwait until cured | 31 days 16 h",
    );
  });

  test("a stated wait that falls short says so; two waits count together", () => {
    expect(waits("recipe r {\n  layer satin\n  wait 1 h\n  layer satin\n}\n")).toBe(
      "wait 1 h | ⚠ too short, needs 2 h",
    );
    expect(
      waits("recipe r {\n  layer satin\n  wait 1 h\n  step dust\n  wait 90 min\n  layer satin\n}\n"),
    ).toBe("wait 1 h | needs 2 h");
  });

  test("what the line says already is not said again, nor what the line above has said", () => {
    expect(waits("recipe r {\n  layer satin\n  wait 2 h\n  layer satin\n}\n")).toBe("");
    expect(waits("recipe r {\n  layer satin\n  wait 120 min\n  layer satin\n}\n")).toBe("");
    expect(
      waits("recipe r {\n  layer satin\n  wait 3 h\n  layer satin\n  wait 4 h\n  layer satin\n}\n"),
    ).toBe("wait 3 h | needs 2 h");
  });

  test("oil below water must cure, oil below oil need not", () => {
    expect(waits("recipe r {\n  layer walnut\n  wait 1 day\n  layer satin\n}\n")).toBe(
      "wait 1 day | ⚠ too short, needs 3 days to cure",
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
      "wait 3 h | ⚠ slightly short, needs 3 h 1 min",
    );
  });
});

describe("behind one line", () => {
  /** What VS Code shows of all hints of a line; it counts characters, and cuts off the rest. */
  const SHOWN = 43;
  const one = (apply: string): string =>
    `job one {\n  piece table\n  in mill\n  start 2027-03-08 09:00\n  apply ${apply} to all\n}\n`;
  const recipe = "recipe r {\n  layer satin x 2\n  wait 4 h\n  layer satin\n  wait until cured\n}\n";

  test("all is said together", () => {
    // 3 m2 × 2 / 10 × 1.1 = 0.66 L; needed are 2 h × 1.51 and 21 days × 1.51.
    const lines = hintedLines(`${STOCK}${recipe}${one("r")}`).split("\n");
    expect(lines[0]).toMatch(/^layer satin x 2 \| 0\.66 L · Mon 8 Mar 09:00$/u);
    expect(lines[1]).toMatch(/^wait 4 h \| needs 3 h 1 min · to Mon 8 Mar 1\d:\d\d$/u);
    expect(lines[3]).toMatch(/^wait until cured \| 31 days 16 h · to \w{3} \d+ Apr \d\d:\d\d$/u);
  });

  test("in air below the label's limit no hours are promised, as the findings promise none", () => {
    const cold = `material satin "Satin" {\n  family waterborne polyurethane\n  recoat 2 h\n  limits 10 C to 30 C\n}\nshop porch {\n  air 9 C, 50 %\n}\npiece t {\n  surface top {\n    shape area 1 m2\n    wood pine\n  }\n}\nrecipe r {\n  layer satin x 2 {\n    wait 1 h\n  }\n  wait until cured\n}\njob j {\n  piece t\n  in porch\n  apply r to top\n}\n`;
    const hints = analyse({ "test.finish": cold }).inlayHints("test.finish", { start: 0, end: cold.length }, [
      "waits",
    ]);
    expect(hints.map(({ parts }) => parts.map(({ text }) => text).join(""))).toEqual([
      "⚠ too cold here to dry in any wait",
    ]);
  });

  test("a turn that an editor would cut off is left to the tooltip", () => {
    const allow = "  # allow waterborne-over-uncured-oil: tried on a sample board\n";
    const text = `${STOCK}recipe r {\n  layer walnut\n  wait 12 h\n${allow}  layer satin\n}\n${one("r")}`;
    const hints = analyse({ "test.finish": text }).inlayHints("test.finish", { start: 0, end: text.length }, [
      "litres",
      "waits",
      "elapsed",
    ]);
    // Oil hardens by reaction, 18 C instead of 21: 72 h × 2^0.3 = 88.6 h. With the turn it had 57 characters.
    const wait = hints[1]!;
    expect(wait.parts.map((part) => part.text)).toEqual(["⚠ too short, needs 3 days 17 h to cure"]);
    expect(wait.parts[0]!.markdown).toContain("cured 3 days × 1.23 = 3 days 17 h");
    expect(wait.parts[0]!.markdown).toContain("Planned");
  });

  test("names of materials give way to their litres", () => {
    const long = "recipe r {\n  layer walnut, thinned 4:1 with extraordinarily_odourless_spirits\n}\n";
    const spirits = "material extraordinarily_odourless_spirits {\n  family mineral spirits\n}\n";
    const text = `${STOCK}${spirits}${long}job one {\n  piece table\n  apply r to top\n}\n`;
    // 2 / 12 × 1.1 = 0.1833 L: four parts and one.
    expect(hintedLines(text, { kinds: ["litres"] })).toMatch(/ \| 0\.15 L \+ 37 mL$/u);
  });

  test("nothing is longer than an editor shows", () => {
    const jobs = `${one("r")}${one("r").replace("job one", "job two").replace("03-08", "11-25")}`;
    for (const text of [`${STOCK}${recipe}${one("r")}`, `${STOCK}${recipe}${jobs}`]) {
      for (const line of hintedLines(text).split("\n")) {
        expect(line.slice(line.indexOf(" | ") + 3).length, line).toBeLessThanOrEqual(SHOWN);
      }
    }
  });
});

test("hints come for the part of the file that is asked for, with their reasons", () => {
  const text = `${STOCK}recipe r {\n  layer satin\n  wait 3 h\n  layer satin\n}\njob one {\n  piece table\n  in mill\n  apply r to top\n}\n`;
  const at = text.indexOf("wait 3 h");
  const hints = analyse({ "test.finish": text }).inlayHints("test.finish", { start: at, end: at + 8 }, [
    "waits",
  ]);
  expect(hints).toHaveLength(1);
  expect(hints[0]!.offset).toBe(at + 8);
  const [part] = hints[0]!.parts;
  expect(part!.kind).toBe("waits");
  expect(part!.markdown).toContain("`one`, `top`: 3 h; `satin` needs");
  expect(part!.markdown).toContain("recoat 2 h × 1.51 = 3 h 1 min");
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
          .every(({ offset, parts }) => offset <= part.length && parts.every((shown) => shown.text !== "")) &&
        analysis.jobLenses("test.finish", ["error"]).every(({ span }) => span.end <= part.length)
      );
    }),
    { numRuns: 60 },
  );
});
