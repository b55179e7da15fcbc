/** Texts for property tests: put together from pieces of the language, the notation with a part replaced, and noise. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { lex } from "../../grammar/src/lexer.ts";

/** A file with every construct of the notation. */
export const NOTATION = readFileSync(new URL("notation.finish", import.meta.url), "utf8");

const LINES = NOTATION.split("\n");
const WORDS = [...new Set(lex(NOTATION).map((token) => token.image))];

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
