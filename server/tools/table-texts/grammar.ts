/** The texts in tables of the words of the notation and of its mistakes. */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { RIGHT_LINES } from "../../../grammar/src/right-lines.ts";
import * as tokens from "../../../grammar/src/tokens.ts";
import {
  DECLARATION_WORDS,
  DONE_FACTS,
  FIELDS,
  SHAPES,
  STATEMENTS,
  TAILS,
  VERBS,
} from "../../../grammar/src/vocabulary.ts";

export const grammarTexts = (): readonly string[] => [
  ...expectedTexts(),
  ...Object.values(RIGHT_LINES).flatMap((lines) => Object.values(lines)),
  ...[DECLARATION_WORDS, DONE_FACTS, SHAPES, TAILS, VERBS].flatMap((table) =>
    Object.values<{ readonly doc: string }>(table).map(({ doc }) => doc),
  ),
  ...[FIELDS, STATEMENTS].flatMap((table) =>
    Object.values<Readonly<Record<string, { readonly doc: string }>>>(table).flatMap((words) =>
      Object.values(words).map(({ doc }) => doc),
    ),
  ),
];

/**
 * What the parser can expect, which it names in plain English on every line that it reads and tells where the line goes
 * on otherwise: the names of the tokens and of the sizes of shapes, and what its rules are handed.
 */
export function expectedTexts(): readonly string[] {
  const labels = Object.values<unknown>(tokens).flatMap((each) =>
    typeof each === "object" && each !== null && "label" in each ? [String(each.label)] : [],
  );
  const sizes = Object.values(SHAPES).flatMap((shape) =>
    shape.sizes.map((size) => `the ${size.replace(/[?~]$/u, "")}`),
  );
  const folder = path.resolve(import.meta.dirname, "..", "..", "..", "grammar", "src");
  const handed = globSync(["parser*.ts", "line-reader.ts"], { cwd: folder }).flatMap((file) =>
    handedIn(readFileSync(path.join(folder, file), "utf8")),
  );
  return [...labels, ...sizes, ...handed].filter((text) => /\p{L}/u.test(text.replace(/`[^`]*`/gu, "")));
}

/** The methods that are handed what they expect. */
const EXPECTING: ReadonlySet<string> = new Set(
  "take,mismatch,value,quantity,range,sum,date,wordRun,expectedNext,givenValue,endOfPart".split(","),
);
/** The functions that give back what is expected, or look for it where nothing is said. */
const NAMING: ReadonlySet<string> = new Set(["needOf", "sizeName", "endOfPart", "endOfLine"]);

function handedIn(source: string): readonly string[] {
  const found: string[] = [];
  const take = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node)) found.push(node.text);
    else if (ts.isConditionalExpression(node)) [node.whenTrue, node.whenFalse].forEach(take);
    else if (ts.isBinaryExpression(node)) [node.left, node.right].forEach(take);
  };
  const look = (node: ts.Node, isNaming: boolean): void => {
    const isNext = isNaming || (isNamed(node) && NAMING.has(node.name.text));
    if (ts.isCallExpression(node) && (isNext || EXPECTING.has(calledOf(node)))) node.arguments.forEach(take);
    if (isNext && ts.isReturnStatement(node) && node.expression) take(node.expression);
    node.forEachChild((child) => look(child, isNext));
  };
  look(ts.createSourceFile("rules.ts", source, ts.ScriptTarget.Latest, true), false);
  return found;
}

const calledOf = (call: ts.CallExpression): string =>
  ts.isPropertyAccessExpression(call.expression) ? call.expression.name.text : "";

const isNamed = (node: ts.Node): node is ts.FunctionLikeDeclaration & { readonly name: ts.Identifier } =>
  ts.isFunctionLike(node) && node.name !== undefined && ts.isIdentifier(node.name);
