/**
 * Cuts lexed text into physical lines, and those into chunks: what stands between the braces of a line.
 *
 * A well-formed line is one chunk, which may end with `{` or be a lone `}`.  A line that breaks this rule becomes several
 * chunks, so that the layout can report it and still read every part.  Nothing here knows the vocabulary.
 */
import type { IToken } from "chevrotain";
import { endOf, isComment, isSpace, isTrivia } from "./lexer.ts";
import { DocComment, LeftBrace, Newline, RightBrace } from "./tokens.ts";

export interface SourceLine {
  readonly start: number;
  /** After the line end. */
  readonly end: number;
  readonly kind: "blank" | "comment" | "doc" | "code";
  readonly comment?: IToken;
  readonly chunks: readonly Chunk[];
}

export interface Chunk {
  /** Without the brace. */
  readonly tokens: readonly IToken[];
  /** The `{` that ends the chunk. */
  readonly opens?: IToken;
  /** The `}` that the chunk is; it has no tokens then. */
  readonly closes?: IToken;
  readonly line: number;
  readonly indent: number;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

/** The physical lines of the text. */
export function sourceLines(tokens: readonly IToken[]): SourceLine[] {
  const lines: SourceLine[] = [];
  let current: IToken[] = [];
  for (const token of tokens) {
    current.push(token);
    if (token.tokenType === Newline) {
      lines.push(sourceLine(current, lines.length));
      current = [];
    }
  }
  if (current.length > 0) {
    lines.push(sourceLine(current, lines.length));
  }
  return lines;
}

/** Where the text of a chunk starts. */
export function chunkStart(chunk: Chunk): number {
  return (chunk.tokens[0] ?? chunk.opens ?? chunk.closes)!.startOffset;
}

/** Where the text of a chunk ends. */
export function chunkEnd(chunk: Chunk): number {
  return endOf((chunk.opens ?? chunk.closes ?? chunk.tokens.at(-1))!);
}

/**
 * The index of the first of the `##` lines directly above a line, or of the line itself when it has none. Plain comments
 * may stand among them.
 */
export function firstDocLine(lines: readonly SourceLine[], line: number): number {
  let first = line;
  for (let idx = line - 1; idx >= 0; idx--) {
    const kind = lines[idx]!.kind;
    if (kind === "doc") {
      first = idx;
    } else if (kind !== "comment") {
      break;
    }
  }
  return first;
}

/** The Markdown of the `##` lines directly above a line. */
export function docsAbove(lines: readonly SourceLine[], line: number): string {
  return lines
    .slice(firstDocLine(lines, line), line)
    .filter((above) => above.kind === "doc")
    .map((above) => above.comment!.image.replace(/^##+ ?/u, "").trimEnd())
    .join("\n");
}

function sourceLine(tokens: readonly IToken[], line: number): SourceLine {
  const comment = tokens.find(isComment);
  const significant = tokens.filter((token) => !isTrivia(token));
  const start = tokens[0]!.startOffset;
  return {
    start,
    end: endOf(tokens.at(-1)!),
    kind: lineKind(significant, comment),
    comment,
    chunks: cutAtBraces(significant, line, indentOf(tokens)),
  };
}

function lineKind(significant: readonly IToken[], comment: IToken | undefined): SourceLine["kind"] {
  if (significant.length > 0) {
    return "code";
  }
  if (comment === undefined) {
    return "blank";
  }
  return comment.tokenType === DocComment ? "doc" : "comment";
}

function indentOf(tokens: readonly IToken[]): number {
  const first = tokens.find((token) => token.image !== "\ufeff");
  return first !== undefined && isSpace(first) ? first.image.length : 0;
}

function cutAtBraces(significant: readonly IToken[], line: number, indent: number): Chunk[] {
  const parts: Pick<Chunk, "tokens" | "opens" | "closes">[] = [];
  let current: IToken[] = [];
  for (const token of significant) {
    if (token.tokenType === LeftBrace) {
      parts.push({ tokens: current, opens: token });
      current = [];
    } else if (token.tokenType === RightBrace) {
      if (current.length > 0) {
        parts.push({ tokens: current });
      }
      parts.push({ tokens: [], closes: token });
      current = [];
    } else {
      current.push(token);
    }
  }
  if (current.length > 0) {
    parts.push({ tokens: current });
  }
  return parts.map((part, idx) => ({
    ...part,
    line,
    indent,
    isFirst: idx === 0,
    isLast: idx === parts.length - 1,
  }));
}
