/**
 * Texts that nobody would write: sound ones spoilt where it hurts, soups of tokens, blocks put together line by line from
 * the vocabulary, letters that are half or invisible, and things that are huge, deep or long.
 */

import fc from "fast-check";
import { MAX_FILE_BYTES } from "../../server/src/reading/reasons.ts";
import { LINES, piecesOf, SOUND_TEXTS, WORDS } from "./sound-texts.ts";

/** Letters and signs that have surprised programs before. */
const ODDITIES = [
  "\ud800",
  "\udc00",
  "\udfff\ud800",
  "\u0000",
  "\u0007",
  "\u001b[31m",
  "\u001b]0;title\u0007",
  "\u007f",
  "\u0085",
  "\u00a0",
  "\u00ad",
  "\u0130",
  "\u0131",
  "\u0301\u0301\u0301",
  "e\u0301",
  "\u1e9e",
  "\u200b",
  "\u200d",
  "\u200e",
  "\u202e",
  "\u2028",
  "\u2029",
  "\u2066",
  "\u2069",
  "\u3000",
  "\ufeff",
  "\ufffd",
  "\uffff",
  "\ufdfa",
  "👩‍👩‍👧‍👧",
  "🇩🇪",
  "𝔴𝔞𝔵",
  "µm",
  "m²",
  "°C",
];

const WORDS_OF_PROGRAMS = [
  "__proto__",
  "constructor",
  "hasOwnProperty",
  "toString",
  "valueOf",
  "prototype",
  "undefined",
  "null",
  "NaN",
  "Infinity",
];

const FIGURES = [
  "0",
  "-0",
  "-1",
  "1/0",
  "0/0",
  "1 1/2",
  "1e309",
  "0.0000000000000000000001",
  "99999999999999999999",
  "9".repeat(400),
  "0".repeat(400),
  "x 1000000",
  "x 0",
  "2027-02-30",
  "2027-13-01",
  "0000-00-00",
  "9999-12-31",
  "24:00",
  "99:99",
  "100 %",
  "-10 %",
  "1000000 days",
  "0 min",
  "-273.16 C",
  "100 % RH",
];

const SCRAPS = [
  '"',
  '"\\',
  '\\"',
  "{",
  "}",
  "(",
  ")",
  ",",
  ":",
  "=",
  ".",
  "#",
  "##",
  "\n",
  "\r",
  "\r\n",
  "\n\n\n",
  "# allow coat-over-wax: ",
  "# allow ",
  "#! syntax",
  "use ",
  'use "b.finish"\n',
  'use "a.finish"\n',
  'use "\ud800.finish"\n',
  'use "../../../../../../etc/passwd"\n',
  'use ""\n',
  'use "%"\n',
  "existing as left by ",
  "follow ",
  "apply ",
  "after ",
  "all",
  "=cmd|'/C calc'!A0",
  "![x](http://example.org/x)",
  "[x](javascript:alert(1))",
  "<script>alert(1)</script>",
  "| --- |",
  "```",
];

const scrap = fc.oneof(
  { arbitrary: fc.constantFrom(...SCRAPS), weight: 4 },
  { arbitrary: fc.constantFrom(...FIGURES), weight: 3 },
  { arbitrary: fc.constantFrom(...ODDITIES), weight: 3 },
  { arbitrary: fc.constantFrom(...WORDS_OF_PROGRAMS), weight: 2 },
  { arbitrary: fc.constantFrom(...WORDS), weight: 5 },
  { arbitrary: fc.string({ unit: "binary", maxLength: 6 }), weight: 1 },
);

type Change =
  | { readonly how: "cut" | "double" | "swap"; readonly at: number; readonly length: number }
  | { readonly how: "put" | "replace"; readonly at: number; readonly scrap: string }
  | { readonly how: "repeat"; readonly at: number; readonly times: number }
  | {
      readonly how: "graft";
      readonly at: number;
      readonly from: string;
      readonly fromAt: number;
      readonly length: number;
    }
  | { readonly how: "end"; readonly at: number };

/** A little more than is read of any file: what is longer is refused by its length, and costs the attack alone. */
const LONGEST = MAX_FILE_BYTES + 1000;

const place = fc.nat(100_000);
const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({
    how: fc.constantFrom("cut", "double", "swap"),
    at: place,
    length: fc.integer({ min: 1, max: 30 }),
  }),
  fc.record({ how: fc.constantFrom("put", "replace"), at: place, scrap }),
  fc.record({ how: fc.constantFrom("put", "replace"), at: place, scrap }),
  fc.record({ how: fc.constant("repeat" as const), at: place, times: fc.integer({ min: 2, max: 300 }) }),
  fc.record({
    how: fc.constant("graft" as const),
    at: place,
    from: fc.constantFrom(...SOUND_TEXTS),
    fromAt: place,
    length: fc.integer({ min: 1, max: 60 }),
  }),
  fc.record({ how: fc.constant("end" as const), at: place }),
);

