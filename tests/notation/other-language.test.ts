/**
 * What is wrong with a line in another language: at the same places, with the same changes to the recipe, and every text of it
 * is one that translators are shown. The language is made up: every letter of a text is another.
 */
import { expect, test } from "vitest";
import { type Language, speak } from "../../grammar/src/translate.ts";
import { toldTexts } from "../../server/tools/texts.ts";
import { piecesOf } from "../attack/sound-texts.ts";
import { analyse } from "../harness/check-text.ts";
import { shareOf } from "../harness/share.ts";
import { FORMS, type FormBlock, LAYER_HEADS, LAYER_TAILS, STEP_HEADS, STEP_TAILS } from "./forms.ts";

/** What a line may go on with that it should not. */
const WRONG = ["", ",", " (", ": 5", " 5 zz", ' "', " %", " 2 h", " foo bar", " -7", " to 1 L", " { }"];

const inBlock = (block: FormBlock, line: string): string =>
  block === "surface" ? `piece p {\n surface s {\n  ${line}\n }\n}\n` : `${block} n {\n ${line}\n}\n`;

const recipeLines = (lines: readonly string[]): readonly (readonly [FormBlock, string])[] =>
  lines.map((line) => ["recipe", line]);

const ALL: readonly (readonly [FormBlock, string])[] = [
  ...FORMS,
  ...recipeLines([...LAYER_HEADS, ...STEP_HEADS]),
  ...recipeLines(LAYER_TAILS.map((tail) => `layer m1, ${tail}`)),
  ...recipeLines(STEP_TAILS.map((tail) => `step sand 120, 180, ${tail}`)),
];

const broken = shareOf(ALL, 149).flatMap(([block, line]) => {
  const pieces = piecesOf(line);
  return pieces.map((_, at) =>
    inBlock(block, `${pieces.slice(0, at + 1).join("")}${WRONG[(at + line.length) % WRONG.length]}`),
  );
});

const told = toldTexts();

const findingsOf = (text: string) => analyse({ "test.finish": text }).findings("test.finish");
const meant = (findings: ReturnType<typeof findingsOf>) =>
  findings.map(({ rule, severity, span, fixes }) => ({
    rule,
    severity,
    span,
    edits: fixes.map(({ edits }) => edits),
  }));

/** Letters as wide as an ideograph, outside of backticks and `{0}`. */
const wide = (english: string): string =>
  english.replaceAll(/`[^`]*`|\{\d+\}|[A-Za-z]/gu, (part) =>
    part.length > 1 ? part : String.fromCharCode(part.charCodeAt(0) + 0xfee0),
  );

test("broken lines mean the same, and nobody tells a text that is not known to be told", () => {
  const unknown = new Set<string>();
  const language: Language = {
    tag: "xx",
    template: (english) => {
      // What has been told in the language already has none of our letters left outside of backticks.
      if (wide(english) !== english && !told.has(english)) unknown.add(english);
      return english === "D MMM" ? undefined : wide(english);
    },
  };
  expect(broken.length).toBeGreaterThan(100);
  for (const text of broken) {
    const plain = meant(findingsOf(text));
    speak(language);
    try {
      expect(meant(findingsOf(text)), text).toEqual(plain);
    } finally {
      speak(undefined);
    }
  }
  expect([...unknown]).toEqual([]);
}, 60_000);
