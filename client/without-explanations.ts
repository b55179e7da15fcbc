/**
 * Leaves the explanations and examples of the rules, and the sources of the chemicals, out of a bundle that shows none.
 * They are most of the text of the rules: the tests run the examples, the pages are made from both, and of the programs
 * only the command line prints them (`explain`, and the explanations in SARIF).
 */
import { readFileSync } from "node:fs";
import type { Plugin } from "esbuild";
import ts from "typescript";

/** What a rule (`RuleMeta`, `RuleDocs`) and a chemical tell to people who ask for it; a rule's summary stays. */
const EXPLAINING: ReadonlySet<string> = new Set(["failing", "passing", "why", "remedy", "sources"]);

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
  return found.reduceRight((rest, property) => {
    const after = rest.slice(property.end);
    return rest.slice(0, property.getStart()) + after.replace(/^\s*,/, "");
  }, text);
}