function changed(pieces: readonly string[], how: Change): readonly string[] {
  const at = pieces.length === 0 ? 0 : how.at % pieces.length;
  const before = pieces.slice(0, at);
  switch (how.how) {
    case "cut":
      return [...before, ...pieces.slice(at + how.length)];
    case "double":
      return [...pieces.slice(0, at + how.length), ...pieces.slice(at)];
    case "swap":
      return [...before, ...pieces.slice(at, at + how.length).toReversed(), ...pieces.slice(at + how.length)];
    case "put":
      return [...before, how.scrap, ...pieces.slice(at)];
    case "replace":
      return [...before, how.scrap, ...pieces.slice(at + 1)];
    case "repeat":
      return [...before, repeated(pieces[at] ?? "", how.times), ...pieces.slice(at + 1)];
    case "graft": {
      const graft = piecesOf(how.from);
      const from = graft.length === 0 ? 0 : how.fromAt % graft.length;
      return [...before, ...graft.slice(from, from + how.length), ...pieces.slice(at)];
    }
    case "end":
      return before;
  }
}

/** What is repeated is repeated again by the next change, and three times three hundred fill any memory. */
const repeated = (piece: string, times: number): string =>
  piece.repeat(Math.min(times, Math.ceil(LONGEST / Math.max(1, piece.length))));

/** A sound text, spoilt. */
export const spoiltText = fc
  .tuple(fc.constantFrom(...SOUND_TEXTS), fc.array(change, { minLength: 1, maxLength: 8 }))
  .map(([text, changes]) => changes.reduce(changed, piecesOf(text)).join(""));

const soup = fc
  .tuple(fc.array(scrap, { maxLength: 80 }), fc.constantFrom("", " ", "\n"))
  .map(([parts, between]) => parts.join(between));

const name = fc.oneof(
  fc.constantFrom("a", "b", "c", "top", "all", "x1"),
  fc.constantFrom(...WORDS_OF_PROGRAMS),
  fc.constantFrom("é", "ǅ", "名", "a-b", "ſ"),
);

/** A block with lines that may stand in it, in any order and number, and now and then one of another block's. */
const block: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom("material", "piece", "shop", "recipe", "job"),
    name,
    fc.option(fc.oneof(fc.constantFrom(...ODDITIES, "A title"), fc.string({ maxLength: 12 }))),
    fc.infiniteStream(fc.tuple(fc.nat(1000), fc.nat(9), scrap, name)),
    fc.nat(14),
  )
  .map(([kind, own, title, draws, length]) => {
    const lines = Array.from({ length }, () => {
      const [pick, chance, put, other] = draws.next().value!;
      const from = chance === 0 ? "surface" : chance === 1 ? "layer" : kind;
      const all = LINES[from] ?? [];
      const line = all[pick % Math.max(all.length, 1)] ?? "";
      if (chance === 2) return `  ${line.replace(/[\w.]+$/u, put)}`;
      if (chance === 3) return `  ${line.replace(/\b[a-z]+_[a-z_]+\b/u, other)}`;
      return `  ${line}`;
    });
    const head = title === null ? `${kind} ${own}` : `${kind} ${own} ${JSON.stringify(title)}`;
    return `${head} {\n${lines.join("\n")}\n}\n`;
  });

const blocks = fc.array(block, { maxLength: 8 }).map((all) => all.join("\n"));

/** One thing very often: deep, long or many. The growth of such is measured elsewhere; here it must only be borne. */
const huge = fc
  .tuple(
    fc.constantFrom(
      "{",
      "}",
      "(",
      ")",
      '"',
      "#",
      "##\n",
      "\n",
      "\r",
      " ",
      "\t",
      "-",
      "a",
      "_",
      "1",
      "1/",
      ",",
      ",\n",
      "x ",
      "\ud800",
      "\u0301",
      "layer a {\n",
      "recipe r {\n",
      "  step sand 80\n",
      "  layer oil_varnish x 30\n",
      "  follow r\n",
      'use "a.finish"\n',
      "# allow coat-over-wax: because\n",
      "piece p {\n surface s {\n  shape area 1 m2\n  wood pine\n }\n}\n",
    ),
    fc.integer({ min: 100, max: 3000 }),
    fc.constantFrom("", "recipe r {\n", 'note "', "material m {\n  colour ", "# allow x", "job j {\n"),
    fc.constantFrom("", "\n}\n", '"\n', "\n"),
  )
  .map(([part, times, before, after]) => before + part.repeat(times) + after);

export const hostileText = fc
  .oneof(
    { arbitrary: spoiltText, weight: 8 },
    { arbitrary: blocks, weight: 5 },
    { arbitrary: soup, weight: 3 },
    { arbitrary: huge, weight: 1 },
    { arbitrary: fc.string({ unit: "binary", maxLength: 80 }), weight: 1 },
    { arbitrary: fc.string({ unit: "grapheme", maxLength: 80 }), weight: 1 },
  )
  .map((text) => text.slice(0, LONGEST));
