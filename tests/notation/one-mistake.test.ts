/**
 * One mistake gives one error: from every line that is right, each word, number and sign is taken out or misspelt in turn,
 * and the line then has at most one error on it.
 */
import { describe, expect, test } from "vitest";
import { isTrivia, lex } from "../../grammar/src/lexer.ts";
import { FIELDS } from "../../grammar/src/vocabulary.ts";
import { shareOf } from "../harness/share.ts";
import { BLOCKS, languageFindings } from "./blocks.ts";
import { READ } from "./unprompted-lines.ts";

/** Lines in their plain form, with the examples of the fields. */
const LINES: readonly (readonly [block: string, line: string])[] = [
  ...Object.values(READ).flatMap((rows) => rows.map(([block, , plain]) => [block, plain] as const)),
  ...Object.entries(FIELDS).flatMap(([block, fields]) =>
    block === "recipe" ? [] : Object.values(fields).map(({ example }) => [block, example] as const),
  ),
].filter(([block, line]) => !line.includes("\n") && languageFindings(BLOCKS[block]!(line)).length === 0);

/** The errors on one line of its block. */
function errorsOn(block: string, line: string): readonly string[] {
  const text = BLOCKS[block]!(line);
  const start = text.indexOf(line);
  return languageFindings(text)
    .filter(
      ({ severity, span }) =>
        severity === "error" && span.start >= start && span.start <= start + line.length,
    )
    .map(({ rule, headline }) => `${rule}: ${headline}`);
}

const damaged = (line: string, put: string): readonly string[] =>
  lex(line)
    .filter((token) => !isTrivia(token))
    .map(({ start, text }) => line.slice(0, start) + put + line.slice(start + text.length));

describe("a mistake on a line that was right", () => {
  test("there are lines of every kind", () => {
    expect(LINES.length).toBeGreaterThan(200);
  });

  test.each([
    ["left out", ""],
    ["misspelt", "zqx"],
  ])("%s", (_, put) => {
    const twice = shareOf(LINES, 6).flatMap(([block, line]) =>
      damaged(line, put).flatMap((wrong) => {
        const errors = errorsOn(block, wrong);
        return errors.length > 1 ? [`${block}: ${wrong}: ${errors.join(" / ")}`] : [];
      }),
    );
    expect(twice).toEqual([]);
  });

  test("hours without a time take nobody else's, with which they would overlap", () => {
    const lines = damaged("hours Mon to Fri 07:30 to 12:00, Mon to Fri 13:00 to 16:30", "zqx");
    expect(lines.filter((line) => errorsOn("shop", line).length > 1)).toEqual([]);
  });

  test("two mistakes that have nothing to do with each other are both told", () => {
    expect(errorsOn("recipe", "layer m1 x zqx, takes zqy")).toHaveLength(2);
    expect(errorsOn("material", "sold 1 zq for 5, 2 zq for 7")).toHaveLength(2);
    expect(errorsOn("job without apply", "apply q(c: zqx, n: zqy)")).toHaveLength(2);
  });
});
