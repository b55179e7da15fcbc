/**
 * How findings read: a headline that fits on one line, then why, then what to do, and words that people use today.
 */
import { globSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { exampleText } from "../../server/src/core/rules/explain.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf } from "../harness/check-text.ts";
import { sampleAnalyst, sampleNames } from "../harness/samples.ts";

const ROOT = new URL("../../", import.meta.url);
const LONGEST = 70;

const samples = sampleAnalyst().analysis();
const findings: readonly FileFinding[] = [
  ...RULES.flatMap(({ failing }) => failing.flatMap((example) => findingsOf(`${exampleText(example)}\n`))),
  ...sampleNames.flatMap((name) => samples.findings(name)),
];

describe("headlines", () => {
  const isLong = ({ headline }: { readonly headline: string }): boolean =>
    headline.length > LONGEST || headline.endsWith(".");
  const long = findings.flatMap((each) => [
    ...(isLong(each) ? [each.rule] : []),
    ...partsOf(each).flatMap((part) => (isLong(part) ? [part.rule] : [])),
  ]);

  it("have at most 70 characters and no full stop", () => {
    expect([...new Set(long)].sort()).toEqual([]);
  });

  it("are one line, and so is every other part but a list of reasons or of what to do in turn", () => {
    for (const { headline, remedy, where = "", why, parts } of findings) {
      expect(headline).not.toContain("\n");
      const [, ...steps] = remedy.split("\n");
      for (const step of steps) expect(step).toMatch(/^(?:\d\. |Where (?:none|lead) is found)/u);
      expect(where).not.toContain("\n");
      if (!parts) expect(why.split("\n").length, why).toBeLessThanOrEqual(2);
    }
  });

  it("are followed by why and what to do, in every finding of the trade", () => {
    const trade = new Set(RULES.filter(({ group }) => group !== "language").map(({ id }) => id));
    const bare = findings.filter(({ rule, why, remedy }) => trade.has(rule) && (why === "" || remedy === ""));
    expect(bare.map(({ rule }) => rule)).toEqual([]);
  });
});

/** What reads oddly, each with what a reader expects. */
const OLD_WORDS: readonly (readonly [old: RegExp, instead: string])[] = [
  [/\breckon/iu, "calculate"],
  [/without further ado/iu, "automatically"],
  [/\bone (?:feels|sees|smells|knows|can|has|does)\b/iu, "you"],
  [/\bcomes? round\b|\bgo(?:es)? round\b|\bin (?:its|their) turn\b/iu, "cycle, circular"],
  [/(?<!\bthere )\b(?:is|are) no (?!longer|more|less|doubt|\d)/iu, "unknown, not a"],
  [/\bis nothing to\b/iu, "cannot be used to"],
  [/\bhand(?:s|ed|ing)? on\b/iu, "pass"],
  [/\bmend(?:s|ed|ing)?\b/iu, "fix"],
  [/\b[Pp]ut \d+ (?:more|coats) on\b/u, "add"],
  [/\bcupboard\b/iu, "on hand"],
  [/\bto and fro\b|\bstarts? afresh\b|\bnameable\b/iu, "say it plainly"],
  [/\bnot worked out\b/iu, "could not be calculated"],
  [/\bproves nothing safe\b|\bmakes (?:a|the) room safe\b/iu, "no calculation can show that a room is safe"],
  [/\bremarks?\b/iu, "information"],
];

/** Comments are for developers. */
const withoutComments = (source: string): string =>
  source.replace(/\/\*[\s\S]*?\*\//gu, "").replace(/^\s*\/\/.*$/gmu, "");

const oldWordsIn = (text: string): boolean => OLD_WORDS.some(([old]) => old.test(text));

const SOURCES = ["server/src/{reports,cli,features,lsp,reading}/**/*.ts", "client/src/**/*.ts"];
const PAGES = [
  "README.md",
  "CHANGELOG.md",
  "client/package.nls.json",
  "server/docs/*.md",
  "server/docs/book/*.md",
  "tests/reports/sheets/*",
];

const texts: readonly (readonly [name: string, text: string])[] = [
  ...RULES.map(({ id, docs, failing, passing }): [string, string] => [
    `rule ${id}`,
    [
      ...Object.values(docs).flat(),
      ...[...failing, ...passing].map(({ title }) => title),
      ...findings
        .filter(({ rule }) => rule === id)
        .flatMap(({ message, related, fixes }) => [
          message,
          ...related.map((each) => each.message),
          ...fixes.map(({ title }) => title),
        ]),
    ].join("\n"),
  ]),
  ...globSync([...SOURCES, ...PAGES], { cwd: ROOT }).map((file): [string, string] => {
    const text = readFileSync(new URL(file, ROOT), "utf8");
    // What is read as another word is what people say, not what we do.
    const own = text.replace(/`[^`\n]*` \(`[^`\n]*`\)/gu, "");
    return [file.replaceAll("\\", "/"), file.endsWith(".ts") ? withoutComments(text) : own];
  }),
];

describe("words", () => {
  it("are those of today", () => {
    expect(texts.filter(([, text]) => oldWordsIn(text)).map(([name]) => name)).toEqual([]);
  });
});
