/**
 * What can be folded: blocks, statements over several lines, comments, runs of `use`, and what stands between
 * `# region` and `# endregion`.
 *
 * Braces are matched as they stand, so that folding works in a file that is half typed.
 */

import type { DeclarationTree, FileTree, Span, Token } from "../../../grammar/src/tree.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import type { Program } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import { allStatements } from "../views/places/statement-extent.ts";
import { isComment, lineTokens, tokenSpan, tokensOfPiece } from "./file-tokens.ts";
import type { FoldingInfo } from "./types.ts";

/** In the order of the text; those that fit on one line are among them. */
export function foldingsOf(program: Program, file: FileId): readonly FoldingInfo[] {
  const tree = program.files.get(file)?.tree;
  if (tree === undefined) return [];
  const declarations = tree.pieces.filter((piece) => piece.kind === "declaration");
  const lines = lineTokens(tree);
  return [
    ...declarations.flatMap(blocks),
    ...declarations.flatMap(statements),
    ...comments(lines),
    ...regions(lines),
    ...uses(tree),
  ].toSorted((a, b) => a.span.start - b.span.start || b.span.end - a.span.end);
}

function blocks(declaration: DeclarationTree): readonly FoldingInfo[] {
  const open: number[] = [];
  return tokensOfPiece(declaration).flatMap((token): readonly FoldingInfo[] => {
    if (token.kind !== "punctuation") return [];
    if (token.text === "{") open.push(token.start + 1);
    const start = token.text === "}" ? open.pop() : undefined;
    return start === undefined ? [] : [{ kind: "block", span: { start, end: token.start } }];
  });
}

/** Heads and statements that a comma carries over a line end. */
function statements({ body, offset }: DeclarationTree): readonly FoldingInfo[] {
  const { headSpan } = body.syntax;
  return [headSpan, ...allStatements(body.syntax).map(({ span }) => span)]
    .filter(({ start, end }) => /[\r\n]/u.test(body.text.slice(start, end)))
    .map(({ start, end }) => ({ kind: "statement", span: { start: start + offset, end: end + offset } }));
}

type Lines = readonly (readonly Token[])[];

const REGION = /^#\s*(end)?region\b/u;

const commentOf = (line: readonly Token[]): Token | undefined =>
  line[0] !== undefined && isComment(line[0]) ? line[0] : undefined;

/** Comments on lines of their own, one below the other. */
function comments(lines: Lines): readonly FoldingInfo[] {
  const runs: Token[][] = [[]];
  for (const line of lines) {
    const comment = commentOf(line);
    if (comment === undefined || REGION.test(comment.text)) runs.push([]);
    else runs.at(-1)!.push(comment);
  }
  return runs.flatMap((run) => (run.length > 1 ? [{ kind: "comment", span: spanOfRun(run) }] : []));
}

function regions(lines: Lines): readonly FoldingInfo[] {
  const open: Token[] = [];
  return lines.flatMap((line): readonly FoldingInfo[] => {
    const comment = commentOf(line);
    const mark = comment && REGION.exec(comment.text);
    if (!comment || !mark) return [];
    if (mark[1] === undefined) {
      open.push(comment);
      return [];
    }
    const first = open.pop();
    return first === undefined ? [] : [{ kind: "region", span: spanOfRun([first, comment]) }];
  });
}

/** `use` lines with nothing but blank lines and comments between them. */
function uses({ pieces }: FileTree): readonly FoldingInfo[] {
  const runs: Span[][] = [[]];
  for (const piece of pieces) {
    if (piece.kind === "declaration" && piece.body.syntax.kind === "use") {
      runs.at(-1)!.push(absoluteSpan(piece, piece.body.syntax.span));
    } else if (piece.kind !== "trivia") runs.push([]);
  }
  return runs.flatMap((run) =>
    run.length > 1 ? [{ kind: "uses", span: { start: run[0]!.start, end: run.at(-1)!.end } }] : [],
  );
}

function spanOfRun(run: readonly Token[]): Span {
  return { start: run[0]!.start, end: tokenSpan(run.at(-1)!).end };
}
