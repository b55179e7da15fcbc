/**
 * Text in, text out: how the tests of the grammar look at a tree.
 * A problem is drawn as `line:column "what it stands on" message [fix]`, with lines and columns from 1.
 */
import { createLineIndex, positionAt } from "../../grammar/src/line-index.ts";
import { fileProblems, parseFile } from "../../grammar/src/parse.ts";
import { ownTokens } from "../../grammar/src/tokens-of.ts";
import type { Declaration, FileTree, SyntaxProblem } from "../../grammar/src/tree.ts";
import { declarations } from "./declarations.ts";
import { printBody } from "./print-tree.ts";

/** The syntax errors of a text, drawn. */
export function problemsOf(text: string): string[] {
  const index = createLineIndex(text);
  return fileProblems(parseFile(text)).map((problem) => {
    const { line, column } = positionAt(index, problem.span.start);
    const on = JSON.stringify(text.slice(problem.span.start, problem.span.end));
    const fix = problem.fix === undefined ? "" : ` [${problem.fix.title}]`;
    return `${line + 1}:${column + 1} ${on} ${problem.message.replaceAll("\n", " / ")}${fix}`;
  });
}

/** The messages only. */
export function messagesOf(text: string): string[] {
  return fileProblems(parseFile(text)).map((problem) => problem.message);
}

/** The text after the fix of its first error that has one; fixes that follow from it are made, too. */
export function mended(text: string): string {
  const fix = fileProblems(parseFile(text)).find((problem) => problem.fix !== undefined)?.fix;
  return fix === undefined ? text : text.slice(0, fix.span.start) + fix.text + text.slice(fix.span.end);
}

/** The typed view of the declarations, without spans. */
export function outline(text: string): string {
  return declarations(parseFile(text))
    .map((declaration) => printBody({ ...declaration.body, problems: [] }).replace(/ \d+-\d+$/gmu, ""))
    .join("\n");
}

/** The declaration of a text that has one. */
export function onlyDeclaration(text: string): Declaration {
  return declarations(parseFile(text))[0]!.body.syntax;
}

/** A line in a block of the kind given, as a whole file. */
export function inBlock(block: string, line: string): string {
  switch (block) {
    case "surface":
      return `piece p {\n  surface s {\n    ${line}\n  }\n}\n`;
    case "layer":
      return `recipe r {\n  layer m x 2 {\n    ${line}\n  }\n}\n`;
    default:
      return `${block} n {\n  ${line}\n}\n`;
  }
}

/** The text of a tree, put together from its tokens. */
export function textOfTokens(tree: FileTree): string {
  return tree.pieces
    .flatMap(ownTokens)
    .map((token) => token.text)
    .join("");
}

/** All problems of a tree with offsets in their piece, and the length of that piece. */
export function problemsWithBounds(
  tree: FileTree,
): { readonly problem: SyntaxProblem; readonly length: number }[] {
  return tree.pieces.flatMap((piece) => {
    const problems =
      piece.kind === "trivia" ? [] : piece.kind === "stray" ? piece.problems : piece.body.problems;
    return problems.map((problem) => ({ problem, length: piece.length }));
  });
}
