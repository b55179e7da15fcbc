/**
 * Texts for property tests: put together from pieces of the language, the notation with a part replaced, noise, and sound
 * texts in another layout.
 */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { isSpace, isTrivia, lex } from "../../grammar/src/lexer.ts";
import { UNIT_ALIASES } from "../../grammar/src/units.ts";

/** A file with every construct of the notation. */
export const NOTATION = readFileSync(new URL("notation.finish", import.meta.url), "utf8");

const LINES = NOTATION.split("\n");
const WORDS = [...new Set(lex(NOTATION).map((token) => token.text))];

const fragment = fc.oneof(
  { arbitrary: fc.constantFrom(...WORDS), weight: 6 },
  { arbitrary: fc.constantFrom(...LINES).map((line) => `${line}\n`), weight: 6 },
  {
    arbitrary: fc.constantFrom("{\n", "}\n", "{", "}", "(", ")", ",", ",\n", '"', "\n", "\r\n", " ", "#"),
    weight: 4,
  },
  { arbitrary: fc.string({ unit: "binary", maxLength: 4 }), weight: 1 },
);

export const anyText = fc.oneof(
  fc.array(fragment, { maxLength: 40 }).map((parts) => parts.join("")),
  fc.array(fragment, { maxLength: 40 }).map((parts) => parts.join(" ")),
  fc.string({ unit: "binary", maxLength: 60 }),
);

/** The notation with one part of it replaced. */
export const edited = fc
  .tuple(fc.nat(NOTATION.length), fc.nat(60), fc.array(fragment, { maxLength: 3 }))
  .map(([at, length, parts]) => NOTATION.slice(0, at) + parts.join("") + NOTATION.slice(at + length));

const SIGNED = new Map(
  Object.entries(UNIT_ALIASES).flatMap(([alias, plain]) =>
    /[^\x20-\x7e]/u.test(alias) ? [[plain, alias]] : [],
  ),
);
const blanks = fc.constantFrom(" ", " ", "  ", "     ", "\t", "\u00a0", " \t ");
const lineEnds = fc.constantFrom("\n", "\n", "\n", "\n\n", "\n \t\n\n", "  \n");

/** The same words in another layout: other blanks, more blank lines, units with signs, perhaps other line ends. */
export const inDisorder = (text: string): fc.Arbitrary<string> =>
  fc
    .tuple(fc.infiniteStream(fc.tuple(blanks, lineEnds, fc.nat(9))), fc.boolean())
    .map(([draws, isWindows]) => {
      const parts = lex(text).map((token, idx, all) => {
        const [blank, lineEnd, chance] = draws.next().value!;
        const next = all[idx + 1];
        if (isSpace(token)) return blank;
        // A blank line above a declaration would part it from its documentation.
        if (isTrivia(token)) return token.text === "\n" && next?.text.startsWith("##") ? lineEnd : token.text;
        const image =
          token.kind === "unit" && chance > 4 ? (SIGNED.get(token.text) ?? token.text) : token.text;
        const isTight = /[(){},=]/u.test(token.text + (next?.text[0] ?? ""));
        return isTight && next !== undefined && chance > 5 && token.kind !== "string" ? image + blank : image;
      });
      return parts.join("").replaceAll("\n", isWindows ? "\r\n" : "\n");
    });
