/**
 * Leaves the explanations and examples of the rules, and the sources of the chemicals, out of a bundle that shows none.
 * They are most of the text of the rules: the tests run the examples, the pages are made from both, and of the programs
 * only the command line prints them (`explain`, and the explanations in SARIF).
 */
import { readFileSync } from "node:fs";
import type { Plugin } from "esbuild";
import ts from "typescript";

/** What a rule (`RuleMeta`, `RuleDocs`) and a chemical tell to people who ask for it; see `summaries.generated.ts` for the rest. */
const EXPLAINING: ReadonlySet<string> = new Set([
  "failing",
  "passing",
  "summary",
  "why",
  "remedy",
  "sources",
]);

const RULE_OR_CHEMICALS = /[\\/]core[\\/](?:rules[\\/][a-z]+[\\/]|knowledge[\\/]chemicals-)[a-z-]+\.ts$/;

/** Tables of which only the documentation and the tests show the sources. */
const UNSHOWN_SOURCES =
  /[\\/]core[\\/]knowledge[\\/](?:care|duties|existing|ignition|incompatible|layer-relation|solvents|spot-tests)\.ts$/;
const UNSHOWN: ReadonlySet<string> = new Set(["source", "advice"]);
const FAMILIES = /[\\/]core[\\/]knowledge[\\/](?:families-[a-z-]+|family-fragments)\.ts$/;
/** The sources of a family that no card shows: of those only the page of the language and the tests speak. */
const OF_NO_CARD: ReadonlySet<string> = new Set([
  "binder",
  "buildsFilm",
  "dissolvedBy",
  "dissolvedUncuredBy",
  "duties",
  "evensStain",
  "filmRangeUm",
  "hardness",
  "raisesGrain",
  "takesStain",
  "thinUpTo",
  "unfitFor",
]);

/** The constants that hold them, by their types or their names. */
const HOLDER = /: (?:Trade|Language)Rule$|_CHEMICALS$/u;

/** What the constants of a file stand in, and their values. */
const PASSED: ReadonlySet<ts.SyntaxKind> = new Set([
  ts.SyntaxKind.SourceFile,
  ts.SyntaxKind.VariableStatement,
  ts.SyntaxKind.VariableDeclarationList,
  ts.SyntaxKind.AsExpression,
  ts.SyntaxKind.ArrayLiteralExpression,
  ts.SyntaxKind.ObjectLiteralExpression,
]);

export const withoutExplanations: Plugin = {
  name: "without-explanations",
  setup({ onLoad }) {
    for (const [filter, cut] of [
      [RULE_OR_CHEMICALS, emptied],
      [FAMILIES, withoutSourcesOfFamilies],
      [UNSHOWN_SOURCES, withoutSources],
    ] as const)
      onLoad({ filter }, ({ path }) => ({ contents: cutOnce(path, cut), loader: "ts" }));
  },
};

/** Several bundles of one build leave out the same; what was cut from a text holds for as long as that is the text. */
function cutOnce(path: string, cut: (file: string, text: string) => string): string {
  const text = readFileSync(path, "utf8");
  const before = CUT.get(path);
  if (before?.text === text) return before.contents;
  const contents = cut(path, text);
  CUT.set(path, { text, contents });
  return contents;
}

const CUT = new Map<string, { readonly text: string; readonly contents: string }>();

/** The text of a file without its examples and explanations. Who explains nothing never asks for them. */
function emptied(file: string, text: string): string {
  const found: ts.PropertyAssignment[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node)) {
      const name = node.name.getText();
      if (EXPLAINING.has(name)) found.push(node);
      else if (name === "docs") node.initializer.forEachChild(look);
    } else if (ts.isVariableDeclaration(node)) {
      const declared = node.name.getText() + (node.type === undefined ? "" : `: ${node.type.getText()}`);
      if (HOLDER.test(declared)) node.initializer?.forEachChild(look);
    } else if (PASSED.has(node.kind)) {
      node.forEachChild(look);
    }
  };
  look(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return withoutNodes(text, found);
}

/** The text of a table whose sources are told nowhere, nor what it advises beside the rules. */
function withoutSources(file: string, text: string): string {
  const found: ts.Node[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node) && UNSHOWN.has(node.name.getText())) found.push(node);
    // Why layers go together is told by the page of the language alone.
    else if (ts.isCallExpression(node) && ["fine", "abraded"].includes(node.expression.getText()))
      found.push(...node.arguments);
    // What a duty's word means tells its source to whoever asks; what brings a duty tells none.
    else if (!ts.isVariableDeclaration(node) || node.name.getText() !== "DUTIES") node.forEachChild(look);
  };
  look(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return withoutNodes(text, found);
}

/** The text of a table of families with those sources alone that a card shows. */
function withoutSourcesOfFamilies(file: string, text: string): string {
  const found: ts.PropertyAssignment[] = [];
  const look = (node: ts.Node, inSources: boolean): void => {
    const isHolder =
      (ts.isPropertyAssignment(node) && node.name.getText() === "sources") ||
      (ts.isVariableDeclaration(node) && node.name.getText().endsWith("_SOURCES"));
    if (inSources && ts.isPropertyAssignment(node) && OF_NO_CARD.has(node.name.getText())) found.push(node);
    else node.forEachChild((child) => look(child, inSources || isHolder));
  };
  look(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true), false);
  return withoutNodes(text, found);
}

/** A text without some properties and arguments, in its order, nor the commas behind them. */
const withoutNodes = (text: string, nodes: readonly ts.Node[]): string =>
  nodes.reduceRight(
    (rest, node) => rest.slice(0, node.getStart()) + rest.slice(node.end).replace(/^\s*,/, ""),
    text,
  );
