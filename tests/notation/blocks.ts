/**
 * One line of the notation in a block that is right but for it, and what the language itself has to say of that line.
 */
import { memo } from "../../server/src/core/once.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { untradedFindings } from "../harness/check-text.ts";

const BOARD = "piece p {\n surface s {\n  shape area 1 m2\n  wood beech\n }\n}\n";
const WORK =
  "recipe q(c: material, n: number = 1, d: duration = 1 h) {\n layer c x n\n wait d\n step sand 220\n}\n";
const MATERIALS = "material m1 {\n family oil varnish\n}\nmaterial st {\n family oil stain\n}\n";

export const BLOCKS: Readonly<Record<string, (line: string) => string>> = {
  material: (line) => `material a {\n family oil varnish\n ${line}\n}\n`,
  cleaner: (line) => `material a {\n family cleaner\n ${line}\n}\n`,
  family: (line) => `material a {\n ${line}\n}\n`,
  mix: (line) =>
    `material hardener {\n family conversion varnish\n}\nmaterial a {\n family conversion varnish\n ${line}\n}\n`,
  surface: (line) => BOARD.replace("wood beech\n", `wood beech\n  ${line}\n`),
  "surface of its own": (line) => `piece p {\n surface s {\n  ${line}\n }\n}\n`,
  piece: (line) => BOARD.replace("{\n", `{\n ${line}\n`),
  shop: (line) => `shop h {\n ${line}\n}\n`,
  recipe: (line) => `${MATERIALS}${WORK}recipe r {\n ${line}\n}\n`,
  parameters: (line) => `recipe r(${line}) {\n layer oil_varnish\n}\n`,
  job: (line) =>
    `${BOARD}shop h {\n air 20 C, 50 % RH\n}\n${WORK}job j {\n piece p\n apply q(c: oil_varnish) to s\n ${line}\n}\n`,
  "job without apply": (line) => `${BOARD}${WORK}job j {\n piece p\n ${line}\n}\n`,
};

/** The rules of the language itself; those of the trade have tests of their own. */
export const LANGUAGE: ReadonlySet<string> = new Set([
  "syntax",
  "unknown-name",
  "duplicate-name",
  "unused-name",
  "wrong-unit",
  "bad-number",
  "unknown-field",
  "missing-field",
  "size-not-stated",
  "wood-not-stated",
  "repeated-field",
  "unknown-word",
  "may-be-several",
  "not-counted",
  "wrong-argument",
  "missing-argument",
  "use-not-found",
  "use-cycle",
  "follow-cycle",
]);

/** What the language itself has to say of a text. Of several tests each asks again. */
export const languageFindings = memo((text: string): readonly FileFinding[] =>
  languageFindingsOf({ "test.finish": text }, "test.finish"),
);

/** What the language itself has to say of one of several files. */
export const languageFindingsOf = (
  files: Readonly<Record<string, string>>,
  file: string,
): readonly FileFinding[] => untradedFindings(files, file).filter(({ rule }) => LANGUAGE.has(rule));

/** `wrong-unit "3 h"` for every finding of the language, with the text it stands on, in order; all errors but hints. */
export function findingsIn(block: string, line: string): string {
  const text = BLOCKS[block]!(line);
  return languageFindings(text)
    .map(({ rule, span, severity }) => {
      const level = severity === "error" ? "" : `${severity} `;
      return `${level}${rule} "${text.slice(span.start, span.end)}"`;
    })
    .join("; ");
}
