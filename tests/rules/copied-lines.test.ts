/**
 * What a remedy tells you to write can be written: every line that it quotes in backticks is a line of the notation.
 */
import { describe, expect, it } from "vitest";
import { exampleText } from "../../server/src/core/rules/explain.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { findingsOf } from "../harness/check-text.ts";
import { sampleAnalyst, sampleNames } from "../harness/samples.ts";

const samples = sampleAnalyst().analysis();
const findings: readonly FileFinding[] = [
  ...RULES.flatMap(({ failing, passing }) =>
    [...failing, ...passing].flatMap((example) => findingsOf(`${exampleText(example)}\n`)),
  ),
  ...sampleNames.flatMap((name) => samples.findings(name)),
];

/** First words of lines, and the declaration that each is a line of, with the least that this declaration needs. */
const BLOCKS: readonly (readonly [words: readonly string[], before: string, after: string])[] = [
  [["step", "layer", "wait", "safety", "note", "for"], "recipe copied {\n", "\n}\n"],
  [["lead", "existing", "wear", "finish"], "piece copied {\n  surface top {\n    ", "\n  }\n}\n"],
  [["ignition", "air", "country", "ventilation", "open"], "shop copied {\n  ", "\n}\n"],
  [["built"], "piece copied {\n  ", "\n}\n"],
  [
    ["flash", "rags", "cure", "recoat", "touch", "thin", "limits"],
    "material copied {\n  family oil varnish\n  ",
    "\n}\n",
  ],
];

const QUOTED = /`([^`]+)`/gu;

/** Remedies, those of what is told below another finding, and what rules say of themselves on their pages. */
const texts: readonly string[] = [
  ...findings.flatMap(({ remedy, also = [], related }) => [
    remedy,
    ...also,
    ...related.map(({ message }) => message),
  ]),
  ...RULES.map(({ docs }) => docs.remedy),
];

/** What only a report can fill in: it must not pass as it stands. */
const PLACEHOLDER = "YYYY-MM-DD";

const isLine = (quoted: string): boolean =>
  quoted.includes(" ") && BLOCKS.some(([words]) => words.includes(quoted.split(" ")[0]!));

const quotedLines = [
  ...new Set(texts.flatMap((text) => [...text.matchAll(QUOTED)].map(([, quoted]) => quoted!)).filter(isLine)),
];

/** Findings on the notation alone: a line by itself may well want a duty or a wait. */
const LANGUAGE = new Set(RULES.filter(({ group }) => group === "language").map(({ id }) => id));

/** Names of the example's own that no built-in material stands for. */
const problemsOf = (line: string): readonly string[] => {
  const [, before, after] = BLOCKS.find(([words]) => words.includes(line.split(" ")[0]!))!;
  return findingsOf(`${before}${line}${after}`)
    .filter(
      ({ rule }) =>
        LANGUAGE.has(rule) &&
        rule !== "unused-name" &&
        !rule.startsWith("missing-") &&
        !rule.endsWith("-not-stated"),
    )
    .map(({ message }) => `${line} -> ${message}`);
};

describe("lines that remedies quote", () => {
  it("are there to be looked at", () => {
    expect(quotedLines.length).toBeGreaterThan(30);
  });

  it("are lines of the notation", () => {
    const written = quotedLines.filter((line) => !line.split(" ").includes(PLACEHOLDER));
    expect(written.flatMap(problemsOf)).toEqual([]);
  });

  it("never pass with a place that only a laboratory's report can fill in", () => {
    const open = quotedLines.filter((line) => line.split(" ").includes(PLACEHOLDER));
    expect(open).toContain("lead none_found by laboratory YYYY-MM-DD");
    for (const line of open) expect(problemsOf(line), line).not.toEqual([]);
  });
});
