/**
 * Leaves the explanations and examples of the rules, and the sources of the chemicals, out of a bundle that shows none.
 * They are most of the text of the rules: the tests run the examples, the pages are made from both, and of the programs
 * only the command line prints them (`explain`, and the explanations in SARIF).
 */
import { readFileSync } from "node:fs";
import type { Plugin } from "esbuild";
import ts from "typescript";

/** What a rule (`RuleMeta`, `RuleDocs`) tells to people who ask for it, and nothing in its place; its summary stays. */
const EXPLAINING: ReadonlyMap<string, string> = new Map([
  ["failing", "[]"],
  ["passing", "[]"],
  ["why", '""'],
  ["remedy", '""'],
  ["sources", "[]"],
]);

const RULE_OR_CHEMICALS = /[\\/]core[\\/](?:rules[\\/][a-z]+[\\/]|knowledge[\\/]chemicals-)[a-z-]+\.ts$/;

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
    onLoad({ filter: RULE_OR_CHEMICALS }, ({ path }) => ({
      contents: emptied(path, readFileSync(path, "utf8")),
      loader: "ts",
    }));
  },
};

/** The text of a file with empty lists and texts where its examples and explanations stood. */
function emptied(file: string, text: string): string {
  const found: { readonly value: ts.Expression; readonly nothing: string }[] = [];
  const look = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node)) {
      const name = node.name.getText();
      const nothing = EXPLAINING.get(name);
      if (nothing !== undefined) found.push({ value: node.initializer, nothing });
      else if (name === "docs") node.initializer.forEachChild(look);
    } else if (ts.isVariableDeclaration(node)) {
      const declared = node.name.getText() + (node.type === undefined ? "" : `: ${node.type.getText()}`);
      if (HOLDER.test(declared)) node.initializer?.forEachChild(look);
    } else if (PASSED.has(node.kind)) {
      node.forEachChild(look);
    }
  };
  look(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return found.reduceRight(
    (rest, { value, nothing }) => rest.slice(0, value.getStart()) + nothing + rest.slice(value.end),
    text,
  );
}
