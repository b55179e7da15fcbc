/**
 * The second language: every text that the extension shows has its German, every German text is of one that is shown, and both
 * have the same places to fill and the same commands to click.
 */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { ROOT } from "../../client/bundles.ts";
import { findingsCount, NOT_SAFE } from "../../client/src/findings-count.ts";
import { COATINGS, LOOKS, PIECES, PLACES, WOODS } from "../../server/src/starter/answers.ts";
import { TEMPLATES } from "../../server/src/starter/templates.ts";

const read = (name: string): Readonly<Record<string, string>> =>
  JSON.parse(readFileSync(path.join(ROOT, name), "utf8"));

interface Asked {
  /** Texts that are asked for by themselves. */
  readonly texts: readonly string[];
  /** What is asked for by something else, as written. */
  readonly others: readonly string[];
}

/** The first argument of every `l10n.t(…)` in a source, or of what else asks for a text there. */
function askedIn(file: string, asking = "l10n.t"): Asked {
  const texts: string[] = [];
  const others: string[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText() === asking) {
      const [first] = node.arguments;
      if (first && ts.isStringLiteral(first)) texts.push(first.text);
      else others.push(first?.getText() ?? "");
    }
    node.forEachChild(look);
  };
  const text = readFileSync(file, "utf8");
  look(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return { texts, others };
}

const asked = [
  ...globSync("client/src/**/*.ts", { cwd: ROOT }).map((name) => askedIn(path.join(ROOT, name))),
  // The drawing in the page of the bench view, which is that of the sheets.
  askedIn(path.join(ROOT, "server/src/reports/section-svg.ts"), "say"),
];

/** All that a count of findings asks for: none, one and two of each level. */
function countWords(): readonly string[] {
  const words = new Set<string>();
  const say = (text: string): string => {
    words.add(text);
    return text;
  };
  for (const levels of [[], [0, 1, 2, 3], [0, 0, 1, 1, 2, 2, 3, 3]]) findingsCount(levels, say);
  return [...words];
}

/** What is asked for by a name is one of these. */
const NAMED = [
  ...[...PIECES, ...WOODS, ...COATINGS, ...LOOKS, ...PLACES, ...TEMPLATES].flatMap(({ label, detail }) => [
    label,
    detail,
  ]),
  ...countWords(),
  NOT_SAFE,
];

/** `{0}`, and the commands and settings that links lead to. */
const fixedIn = (text: string): readonly string[] =>
  [...(text.match(/\{\d\}|\]\(command:[^)]+\)|`#?[^`]+`/gu) ?? [])].toSorted();

/** German words where a pattern is told in the words of the notation. */
const WORDED = new Set(["setting.findings.lowest"]);

describe("German", () => {
  const manifest = read("client/package.nls.json");
  const german = read("client/package.nls.de.json");
  const bundle = read("client/l10n/bundle.l10n.de.json");

  test("has every text of the manifest, in its order", () => {
    expect(Object.keys(german)).toEqual(Object.keys(manifest));
  });

  test("has every text of the extension, and no other", () => {
    const texts = new Set([...asked.flatMap((each) => each.texts), ...NAMED]);
    expect(texts.size).toBeGreaterThan(100);
    expect(Object.keys(bundle).toSorted()).toEqual([...texts].toSorted());
  });

  test("what is asked for by a name is known here", () => {
    expect([...new Set(asked.flatMap(({ others }) => others))].toSorted()).toEqual([
      "NOT_SAFE",
      "detail",
      "label",
      "text",
    ]);
  });

  test("has the same places to fill, commands and settings", () => {
    for (const [key, text] of Object.entries(german))
      if (!WORDED.has(key)) expect(fixedIn(text), key).toEqual(fixedIn(manifest[key]!));
    for (const [key, text] of Object.entries(bundle)) expect(fixedIn(text), key).toEqual(fixedIn(key));
  });

  test("is German: nothing is left as it was but names", () => {
    const same = Object.entries(german).filter(([key, text]) => text === manifest[key]);
    expect(same.map(([key]) => key)).toEqual(["extension.displayName", "view.container", "matcher.label"]);
    const kept = Object.entries(bundle).filter(([key, text]) => text === key);
    expect(kept.map(([key]) => key).toSorted()).toEqual(["MDF", "Material", "Teak"]);
    for (const text of [...Object.values(german), ...Object.values(bundle)]) expect(text.trim()).not.toBe("");
  });
});
