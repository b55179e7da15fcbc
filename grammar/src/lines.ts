/**
 * Cuts lexed text into physical lines, and those into chunks: what stands between the braces of a line.
 *
 * A well-formed line is one chunk, which may end with `{` or be a lone `}`.  A line that breaks this rule becomes several
 * chunks, so that the layout can report it and still read every part.  Nothing here knows the vocabulary.
 */
import { endOf, isComment, isSpace, type LexToken } from "./lexer.ts";
import { DocComment, LeftBrace, Newline, RightBrace, Space } from "./tokens.ts";

export interface SourceLine {
  readonly start: number;
  /** After the line end. */
  readonly end: number;
  readonly kind: "blank" | "comment" | "doc" | "code";
  readonly comment?: LexToken;
  readonly chunks: readonly Chunk[];
}

export interface Chunk {
  /** Without the brace. */
  readonly tokens: readonly LexToken[];
  /** The `{` that ends the chunk. */
  readonly opens?: LexToken;
  /** The `}` that the chunk is; it has no tokens then. */
  readonly closes?: LexToken;
  readonly line: number;
  readonly indent: number;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

/** The physical lines of the text. */
export function sourceLines(tokens: readonly LexToken[]): SourceLine[] {
  const lines: SourceLine[] = [];
  for (let next = 0; next < tokens.length; ) {
    const from = next;
    while (next < tokens.length && tokens[next]!.type !== Newline) {
      next += 1;
    }
    next = Math.min(next + 1, tokens.length);
    lines.push(sourceLine(tokens, from, next, lines.length));
  }
  return lines;
}

/** Where the text of a chunk starts. */
export function chunkStart(chunk: Chunk): number {
  return (chunk.tokens[0] ?? chunk.opens ?? chunk.closes)!.start;
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
  const first = firstDocLine(lines, line);
  if (first === line) {
    return "";
  }
  return lines
    .slice(first, line)
    .filter((above) => above.kind === "doc")
    .map((above) => above.comment!.text.replace(/^##+ ?/u, "").trimEnd())
    .join("\n");
}

function sourceLine(tokens: readonly LexToken[], from: number, to: number, line: number): SourceLine {
  let comment: LexToken | undefined;
  let current: LexToken[] = [];
  const indent = indentOf(tokens, from);
  const chunks: Draft[] = [];
  const add = (own: readonly LexToken[], opens?: LexToken, closes?: LexToken): void => {
    const isFirst = chunks.length === 0;
    if (!isFirst) {
      chunks.at(-1)!.isLast = false;
    }
    chunks.push({ tokens: own, opens, closes, line, indent, isFirst, isLast: true });
  };
  for (let idx = from; idx < to; idx += 1) {
    const token = tokens[idx]!;
    if (token.type === LeftBrace) {
      add(current, token);
      current = [];
    } else if (token.type === RightBrace) {
      if (current.length > 0) {
        add(current);
      }
      add(NO_TOKENS, undefined, token);
      current = [];
    } else if (isComment(token)) {
      comment = token;
    } else if (token.type !== Space && token.type !== Newline) {
      current.push(token);
    }
  }
  if (current.length > 0) {
    add(current);
  }
  return {
    start: tokens[from]!.start,
    end: endOf(tokens[to - 1]!),
    kind: chunks.length > 0 ? "code" : kindWithoutCode(comment),
    comment,
    chunks,
  };
}

type Draft = { -readonly [K in keyof Chunk]: Chunk[K] };

const NO_TOKENS: readonly LexToken[] = [];

function kindWithoutCode(comment: LexToken | undefined): SourceLine["kind"] {
  if (comment === undefined) {
    return "blank";
  }
  return comment.type === DocComment ? "doc" : "comment";
}

/** The blanks before the first token of a line with code; marks of the order of bytes are none. */
function indentOf(tokens: readonly LexToken[], from: number): number {
  let first = from;
  while (tokens[first]?.text === "\ufeff") {
    first += 1;
  }
  const token = tokens[first];
  return token !== undefined && isSpace(token) ? token.text.length : 0;
}
