/**
 * The formatter over every form that the grammar reads, alone and put together at random with comments, documentation and
 * titles in any disorder: it comes to rest at once, and what is said, resolved and noted is the same before and after.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatFile } from "../../grammar/src/format.ts";
import { isComment, lex } from "../../grammar/src/lexer.ts";
import { fileProblems, parseFile } from "../../grammar/src/parse.ts";
import { inDisorder } from "../grammar/any-text.ts";
import { analyse, findingsOf } from "../harness/check-text.ts";
import { FORMS, type FormBlock, LAYER_HEADS, LAYER_TAILS, STEP_HEADS, STEP_TAILS } from "./forms.ts";
import { formatted, meaningOf } from "./said.ts";

const SEED = 20261129;

const commentsOf = (text: string): readonly string[] =>
  lex(text)
    .filter(isComment)
    .map((token) => token.text.trimEnd());

/** Texts that stood in quotes; the plain form may put more words into quotes, and never takes any out. */
const quotedIn = (text: string): readonly string[] =>
  lex(text)
    .filter(({ kind }) => kind === "string")
    .map((token) => token.text);

const problemsOf = (text: string): readonly string[] =>
  fileProblems(parseFile(text)).map(({ message }) => message);

/** What formatting must keep. */
function holds(text: string): void {
  const once = formatted(text);
  expect(formatFile(parseFile(once)).changes).toEqual([]);
  expect(meaningOf(once)).toBe(meaningOf(text));
  expect(commentsOf(once)).toEqual(commentsOf(text));
  expect(problemsOf(once)).toEqual(problemsOf(text));
  const left = [...quotedIn(once)];
  for (const said of quotedIn(text)) {
    const at = left.findIndex((each) => each === said || each.includes(said.slice(1, -1)));
    expect(at, said).toBeGreaterThanOrEqual(0);
    left.splice(at, 1);
  }
}

const OPENED: Readonly<Record<FormBlock, readonly [string, string]>> = {
  material: ["material a {\n", "}\n"],
  piece: ["piece p {\n", "}\n"],
  surface: ["piece p {\n surface s {\n", " }\n}\n"],
  shop: ["shop h {\n", "}\n"],
  recipe: ["recipe r {\n", "}\n"],
  job: ["job j {\n", "}\n"],
};

const inBlock = (block: FormBlock, lines: readonly string[]): string =>
  `${OPENED[block][0]}${lines.map((line) => `  ${line}\n`).join("")}${OPENED[block][1]}`;

/** A form in its block, with comments or without. */
const alone = ([own, line]: (typeof FORMS)[number], way: number): string => {
  const comments = [[line], [`${line}# as said`], ["# above", `  ${line}  `, "# below"]];
  return inBlock(own, comments[way % comments.length]!);
};

/** The first text of a list that does not hold: all together are one file, which costs less than each by itself. */
function hold(texts: readonly string[]): void {
  try {
    holds(texts.join(""));
  } catch (error) {
    for (const text of texts) holds(text);
    throw error;
  }
}

describe("each form by itself", () => {
  test.each(Object.keys(OPENED) as readonly FormBlock[])("in a %s", (block) => {
    hold(FORMS.filter(([own]) => own === block).map(alone));
  });

  test("is read", () => {
    const unread = FORMS.flatMap(([block, line]) => {
      const problems = problemsOf(inBlock(block, [line]));
      return problems.length === 0 ? [] : [`${block}: ${line}: ${problems.join("; ")}`];
    });
    expect(unread).toEqual([]);
  });
});

const COMMENTS = [
  "# plain",
  '# "quoted"',
  "#! no-gloves",
  "# allow no-gloves: of cotton",
  "#",
  "# 48\" x 24'",
];
const TITLES = ['"Hall"', '"Öl \\"No. 1\\""', '"48\\" wide"', '"# none"', '"x 3, by pad"', '" "'];

const lineIn = (block: FormBlock): fc.Arbitrary<string> => {
  const single = fc.constantFrom(...FORMS.filter(([own]) => own === block).map(([, line]) => line));
  if (block !== "recipe") return single;
  const withTails = (heads: readonly string[], tails: readonly string[]) =>
    fc
      .tuple(fc.constantFrom(...heads), fc.uniqueArray(fc.constantFrom(...tails), { maxLength: 4 }))
      .map(([head, more]) => [head, ...more].join(", "));
  return fc.oneof(single, withTails(LAYER_HEADS, LAYER_TAILS), withTails(STEP_HEADS, STEP_TAILS));
};

const decorated = (line: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc
    .tuple(line, fc.constantFrom(...COMMENTS), fc.nat(5))
    .map(
      ([written, comment, way]) =>
        [written, `${written} ${comment}`, `${comment}\n${written}`][way] ?? written,
    );

const block = fc.constantFrom(...(Object.keys(OPENED) as readonly FormBlock[])).chain((kind) =>
  fc
    .tuple(
      fc.array(decorated(lineIn(kind)), { minLength: 1, maxLength: 6 }),
      fc.constantFrom(...TITLES),
      fc.nat(3),
    )
    .map(([lines, title, way]) => {
      const text = inBlock(kind, lines);
      const [, word, name] = /^(\w+) (\w+)/u.exec(text)!;
      const titled = way > 1 ? text.replace(`${word} ${name} {`, () => `${word} ${name} ${title} {`) : text;
      return way % 2 === 0 ? titled : `## Said **of** it.\n## And more.\n${titled}`;
    }),
);

const file = fc.array(block, { minLength: 1, maxLength: 3 }).map((blocks) => blocks.join("\n"));

describe("forms put together", () => {
  test("are kept as they are said", () => {
    fc.assert(fc.property(file, holds), { numRuns: 130, seed: SEED });
  });

  test("are kept in any disorder of blanks and line ends", () => {
    fc.assert(fc.property(file.chain(inDisorder), holds), { numRuns: 60, seed: SEED });
  });

  test.each([
    "job a {\n  family waterborne two part\u3000\n}\n",
    "job a {\n  family waterborne\u3000two part\n}\n",
    "job a {\n  crew two men\u3000\n}\n",
  ])("a blank of another script is a blank in a line that is kept in words: %j", (text) => {
    expect(meaningOf(formatted(text))).toBe(meaningOf(text));
  });

  test("are resolved to the same", () => {
    const found = (text: string): unknown => ({
      // The formatter answers the hint that a line is kept as a note: it writes the note.
      said: findingsOf(text)
        .filter(({ rule }) => rule !== "kept-as-note")
        .map(({ rule, severity, message }) => `${severity} ${rule} ${message}`),
      totals: analyse({ "test.finish": text }).totals("test.finish"),
    });
    fc.assert(
      fc.property(file, (text) => {
        expect(found(formatted(text))).toEqual(found(text));
      }),
      { numRuns: 60, seed: SEED },
    );
  });
});
