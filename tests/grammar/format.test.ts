/** The layout, rule by rule: a text as somebody might type it, and the same text laid out. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { applyChanges, formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { sampleNames, sampleText } from "../harness/samples.ts";

const format = (text: string): string => applyChanges(text, formatFile(parseFile(text)).changes);

/** Lines without the indentation of this file. */
const text = (literal: TemplateStringsArray): string => {
  const lines = literal.raw[0]!.split("\n").slice(1, -1);
  const margin = Math.min(...lines.filter((line) => line.trim() !== "").map((line) => line.search(/\S/u)));
  return lines.map((line) => `${line.slice(margin)}\n`).join("");
};

describe("what the project shows", () => {
  test("the README's recipe is laid out", () => {
    const readme = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
    const recipes = [...readme.matchAll(/```finish\n([\s\S]*?)```/gu)].map((match) => match[1]!);
    expect(recipes.map(format)).toEqual(recipes);
  });

  test.each(sampleNames)("%s is laid out", (name) => {
    expect(formatFile(parseFile(sampleText(name))).changes).toEqual([]);
  });
});

test("a line that is laid out has no changes, though its words are read as one", () => {
  const line = "recipe polished {\n  layer shellac x 6 to 8 sessions, by pad\n}\n";
  expect(formatFile(parseFile(line)).changes).toEqual([]);
  expect(format("recipe polished {\nlayer shellac x 6-8 session,by pad\n}")).toBe(line);
});

describe("indentation and columns", () => {
  test("two blanks for each block, values in one column for each block", () => {
    const before = text`
      piece   table  "Side table"{
      built 1936
          meant_for adults
      surface top{
      shape panel 60 cm x 40 cm
      existing alkyd paint
      }
          }
    `;
    expect(format(before)).toBe(text`
      piece table "Side table" {
        built     1936
        meant_for adults
        surface   top {
          shape    panel 60 cm x 40 cm
          existing alkyd paint
        }
      }
    `);
  });

  test("the column holds over blank lines, comments and inner blocks", () => {
    const before = text`
      recipe r {
        safety gloves

        # Twice.
        step dust
        layer glaze x 2 {
          wait overnight
          follow polish
        }
        wait 3 h
      }
    `;
    expect(format(before)).toBe(text`
      recipe r {
        safety gloves

        # Twice.
        step   dust
        layer  glaze x 2 {
          wait   overnight
          follow polish
        }
        wait   3 h
      }
    `);
  });

  test("top-level lines have no column", () => {
    const before = text`
      use     "a.finish"
      material  b {
      }
    `;
    expect(format(before)).toBe(text`
      use "a.finish"
      material b {
      }
    `);
  });

  test("a line that goes on keeps its breaks, two further in than its value", () => {
    const before = text`
      recipe r(a: material,
      b: number) {
        safety gloves, # both
        eye_protection,

      # against dust
          dust_mask
        wait 3 h
      }
    `;
    expect(format(before)).toBe(text`
      recipe r(a: material,
               b: number) {
        safety gloves,  # both
                 eye_protection,

                 # against dust
                 dust_mask
        wait   3 h
      }
    `);
  });

  test("a comment stands where the next line of its block would", () => {
    const before = text`
      # file
        ## doc
      shop s {
      # first
      crew 1
              # last
      }
          # after
    `;
    expect(format(before)).toBe(text`
      # file
      ## doc
      shop s {
        # first
        crew 1
        # last
      }
      # after
    `);
  });
});

describe("comments at line ends", () => {
  test("share a column, two blanks behind the longest line that has one", () => {
    const before = text`
      material m { # m
        family glaze # one
        packs 946 mL for 28.00, 3785 mL for 84.00
        colour white #two
        # a line of its own
        voc 3 g/L     #   three
      } # end
    `;
    expect(format(before)).toBe(text`
      material m {  # m
        family glaze  # one
        packs  946 mL for 28.00, 3785 mL for 84.00
        colour white  #two
        # a line of its own
        voc    3 g/L  #   three
      }  # end
    `);
  });

  test("a blank line or another block begins a new column", () => {
    const before = text`
      recipe r {
        step dust # a
        layer oil_stain, wiped off # b

        step sand 220 # c
        layer glaze x 2 { # d
          wait 3 h # e
        }
        wait until cured # f
      }
    `;
    expect(format(before)).toBe(text`
      recipe r {
        step  dust                  # a
        layer oil_stain, wiped off  # b

        step  sand 220     # c
        layer glaze x 2 {  # d
          wait 3 h  # e
        }
        wait  until cured  # f
      }
    `);
  });
});

