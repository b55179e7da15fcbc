/**
 * A line that is being typed: every form of the notation, broken off behind any word, with any sign behind it, is read to
 * its end, and to the same text. A parser that waits for what never comes holds up everything.
 */
import { expect, test } from "vitest";
import { formatFile } from "../../grammar/src/format.ts";
import { fileProblems, parseFile } from "../../grammar/src/parse.ts";
import { piecesOf } from "../attack/sound-texts.ts";
import { textOfTokens } from "../grammar/show.ts";
import { shareOf } from "../harness/share.ts";
import { FORMS, type FormBlock, LAYER_HEADS, LAYER_TAILS, STEP_HEADS, STEP_TAILS } from "./forms.ts";

const SIGNS = [
  "",
  "/",
  "/ L",
  "/150",
  ",",
  ", ,",
  "-",
  "- 2",
  "x",
  "x 2 x",
  "to",
  "and",
  "then",
  "(",
  ")",
  ":",
  "=",
  '"',
  "%",
  "2",
  "2 /",
  "each",
];

const inBlock = (block: FormBlock, line: string): string =>
  block === "surface" ? `piece p {\n surface s {\n  ${line}\n }\n}\n` : `${block} n {\n ${line}\n}\n`;

const withTails = (head: string, tails: readonly string[]): readonly (readonly [FormBlock, string])[] =>
  tails.map((tail) => ["recipe", `${head}, ${tail}`]);

const ALL: readonly (readonly [FormBlock, string])[] = [
  ...FORMS,
  ...[...LAYER_HEADS, ...STEP_HEADS].map((line): readonly [FormBlock, string] => ["recipe", line]),
  ...withTails("layer m1", LAYER_TAILS),
  ...withTails("step sand 120, 180", STEP_TAILS),
];

/** What is wrong with how a text is read. */
function faultIn(text: string): string | undefined {
  try {
    const tree = parseFile(text);
    formatFile(tree);
    return textOfTokens(tree) === text ? undefined : `lost: ${text}`;
  } catch (error) {
    return `${String(error)}: ${text}`;
  }
}

test("every form is read to its end, wherever it breaks off", () => {
  const faults = new Set<string>();
  for (const [block, line] of shareOf(ALL, 37)) {
    const pieces = piecesOf(line);
    for (const length of pieces.keys()) {
      for (const sign of SIGNS) {
        const text = inBlock(block, pieces.slice(0, length + 1).join("") + sign);
        const fault = faultIn(text);
        if (fault) faults.add(fault);
      }
    }
  }
  expect([...faults]).toEqual([]);
});

test("a share of a thinner without its name behind it", () => {
  expect(fileProblems(parseFile(inBlock("material", "thin 5 %, ,")))).toHaveLength(1);
});

// Each of these waited for a grit that never came.
test.each(["step sand 180/", "step sand 120, 150, 180/L", "step sand P80/x", "step sand 180 / , 220"])(
  "%s",
  (line) => {
    expect(fileProblems(parseFile(inBlock("recipe", line)))).toHaveLength(1);
  },
);
