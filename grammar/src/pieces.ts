/**
 * Splits a file, or a section of one, into declarations and what stands between them.
 *
 * Every character of the text belongs to exactly one piece.  A declaration takes the `##` lines directly above it along;
 * one that lost its `}` ends before the next declaration.  Lines that start no declaration are gathered into one stray
 * piece, so that a lost head line is one error and not one for each line of its block.
 */
import { type DeclarationLayout, layoutDeclaration, startsDeclaration } from "./layout.ts";
import { endOf, type LexToken, lex } from "./lexer.ts";
import { type Chunk, chunkEnd, chunkStart, firstDocLine, type SourceLine, sourceLines } from "./lines.ts";
import { t } from "./translate.ts";
import type { Span, SyntaxProblem } from "./tree.ts";
import { DECLARATION_WORDS } from "./vocabulary.ts";

/** A part of the file; its tokens are found by its offsets. */
export interface RawPiece {
  readonly kind: "declaration" | "trivia" | "stray";
  readonly start: number;
  readonly end: number;
  /** Of a stray piece, with offsets in the file. */
  readonly problems: readonly SyntaxProblem[];
  /** How a sound declaration at the start of the text is laid out: by itself it would be laid out in the same way. */
  readonly layout?: DeclarationLayout;
}

/** A text cut up, with the tokens and lines that it was cut up by. */
export interface SplitText {
  readonly tokens: readonly LexToken[];
  readonly lines: readonly SourceLine[];
  readonly pieces: RawPiece[];
}

/** The text of a file, cut up. */
export function splitFile(text: string): SplitText {
  const tokens = lex(text);
  const lines = sourceLines(tokens);
  const ctx: Ctx = {
    lines,
    chunks: lines.flatMap((line) => line.chunks),
    pieces: [],
    end: text.startsWith("\ufeff") ? 1 : 0,
    next: 0,
  };
  if (ctx.end > 0) {
    ctx.pieces.push({ kind: "trivia", start: 0, end: ctx.end, problems: [] });
  }
  while (ctx.next < ctx.chunks.length) {
    if (startsDeclaration(ctx.chunks[ctx.next]!)) {
      takeDeclaration(ctx);
    } else {
      takeStray(ctx);
    }
  }
  takeTrivia(ctx, text.length);
  return { tokens, lines, pieces: ctx.pieces };
}

interface Ctx {
  readonly lines: readonly SourceLine[];
  readonly chunks: readonly Chunk[];
  readonly pieces: RawPiece[];
  /** Where the last piece ended. */
  end: number;
  next: number;
}

function takeDeclaration(ctx: Ctx): void {
  const head = ctx.chunks[ctx.next]!;
  const start = head.isFirst ? ctx.lines[firstDocLine(ctx.lines, head.line)]!.start : chunkStart(head);
  takeTrivia(ctx, start);
  if (!head.isFirst) {
    ctx.pieces.push(sharedLine(ctx.end));
  }
  const layout = layoutDeclaration(ctx.lines, ctx.chunks, ctx.next);
  ctx.next = layout.next;
  const end = layout.isClosed ? lineEndAfter(ctx, layout.end) : openEnd(ctx);
  const isSound = layout.isClosed && layout.bracesMatch && layout.problems.length === 0;
  ctx.pieces.push({
    kind: "declaration",
    start: ctx.end,
    end,
    problems: [],
    ...(isSound && ctx.end === 0 && { layout }),
  });
  ctx.end = end;
}

function takeStray(ctx: Ctx): void {
  const from = ctx.next;
  while (ctx.next < ctx.chunks.length && (ctx.next === from || !startsDeclaration(ctx.chunks[ctx.next]!))) {
    ctx.next += 1;
  }
  const run = ctx.chunks.slice(from, ctx.next);
  takeTrivia(ctx, run[0]!.isFirst ? ctx.lines[run[0]!.line]!.start : chunkStart(run[0]!));
  const end = lineEndAfter(ctx, chunkEnd(run.at(-1)!));
  ctx.pieces.push({ kind: "stray", start: ctx.end, end, problems: strayProblems(run) });
  ctx.end = end;
}

function takeTrivia(ctx: Ctx, to: number): void {
  if (to > ctx.end) {
    ctx.pieces.push({ kind: "trivia", start: ctx.end, end: to, problems: [] });
    ctx.end = to;
  }
}

/** The end of the line, unless something else of the file stands on it. */
function lineEndAfter(ctx: Ctx, offset: number): number {
  const previous = ctx.chunks[ctx.next - 1]!;
  return previous.isLast ? ctx.lines[previous.line]!.end : offset;
}

/** A declaration without its `}` goes on to the comments and blank lines before what follows it. */
function openEnd(ctx: Ctx): number {
  let line = ctx.chunks[ctx.next - 1]!.line + 1;
  const follower = ctx.chunks[ctx.next];
  const limit = follower === undefined ? ctx.lines.length : firstDocLine(ctx.lines, follower.line);
  while (line < limit && !isCommentAtMargin(ctx.lines[line]!)) {
    line += 1;
  }
  return ctx.lines[line - 1]!.end;
}

function isCommentAtMargin(line: SourceLine): boolean {
  return line.comment !== undefined && line.comment.start === line.start;
}

/** Nothing but an error: the piece before it ends on the line on which the next one starts. */
function sharedLine(offset: number): RawPiece {
  const problem: SyntaxProblem = {
    message: t`expected a line of its own for this declaration`,
    span: { start: offset, end: offset },
    fix: { title: t`Start a new line`, span: { start: offset, end: offset }, text: "\n" },
  };
  return { kind: "stray", start: offset, end: offset, problems: [problem] };
}

function strayProblems(run: readonly Chunk[]): SyntaxProblem[] {
  const problems: SyntaxProblem[] = [];
  const leading = run.findIndex((chunk) => chunk.closes === undefined);
  const braces = leading < 0 ? run : run.slice(0, leading);
  for (const chunk of braces) {
    const span = { start: chunkStart(chunk), end: chunkEnd(chunk) };
    problems.push({
      message: t`this \`}\` closes nothing`,
      span,
      fix: { title: t`Remove the \`}\``, span, text: "" },
    });
  }
  const line = leading < 0 ? undefined : run[leading];
  return line === undefined ? problems : [...problems, notADeclaration(line)];
}

function notADeclaration(chunk: Chunk): SyntaxProblem {
  const words = Object.keys(DECLARATION_WORDS).map((word) => `\`${word}\``);
  const span: Span = { start: chunkStart(chunk), end: endOf(chunk.tokens.at(-1) ?? chunk.opens!) };
  return {
    message: t`expected a declaration: ${words.slice(0, -1).join(", ")} or ${words.at(-1)!}`,
    span,
  };
}