describe("between the words of a line", () => {
  const inside = (line: string): string => format(`job j {\n${line}\n}\n`).split("\n")[1]!.trim();
  test.each([
    ["apply r ( a:b ,c :  19mm )to top,base", "apply r(a: b, c: 19 mm) to top, base"],
    ["apply r() to table . top", "apply r() to table.top"],
    ["apply r(n: 3, d: -5C) to all", "apply r(n: 3, d: -5 C) to all"],
    ["spare 10%", "spare 10 %"],
    ["start\t2027-03-08   09:00", "start 2027-03-08 09:00"],
    ["piece chair   x 6", "piece chair x 6"],
  ])("job: %s", (before, after) => expect(inside(before)).toBe(after));

  const ofMaterial = (line: string): string => format(`material m {\n${line}\n}\n`).split("\n")[1]!.trim();
  test.each([
    ["recoat 2h to 24h", "recoat 2 h to 24 h"],
    ["limits -5°C to 10 °C,85%RH", "limits -5 C to 10 C, 85 % RH"],
    ["covers 10m²/L", "covers 10 m2/L"],
    ["mix 10 : 1 with hardener", "mix 10:1 with hardener"],
    ["mix 4 : 10 with hardener", "mix 4:10 with hardener"],
    ["pot_life 1   1/2 h", "pot_life 1 1/2 h"],
    ["touch 1  hour", "touch 1 hour"],
    ['colour   "#2b3a42"', 'colour "#2b3a42"'],
    ["packs 946mL for 28.00,3785 mL  for 84.00", "packs 946 mL for 28.00, 3785 mL for 84.00"],
  ])("material: %s", (before, after) => expect(ofMaterial(before)).toBe(after));

  const ofRecipe = (line: string): string => format(`recipe r {\n${line}\n}\n`).split("\n")[1]!.trim();
  test.each([
    ["layer clear  x 2,wet 100µm", "layer clear x 2, wet 100 um"],
    ["safety ventilate 10 air   changes/h", "safety ventilate 10 air changes/h"],
    ["layer clear, thinned 4: 1 with water", "layer clear, thinned 4:1 with water"],
    ['step mask   "brass   plates"', 'step mask "brass   plates"'],
    ["step fill with f,uses 50mL ,takes 15min/m²", "step fill with f, uses 50 mL, takes 15 min/m2"],
  ])("recipe: %s", (before, after) => expect(ofRecipe(before)).toBe(after));

  test("the head of a recipe", () => {
    expect(format('recipe r(a:material=b,n :number= 3)  "R"{\n}\n')).toBe(
      'recipe r(a: material = b, n: number = 3) "R" {\n}\n',
    );
    expect(format('recipe r "R"( a: material ) {\n}\n')).toBe('recipe r "R" (a: material) {\n}\n');
  });
});

describe("blank lines and line ends", () => {
  test("one blank line is kept, and none at the ends of a block and of the file", () => {
    const before = "\n  \nshop s {\n\n  crew 1\n \n\n  room 45 m3\n\n}\n\n\nshop t {\n}\n\n\t\n";
    expect(format(before)).toBe("shop s {\n  crew 1\n\n  room 45 m3\n}\n\nshop t {\n}\n");
  });

  test("no blank line is put in", () => {
    const dense = "shop s {\n}\nshop t {\n}\n";
    expect(format(dense)).toBe(dense);
  });

  test.each([
    ["LF", "\n"],
    ["CRLF", "\r\n"],
    ["CR", "\r"],
  ])("%s stays", (_, lineEnd) => {
    const lines = (...all: readonly string[]): string => all.join(lineEnd);
    expect(format(lines("shop s {", "crew 1  ", "", "", "room 45 m3", "}"))).toBe(
      lines("shop s {", "  crew 1", "", "  room 45 m3", "}", ""),
    );
  });

  test("every line keeps its own line end", () => {
    expect(format("shop s {\r\ncrew 1\n}")).toBe("shop s {\r\n  crew 1\n}\r\n");
  });

  test("blanks at line ends go, in comments too", () => {
    expect(format("# what \t\nshop s {  # x \n}\u00a0\n")).toBe("# what\nshop s {  # x\n}\n");
  });

  test.each([
    ["nothing", "", ""],
    ["blanks alone", " \n\n\t", ""],
    ["a byte order mark", "\ufeff shop s {\n}", "\ufeffshop s {\n}\n"],
    ["a comment alone", "  # x", "# x\n"],
  ])("%s", (_, before, after) => expect(format(before)).toBe(after));
});

describe("what cannot be read", () => {
  const left = (before: string): readonly number[] => formatFile(parseFile(before)).leftLines;

  test("a line with a syntax error stays, the others are laid out around it", () => {
    const before = text`
      material m {
      family   glaze
          covers   = 10m2/L
      on_hand 1L
      }
    `;
    expect(left(before)).toEqual([2]);
    expect(format(before)).toBe(text`
      material m {
        family  glaze
          covers   = 10m2/L
        on_hand 1 L
      }
    `);
  });

  test("so does every line of a statement that goes on", () => {
    const before = text`
      recipe r {
       safety gloves,
         3  eye_protection,
       keep_out
       step   dust
      }
    `;
    expect(left(before)).toEqual([1, 2, 3]);
    expect(format(before)).toBe(text`
      recipe r {
       safety gloves,
         3  eye_protection,
       keep_out
        step dust
      }
    `);
  });

  test("a declaration whose braces do not match stays whole", () => {
    const before = text`
      shop s {
         crew   1

      # between
      shop   t {
         crew   1
      }
      }
      shop   u {
         crew   1
      }
    `;
    expect(left(before)).toEqual([0, 1, 7]);
    expect(format(before)).toBe(text`
      shop s {
         crew   1

      # between
      shop t {
        crew 1
      }
      }
      shop u {
        crew 1
      }
    `);
  });

  test("an unknown field is laid out like a known one, unless its words would become others", () => {
    const before = text`
      material m {
        colr     none
        family glaze
        note_to_self: 2 . 5 of   it
      }
    `;
    expect(left(before)).toEqual([]);
    expect(format(before)).toBe(text`
      material m {
        colr   none
        family glaze
        note_to_self: 2 . 5 of   it
      }
    `);
  });
});

describe("changes", () => {
  test("are as small as can be", () => {
    const before = "shop s {\n    air  18°C, 60%RH\n}\n\n\n";
    const changes = formatFile(parseFile(before)).changes.map(({ span, text: put }) => [
      before.slice(span.start, span.end),
      put,
    ]);
    expect(changes).toEqual([
      ["  ", ""],
      [" ", ""],
      ["°", " "],
      ["", " "],
      ["", " "],
      ["\n\n", ""],
    ]);
  });
});
