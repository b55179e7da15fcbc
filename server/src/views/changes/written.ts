/**
 * What a file says, declaration by declaration, in lines that are the same however it is laid out: plain forms, one blank
 * between words, no comments. Where the order of lines means nothing, they stand in the order of the alphabet.
 */
import { applyChanges, formatFile } from "../../../../grammar/src/format.ts";
import { parseFile } from "../../../../grammar/src/parse.ts";
import { tokensOfBody } from "../../../../grammar/src/tokens-of.ts";
import type { Declaration, DeclarationTree, FileTree, Token } from "../../../../grammar/src/tree.ts";

export type DeclaredKind = Declaration["kind"];

export interface WrittenDeclaration {
  readonly kind: DeclaredKind;
  /** As in `DeclarationTree.key`. */
  readonly key: string;
  /** Empty where none is given. */
  readonly name: string;
  readonly title?: string;
  /** A line in a block has the head of the block before it: `surface top › wood oak`. */
  readonly lines: readonly string[];
}

/** Every declaration of a file, in the order of the text. */
export function writtenDeclarations(tree: FileTree): readonly WrittenDeclaration[] {
  const plain = parseFile(applyChanges(tree.text, formatFile(tree).changes));
  return plain.pieces.flatMap((piece) => (piece.kind === "declaration" ? [written(piece)] : []));
}

function written({ key, body }: DeclarationTree): WrittenDeclaration {
  const { kind, name, title } = body.syntax;
  return {
    kind,
    key,
    name: name?.text ?? "",
    ...(title === undefined ? {} : { title: title.value }),
    lines: inMeaningfulOrder(kind, linesOf(tokensOfBody(body))),
  };
}

/** Recipes are done in the order of their lines, and so is what a job applies; all other lines state facts. */
function inMeaningfulOrder(kind: DeclaredKind, lines: readonly string[]): readonly string[] {
  if (kind === "recipe") return lines;
  const [head = [], rest] = [lines.slice(0, 1), lines.slice(1)];
  const isOrdered = (line: string): boolean => kind === "job" && line.startsWith("apply ");
  return [...head, ...rest.filter((line) => !isOrdered(line)).toSorted(), ...rest.filter(isOrdered)];
}

/** The declaration's own braces begin no block within it. */
function linesOf(tokens: readonly Token[]): readonly string[] {
  const docs: string[] = [];
  const lines: string[] = [];
  const heads: string[] = [];
  let line = "";
  const end = (): string => {
    const said = line.trim();
    if (said !== "") lines.push([...heads.slice(1), said].join(" › "));
    line = "";
    return said;
  };
  for (const { kind, text } of tokens) {
    if (kind === "doc-comment") docs.push(text.trim());
    else if (kind === "newline") end();
    else if (kind === "punctuation" && text === "{") heads.push(end());
    else if (kind === "punctuation" && text === "}") {
      end();
      heads.pop();
    } else if (kind === "space") line += line === "" ? "" : " ";
    else if (kind !== "comment") line += text;
  }
  end();
  const [head, ...rest] = lines;
  return [...(head === undefined ? [] : [head]), ...docs, ...rest];
}
