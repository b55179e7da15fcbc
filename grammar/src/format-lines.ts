/**
 * The lines of a file as the formatter sees them: what each is, how deep it stands, and whether it is left alone.
 *
 * What a line is comes from the tree, so that whatever the parser could not read is not touched.  A line whose words
 * would be other words with other blanks between them is left alone as well; only lines that no rule of the notation
 * reads, such as an unknown field, can be so.
 */
import { indexAt } from "./binary-search.ts";
import { readsTheSame } from "./format-spacing.ts";
import { isTrivia, lex } from "./lexer.ts";
import { innerStatements, statementsOf } from "./names.ts";
import { ownTokens, tokensOfBody } from "./tokens-of.ts";
import type {
  Declaration,
  DeclarationTree,
  FilePiece,
  FileTree,
  Respelling,
  Span,
  Statement,
  Token,
} from "./tree.ts";

/** A token of the plain form of a line. */
export interface CodeToken extends Token {
  /** Where what was written for it ends. It may be longer or shorter than the token, or nothing at all. */
  readonly end: number;
}

export interface FormatLine {
  /** Where its text starts, after a byte order mark. */
  readonly start: number;
  /** Where its text ends, before the line end. */
  readonly end: number;
  /** Empty where the file ends first. */
  readonly lineEnd: string;
  /** Its tokens without blanks and comment, at offsets of the file, in their plain form. */
  readonly code: readonly CodeToken[];
  readonly comment?: Token;
  readonly role: "blank" | "comment" | "statement" | "continuation" | "closing";
  readonly opensBlock: boolean;
  /** The statement that it goes on with, or that a comment within it belongs to. */
  readonly continues?: FormatLine;
  /** How many blocks are around it. */
  readonly depth: number;
  /** The block that it stands in; 0 is the file. */
  readonly block: number;
  /** It has a syntax error, or belongs to something that has. */
  readonly isBroken: boolean;
  /** It stays exactly as it is. */
  readonly isLeft: boolean;
  /** It stands for all lines of a declaration that is formatted by itself. */
  readonly apart?: DeclarationTree;
}

type Draft = { -readonly [K in keyof FormatLine]: FormatLine[K] } & { code: CodeToken[] };

/** The lines of a file, in order; of declarations that are formatted by themselves (`isApart`) one for all. */
export function formatLines(
  tree: FileTree,
  isApart: (piece: DeclarationTree) => boolean,
): readonly FormatLine[] {
  const lines = readLines(tree, isApart);
  const at = lineFinder(lines);
  for (const piece of tree.pieces) {
    if (piece.kind === "declaration" && isApart(piece)) {
      continue;
    }
    if (piece.kind === "declaration") {
      readDeclaration(piece, lines, at);
    } else if (piece.kind === "stray") {
      breakRange(lines, at(piece.offset), at(lastOf(piece)));
    }
  }
  for (const line of lines) {
    line.isLeft =
      line.apart !== undefined || line.isBroken || (line.code.length > 0 && !readsTheSame(line.code));
  }
  return lines;
}

type LineFinder = (offset: number) => number;

// ---------------------------------------------------------------------------------------------------------------
// Lines and blocks

interface Reader {
  readonly lines: Draft[];
  /** The blocks around the next token; the file is the outermost. */
  readonly blocks: number[];
  nBlocks: number;
  isNewLine: boolean;
}

function readLines(tree: FileTree, isApart: (piece: DeclarationTree) => boolean): Draft[] {
  const reader: Reader = { lines: [], blocks: [0], nBlocks: 1, isNewLine: true };
  for (const piece of tree.pieces) {
    if (piece.kind === "declaration" && isApart(piece)) {
      reader.lines.push(lineApart(piece, reader.nBlocks));
      reader.nBlocks += 1;
      reader.isNewLine = true;
      continue;
    }
    // Where braces do not match, nothing is indented by them.
    const hasBlocks = piece.kind === "declaration" && piece.body.bracesMatch;
    for (const token of ownTokens(piece)) {
      readToken(reader, { ...token, start: token.start + piece.offset }, hasBlocks);
    }
  }
  return reader.lines;
}

function readToken(reader: Reader, token: Token, hasBlocks: boolean): void {
  const isMark = token.start === 0 && token.text === "\ufeff";
  if (isMark) {
    return;
  }
  if (reader.isNewLine) {
    reader.lines.push(newLine(token.start));
    reader.isNewLine = false;
  }
  const line = reader.lines.at(-1)!;
  if (token.kind === "newline") {
    line.lineEnd = token.text;
    reader.isNewLine = true;
    return;
  }
  line.end = token.start + token.text.length;
  if (token.kind === "space") {
    return;
  }
  if (hasBlocks && token.text === "}" && token.kind === "punctuation") {
    reader.blocks.pop();
  }
  if (line.role === "blank") {
    line.depth = reader.blocks.length - 1;
    line.block = reader.blocks.at(-1)!;
    line.role = "comment";
  }
  if (token.kind === "comment" || token.kind === "doc-comment") {
    line.comment = token;
    return;
  }
  line.code.push({ ...token, end: line.end });
  if (hasBlocks && token.text === "{" && token.kind === "punctuation") {
    line.opensBlock = true;
    reader.blocks.push(reader.nBlocks);
    reader.nBlocks += 1;
  }
}

