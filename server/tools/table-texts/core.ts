/** The texts in tables of the reading of declarations: what they are called, what is expected, and what to write instead. */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { FIELDS, PARAMETER_TYPES, SHAPES } from "../../../grammar/src/vocabulary.ts";
import { ELSEWHERE } from "../../src/core/knowledge/choices.ts";
import { DIMENSIONS } from "../../src/core/measure/read-quantity.ts";
import { NOT_KNOWN } from "../../src/core/model/lowering.ts";

const CORE = path.resolve(import.meta.dirname, "..", "..", "src", "core");

export const coreTexts = (): readonly string[] => [
  ...Object.values(DIMENSIONS).map(({ noun }) => noun),
  ...Object.keys(FIELDS),
  ...PARAMETER_TYPES,
  ...Object.values(SHAPES).flatMap(({ sizes }) => sizes.map((size) => size.replace(/[?~]$/u, ""))),
  NOT_KNOWN,
  ...Object.values(ELSEWHERE).flatMap((words) => Object.values(words)),
  ...textsOf("model/lowering.ts", "WITHOUT_FIGURE", "ON_ONE_LINE"),
  ...textsOf("knowledge/choices.ts", "SUPPLY", "LEAF", "WOOL", "NO_FAMILY"),
  ...globSync(["model/*.ts", "resolution/*.ts"], { cwd: CORE }).flatMap((file) => handedIn(sourceOf(file))),
];

/** What a list of words is called, by the function that is handed it and the place among its arguments. */
const CALLED: Readonly<Record<string, number>> = {
  readWord: 3,
  checkWord: 3,
  reportUnknown: 1,
  modelNamed: 1,
};

/** What words and figures are called where they are read: arguments of `readWord` and its like, `what` and `words` of objects. */
function handedIn(source: ts.SourceFile): readonly string[] {
  const found: string[] = [];
  const take = (node: ts.Node | undefined): void => {
    if (node && ts.isStringLiteralLike(node)) found.push(node.text);
  };
  const look = (node: ts.Node): void => {
    if (ts.isCallExpression(node)) take(node.arguments[CALLED[node.expression.getText()] ?? -1]);
    if (ts.isPropertyAssignment(node) && /^(?:what|words)$/u.test(node.name.getText()))
      take(node.initializer);
    node.forEachChild(look);
  };
  look(source);
  return found;
}

/** The texts in constants of a file that it keeps to itself. */
export function textsOf(file: string, ...names: readonly string[]): readonly string[] {
  const found: string[] = [];
  const take = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node)) found.push(node.text);
    else node.forEachChild(take);
  };
  const look = (node: ts.Node): void => {
    if (ts.isVariableDeclaration(node) && names.includes(node.name.getText()) && node.initializer)
      take(node.initializer);
    else node.forEachChild(look);
  };
  look(sourceOf(file));
  return found;
}

const sourceOf = (file: string): ts.SourceFile =>
  ts.createSourceFile(file, readFileSync(path.join(CORE, file), "utf8"), ts.ScriptTarget.Latest, true);
