/**
 * What the product exports, the product uses: a function that only a test calls is no part of the product, and a test of
 * it shows nothing about it. Oracles, and helpers of tests, belong into `tests`.
 *
 * An export that its own file uses as well may be asked for by a test alone.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { globSync } from "tinyglobby";
import ts from "typescript";
import { expect, test } from "vitest";

/** Exports that nothing in the product imports, with the reason. */
const ALLOWED: Readonly<Record<string, string>> = {
  "client/src/extension.ts activate": "called by the editor",
  "client/src/extension.ts deactivate": "called by the editor",
  "client/src/extension-web.ts activate": "called by the editor",
  "client/src/extension-web.ts deactivate": "called by the editor",
  "client/packing/list.ts npmFiles":
    "package.json repeats the list, and a test holds the two against each other",
  "server/src/core/rules/retired.ts RETIRED_RULES":
    "a list that keeps ids from being given again, which a test sees to",
  "server/src/core/rules/suppressions.ts suppressionsIn":
    "the reading of comments without the findings that they concern, which are what the product asks for",
};

const ROOT = path.resolve(import.meta.dirname, "../..");
const FILES = globSync(["grammar/**/*.ts", "server/**/*.ts", "client/**/*.ts"], {
  cwd: ROOT,
  ignore: ["**/dist/**", "**/node_modules/**"],
});

interface Exported {
  readonly file: string;
  readonly name: string;
}

const keyOf = ({ file, name }: Exported): string => `${file} ${name}`;

/** What a file exports, what it imports from others, and how often it says each name. */
function readFile(file: string): {
  readonly exported: readonly Exported[];
  readonly imported: readonly Exported[];
  readonly said: ReadonlyMap<string, number>;
} {
  const source = ts.createSourceFile(
    file,
    readFileSync(path.join(ROOT, file), "utf8"),
    ts.ScriptTarget.Latest,
  );
  const exported: Exported[] = [];
  const imported: Exported[] = [];
  const said = new Map<string, number>();
  const targetOf = (specifier: string): string => path.posix.join(path.posix.dirname(file), specifier);
  for (const statement of source.statements) {
    if (!ts.canHaveModifiers(statement)) continue;
    const modifiers = ts.getModifiers(statement) ?? [];
    if (!modifiers.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) continue;
    if (ts.isVariableStatement(statement))
      for (const { name } of statement.declarationList.declarations)
        exported.push({ file, name: name.getText(source) });
    else if ("name" in statement && statement.name)
      exported.push({ file, name: (statement.name as ts.Identifier).text });
  }
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) said.set(node.text, (said.get(node.text) ?? 0) + 1);
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier) {
      const target = targetOf((node.moduleSpecifier as ts.StringLiteral).text);
      const bindings = ts.isImportDeclaration(node) ? node.importClause?.namedBindings : node.exportClause;
      if (bindings && "elements" in bindings)
        for (const { name, propertyName } of bindings.elements)
          imported.push({ file: target, name: (propertyName ?? name).text });
      else imported.push({ file: target, name: "*" });
    }
    const [argument] = ts.isCallExpression(node) ? node.arguments : [];
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword && argument)
      imported.push({ file: targetOf((argument as ts.StringLiteral).text), name: "*" });
    if (ts.isImportTypeNode(node))
      imported.push({ file: targetOf(node.argument.getText(source).slice(1, -1)), name: "*" });
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { exported, imported, said };
}

test("every export is used by the product, in its own file or in another", () => {
  const files = FILES.map(readFile);
  const imported = new Set(files.flatMap((file) => file.imported.map(keyOf)));
  const unused = files
    .flatMap(({ exported, said }) => exported.filter(({ name }) => (said.get(name) ?? 0) < 2))
    .filter(({ file, name }) => !imported.has(`${file} ${name}`) && !imported.has(`${file} *`))
    .map(keyOf);
  expect(unused.toSorted()).toEqual(Object.keys(ALLOWED).toSorted());
});