/** In a block of its own, so that the comments above and below it do not share a column. */
function lineApart(piece: DeclarationTree, block: number): Draft {
  const lineEnd = tokensOfBody(piece.body).at(-1)!.text;
  const end = piece.offset + piece.length - lineEnd.length;
  return { ...newLine(piece.offset), end, lineEnd, role: "statement", block, apart: piece };
}

function newLine(start: number): Draft {
  return {
    start,
    end: start,
    lineEnd: "",
    code: [],
    role: "blank",
    opensBlock: false,
    depth: 0,
    block: 0,
    isBroken: false,
    isLeft: false,
  };
}

/** Finds the line of an offset; the line end belongs to its line. */
function lineFinder(lines: readonly FormatLine[]): LineFinder {
  return (offset) => indexAt(lines, offset, ({ start }) => start);
}

// ---------------------------------------------------------------------------------------------------------------
// What a line is, and what is wrong with it

function readDeclaration(piece: DeclarationTree, lines: readonly Draft[], at: LineFinder): void {
  const [first, last] = [at(piece.offset), at(lastOf(piece))];
  if (!piece.body.bracesMatch) {
    breakRange(lines, first, last);
    return;
  }
  const known = new Set<FormatLine>();
  const statements = statementSpans(piece.body.syntax).map((span) => ({
    first: at(span.start + piece.offset),
    last: at(span.end - 1 + piece.offset),
  }));
  for (const statement of statements) {
    readStatement(lines, statement, known);
  }
  for (const line of lines.slice(first, last + 1)) {
    if (line.code.length > 0 && !known.has(line)) {
      line.role = "closing";
      // Other lines belong to a block that nothing may open.
      line.isBroken ||= line.code.length > 1 || line.code[0]!.text !== "}";
    }
  }
  for (const { span } of piece.body.problems) {
    breakRange(lines, at(span.start + piece.offset), at(span.end + piece.offset));
  }
  for (const statement of statements) {
    if (lines.slice(statement.first, statement.last + 1).some((line) => line.isBroken)) {
      breakRange(lines, statement.first, statement.last);
    }
  }
  respell(piece, lines, at);
}

/** Puts plain forms in the place of what was written in other words. */
function respell({ body, offset }: DeclarationTree, lines: readonly Draft[], at: LineFinder): void {
  for (const respelling of body.respellings) {
    const start = respelling.span.start + offset;
    const line = lines[at(start)]!;
    if (!line.isBroken) {
      line.code = respelt(line.code, { start, end: respelling.span.end + offset }, respelling);
    }
  }
}

function respelt(code: readonly CodeToken[], { start, end }: Span, { text }: Respelling): CodeToken[] {
  const put = lex(text)
    .filter((token) => !isTrivia(token))
    .map((token, idx): CodeToken => ({ ...token, start: idx === 0 ? start : end, end }));
  const before = code.filter((token) => token.end <= start);
  const behind = code.slice(before.length).filter((token) => token.start >= end);
  return [...before, ...put, ...behind];
}

function readStatement(
  lines: readonly Draft[],
  { first, last }: { readonly first: number; readonly last: number },
  known: Set<FormatLine>,
): void {
  const head = lines[first]!;
  head.role = "statement";
  known.add(head);
  for (const line of lines.slice(first + 1, last + 1)) {
    line.continues = head;
    if (line.code.length > 0) {
      line.role = "continuation";
      known.add(line);
    }
  }
}

/** The heads and statements of a declaration, without their blocks; in it. */
function statementSpans(declaration: Declaration): readonly Span[] {
  const below = (statement: Statement): readonly Span[] => [
    statement.span,
    ...innerStatements(statement).flatMap(below),
  ];
  return [declaration.headSpan, ...statementsOf(declaration).flatMap(below)];
}

function breakRange(lines: readonly Draft[], first: number, last: number): void {
  for (const line of lines.slice(first, last + 1)) {
    line.isBroken = true;
  }
}

/** Where the last thing of a piece stands that is more than a blank. */
function lastOf(piece: FilePiece): number {
  const last = ownTokens(piece).findLast((token) => token.kind !== "space" && token.kind !== "newline");
  return piece.offset + (last?.start ?? 0);
}
