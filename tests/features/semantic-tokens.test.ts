/**
 * Colours by meaning, drawn under the text: a letter for the type, a capital where a name is declared, and `!` at the
 * end of what is built in.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TOKEN_MODIFIERS, TOKEN_TYPES, type TokenType } from "../../server/src/features/types.ts";
import { anyText, edited } from "../grammar/any-text.ts";
import { analyse } from "../harness/check-text.ts";

const LETTERS: Readonly<Record<TokenType, string>> = {
  keyword: "k",
  property: "p",
  method: "m",
  enumMember: "e",
  type: "t",
  operator: "o",
  number: "n",
  string: "s",
  comment: "c",
  variable: "v",
  parameter: "a",
  function: "f",
  class: "l",
  struct: "u",
  namespace: "h",
  event: "j",
};

/** The text with a line of letters under each of its lines. */
function draw(
  text: string,
  which: "all" | "words" = "all",
  others: Readonly<Record<string, string>> = {},
): string {
  const marks = text.split("").map((char): string => (char === "\n" ? "\n" : " "));
  for (const { span, type, modifiers } of analyse({ a: text, ...others }).semanticTokens("a", which)) {
    const letter = modifiers.includes("declaration") ? LETTERS[type].toUpperCase() : LETTERS[type];
    for (let at = span.start; at < span.end; at += 1) marks[at] = letter;
    if (modifiers.includes("defaultLibrary")) marks[span.end - 1] = "!";
  }
  const lines = marks.join("").split("\n");
  return text
    .split("\n")
    .map((line, idx) => `${line}\n${lines[idx]!.trimEnd()}\n`)
    .join("");
}

/** Without the empty first line, and without the indentation of this file. */
const lines = (literal: TemplateStringsArray): string =>
  literal.raw[0]!.split("\n")
    .slice(1, -1)
    .map((line) => `${line.slice(4)}\n`)
    .join("");

/** The lines that are text, of a drawing. */
const textOf = (drawing: string): string =>
  drawing
    .split("\n")
    .filter((_, idx) => idx % 2 === 0)
    .slice(0, -1)
    .join("\n");

describe("the words of each declaration", () => {
  test.each([
    [
      "a material",
      lines`
    use "stock.finish"  # more
    kkk ssssssssssssss  cccccc
    ## Rubs out well.
    ccccccccccccccccc
    material satin "Satin" {
    kkkkkkkk VVVVV sssssss
      family waterborne polyurethane
      pppppp eeeeeeeeee eeeeeeeeeeee
      recoat 2 h to 24 h
      pppppp n n oo nn n
      rated  21 C, 50 % RH
      ppppp  nn n  nn n oo
      thin   water, up to 10 %
      pppp   eeeee  oo oo nn n
      packs  946 mL for 28.00
      ppppp  nnn nn ooo nnnnn
      mix    10:1 with drops
      ppp    nn n oooo
      colr   none

    }

    `,
    ],
    [
      "a piece",
      lines`
    piece table {
    kkkkk LLLLL
      built   1936
      ppppp   nnnn
      surface top {
      kkkkkkk UUU
        shape    4 of post 75 mm to 50 mm x 700 mm, plus 10 %
        ppppp    n oo eeee nn nn oo nn nn o nnn nn  oooo nn n
        wood     red oak, veneer 0.6 mm
        pppp     eee eee  oooooo nnn nn
        existing alkyd paint, 2 coats
        pppppppp eeeee eeeee  n ooooo
      }

    }

    `,
    ],
    [
      "a shop",
      lines`
    shop mill {
    kkkk HHHH
      room   45 m3, 2 air changes/h
      pppp   nn nn  n nnnnnnnnnnnnn
      hours  Mon to Fri 09:00 to 17:00
      ppppp  eee oo eee nnnnn oo nnnnn
      closed 2027-03-26
      pppppp nnnnnnnnnn
      labour 16.00 per h
      pppppp nnnnn ooo n
    }

    `,
    ],
  ])("%s", (_, drawing) => expect(draw(textOf(drawing))).toBe(drawing));
});

describe("names", () => {
  test("are what they stand for: parameters hide materials, and what is built in shows", () => {
    const drawing = lines`
    recipe r(glaze: material = gel_stain, n: number = 3, next: recipe = done) {
    kkkkkk F AAAAA  tttttttt   vvvvvvvv!  A  tttttt   n  AAAA  tttttt   ffff
      for    wood
      ppp    eeee
      safety gloves, ventilate 4 air changes/h
      kkkkkk eeeeee  eeeeeeeee n nnnnnnnnnnnnn
      step   sand wet 400, 600, takes 15 min/m2
      kkkk   mmmm eee nnn  nnn  kkkkk nn nnnnnn
      step   clean with soap
      kkkk   mmmmm oooo vvv!
      layer  glaze x n, by pad, thinned 4:1 with alcohol {
      kkkkk  aaaaa o a  kk eee  kkkkkkk n n oooo vvvvvv!
        wait until recoat
        kkkk ooooo eeeeee
      }

      follow next(clear: glaze)
      kkkkkk aaaa aaaaa  aaaaa
      layer  nothing, wiped off
      kkkkk           kkkkk
    }

    recipe done(clear: material) {
    kkkkkk FFFF AAAAA  tttttttt
    }

    `;
    expect(draw(textOf(drawing))).toBe(drawing);
  });

  test("lead into other files", () => {
    const drawing = lines`
    use "b"
    kkk sss
    job j {
    kkk J
      piece table x 2
      ppppp lllll o n
      in    mill
      pp    hhhh
      after other
      ppppp jjjjj
      apply oil(with_what: tung, n: 2) to table.top, all
      kkkkk fff aaaaaaaaa  vvvv     n  oo lllll uuu  uuu
    }

    `;
    const others = {
      b: [
        "piece table {\n  surface top {\n  }\n}",
        "shop mill {\n}",
        "job other {\n}",
        "material tung {\n}",
        "recipe oil(with_what: material) {\n}",
      ].join("\n"),
    };
    expect(draw(textOf(drawing), "all", others)).toBe(drawing);
  });
});

test("an editor with a grammar of its own gets the words alone", () => {
  const drawing = lines`
    ## A shop.

    shop s "S" {  # it
    kkkk H
      labour 16.00 per h
      pppppp       ooo n
      crew   2
      pppp
    }

    `;
  expect(draw(textOf(drawing), "words")).toBe(drawing);
});

test("a part has the tokens that it touches", () => {
  const text = "shop s {\n  crew 2\n  room 45 m3\n}\n";
  const all = analyse({ a: text }).semanticTokens("a", "all");
  const part = { start: text.indexOf("crew"), end: text.indexOf("room") + 1 };
  expect(analyse({ a: text }).semanticTokens("a", "all", part)).toEqual(
    all.filter(({ span }) =>
      text.slice(part.start, text.indexOf(" 45")).includes(text.slice(span.start, span.end)),
    ),
  );
});

test("numbers in the protocol are for ever", () => {
  expect(TOKEN_TYPES.join(" ")).toBe(
    "keyword property method enumMember type operator number string comment variable parameter function class struct namespace event",
  );
  expect(TOKEN_MODIFIERS.join(" ")).toBe("declaration readonly documentation defaultLibrary");
});

test("for any text they are in order, apart, on one line and within it", () => {
  fc.assert(
    fc.property(
      fc.oneof(anyText, edited),
      fc.constantFrom("all" as const, "words" as const),
      (text, which) => {
        let end = 0;
        for (const { span } of analyse({ a: text }).semanticTokens("a", which)) {
          expect(span.start).toBeGreaterThanOrEqual(end);
          expect(span.end).toBeGreaterThan(span.start);
          expect(text.slice(span.start, span.end)).not.toMatch(/[\r\n]/u);
          end = span.end;
        }
        expect(end).toBeLessThanOrEqual(text.length);
      },
    ),
    { numRuns: 80, seed: 20270308 },
  );
});
