/**
 * Finds the logical lines and blocks of one declaration, before any line is parsed.
 *
 * Here live the rules about line ends, trailing commas and braces, and the recovery when a brace is missing or too many.
 * A first pass matches braces as they stand; only when that leaves the declaration open does a second pass also go by
 * indentation, so that a well-formed file never depends on how it is indented.  The result depends on the text of the
 * declaration alone: where it ends is decided by what could not belong to it.
 */
import { endOf, isWord, type LexToken } from "./lexer.ts";
import { type Chunk, chunkEnd, chunkStart, type SourceLine } from "./lines.ts";
import { lookUp } from "./look-up.ts";
import { RIGHT_LINES } from "./right-lines.ts";
import { isFieldWord } from "./spellings.ts";
import { Coats, Colon, Comma, LeftParen, NumberToken, RightParen, StringToken, With, X } from "./tokens.ts";
import { t } from "./translate.ts";
import type { LineBreak, Span, SyntaxProblem } from "./tree.ts";
import { type BlockKind, DECLARATION_WORDS, STATEMENTS, VERBS } from "./vocabulary.ts";

/** A statement, over all the physical lines that it takes, with its block. */
export interface LayoutNode {
  /** Without braces, and without a last comma that nothing follows. Never empty. */
  readonly tokens: readonly LexToken[];
  /** The physical line on which it starts. */
  readonly line: number;
  readonly block?: LayoutBlock;
  /** Braces stand behind it that it has no right to; what is in them has been read, or left out. */
  readonly hasBraces?: true;
}

export interface LayoutBlock {
  readonly kind: BlockKind;
  readonly nodes: readonly LayoutNode[];
}

export interface DeclarationLayout {
  readonly head: LayoutNode;
  readonly problems: readonly SyntaxProblem[];
  /** Index of the first chunk that does not belong to the declaration. */
  readonly next: number;
  /** Whether its block was closed by `}` (or it needs none). */
  readonly isClosed: boolean;
  /** Whether each of its braces has its partner. */
  readonly bracesMatch: boolean;
  /** Where the plain form starts a new line. */
  readonly breaks: readonly LineBreak[];
  readonly end: number;
}

/** Reads the declaration whose head is the chunk at `from`. */
export function layoutDeclaration(
  lines: readonly SourceLine[],
  chunks: readonly Chunk[],
  from: number,
): DeclarationLayout {
  const plain = runLayout(lines, chunks, from, false);
  if (plain.isClosed || !plain.hasInnerBlock) {
    return plain;
  }
  const indented = runLayout(lines, chunks, from, true);
  return indented.isClosed ? indented : plain;
}

/** Whether a chunk at the top level starts a declaration. */
export function startsDeclaration(chunk: Chunk): boolean {
  const word = firstWord(chunk);
  if (word === undefined || !Object.hasOwn(DECLARATION_WORDS, word)) {
    return false;
  }
  return chunk.indent === 0 || word !== "piece" || isClearHead(chunk, word);
}

// ---------------------------------------------------------------------------------------------------------------
// The reader

interface Ctx {
  readonly lines: readonly SourceLine[];
  readonly chunks: readonly Chunk[];
  readonly byIndent: boolean;
  /** Whether every brace has its partner, so that none can be missing. */
  readonly isBalanced: boolean;
  readonly problems: SyntaxProblem[];
  readonly breaks: LineBreak[];
  next: number;
  isOpen: boolean;
  bracesMatch: boolean;
  hasInnerBlock: boolean;
}

/** Deeper blocks than any recipe has are read as if they were not opened. */
const MAX_DEPTH = 40;

/** What a block needs to know of the line that opened it. */
interface Opener {
  readonly kind: BlockKind;
  readonly depth: number;
  readonly head: LayoutNode;
  readonly indent: number;
}

function runLayout(
  lines: readonly SourceLine[],
  chunks: readonly Chunk[],
  from: number,
  byIndent: boolean,
): DeclarationLayout & { readonly hasInnerBlock: boolean } {
  const word = firstWord(chunks[from]!)!;
  const kind = word === "use" ? "file" : (word as BlockKind);
  const isBalanced = hasAllBraces(chunks, from, kind);
  const ctx: Ctx = {
    lines,
    chunks,
    byIndent,
    isBalanced,
    problems: [],
    breaks: [],
    next: from,
    isOpen: false,
    bracesMatch: true,
    hasInnerBlock: false,
  };
  const head = readNode(ctx, "file", kind, 0, kind === "file");
  const last = chunks[ctx.next - 1]!;
  return {
    head,
    problems: ctx.problems,
    next: ctx.next,
    isClosed: !ctx.isOpen,
    bracesMatch: ctx.bracesMatch,
    breaks: ctx.breaks,
    end: chunkEnd(last),
    hasInnerBlock: ctx.hasInnerBlock,
  };
}

/** Whether the brace that closes the declaration is followed by its end. */
function hasAllBraces(chunks: readonly Chunk[], from: number, kind: BlockKind): boolean {
  let depth = 0;
  for (let idx = from; idx < chunks.length; idx++) {
    const chunk = chunks[idx]!;
    if (idx > from && startsDeclarationInside(chunk, kind)) {
      return false;
    }
    depth += chunk.opens !== undefined ? 1 : chunk.closes !== undefined ? -1 : 0;
    if (chunk.closes !== undefined && depth <= 0) {
      const follower = chunks[idx + 1];
      return depth === 0 && (follower === undefined || startsDeclarationInside(follower, kind));
    }
  }
  return false;
}

/** Reads a logical line of a block of kind `outer`, and its block of kind `kind`, to which it may have no right. */
function readNode(
  ctx: Ctx,
  outer: BlockKind,
  kind: BlockKind,
  depth: number,
  isLoose: boolean,
  first = ctx.chunks[ctx.next]!,
): LayoutNode {
  const line = readLine(ctx, depth === 0 ? kind : outer, first);
  const head: LayoutNode = { tokens: line.tokens, line: first.line };
  const opener: Opener = { kind, depth: depth + 1, head, indent: first.indent };
  if (line.opens !== undefined && depth >= MAX_DEPTH) {
    ctx.bracesMatch = false;
    reportStrayOpening(ctx, line.opens);
    return head;
  }
  if (line.opens !== undefined) {
    const word = firstOf(head);
    checkOpening(ctx, line, isLoose && (isWordOf(outer, word) || word === "then"));
  } else if (isLoose || !supplyBrace(ctx, opener)) {
    return head;
  }
  if (depth > 0) {
    ctx.hasInnerBlock = true;
  }
  return { ...head, block: { kind, nodes: readBlock(ctx, opener) } };
}

/** Joins the chunks of one statement, of which the first is the next one, or what is left of it. */
function readLine(ctx: Ctx, kind: BlockKind, first: Chunk): Chunk {
  let chunk = first;
  ctx.next += 1;
  if (chunk.tokens.length < 2 || chunk.tokens.at(-1)!.type !== Comma) {
    return chunk;
  }
  const tokens = [...chunk.tokens];
  while (tokens.length > 1 && tokens.at(-1)!.type === Comma) {
    const follower = ctx.chunks[ctx.next];
    if (chunk.opens !== undefined || follower === undefined || startsAfresh(follower, kind, tokens)) {
      return { ...chunk, tokens: dropLastComma(ctx, tokens) };
    }
    chunk = follower;
    for (const token of follower.tokens) {
      tokens.push(token);
    }
    ctx.next += 1;
  }
  return { ...chunk, tokens };
}

function startsAfresh(chunk: Chunk, kind: BlockKind, before: readonly LexToken[]): boolean {
  const word = firstWord(chunk);
  if (chunk.closes !== undefined || startsDeclarationInside(chunk, kind)) {
    return true;
  }
  if (word === undefined || !isWordOf(kind, word)) {
    return false;
  }
  return openParens(before) === 0 || chunk.tokens[1]?.type !== Colon;
}

/** Within open parentheses the parser misses the `)` at the same place, which is error enough. */
function dropLastComma(ctx: Ctx, tokens: readonly LexToken[]): readonly LexToken[] {
  const comma = spanOf(tokens.at(-1)!);
  if (openParens(tokens) <= 0) {
    ctx.problems.push({
      message: t`nothing goes on after this comma: remove it, or go on in the next line`,
      span: comma,
      fix: { title: t`Remove the comma`, span: comma, text: "" },
    });
  }
  return tokens.slice(0, -1);
}

// ---------------------------------------------------------------------------------------------------------------
// Blocks

function readBlock(ctx: Ctx, opener: Opener): LayoutNode[] {
  const nodes: LayoutNode[] = [];
  for (;;) {
    const chunk = ctx.chunks[ctx.next];
    if (chunk === undefined || endsUnclosed(ctx, chunk, opener)) {
      reportUnclosed(ctx, opener);
      return nodes;
    }
    if (chunk.closes === undefined) {
      for (const node of readInner(ctx, chunk, opener)) {
        nodes.push(node);
      }
    } else if (isExtraBrace(ctx, chunk, opener)) {
      reportExtraBrace(ctx, chunk);
      ctx.next += 1;
    } else {
      checkClosing(ctx, chunk, opener);
      ctx.next += 1;
      return nodes;
    }
  }
}

function readInner(ctx: Ctx, all: Chunk, opener: Opener): readonly LayoutNode[] {
  const { before, chunk } = linesBefore(ctx, all, opener);
  return before.length === 0 ? readRest(ctx, chunk, opener) : [...before, ...readRest(ctx, chunk, opener)];
}

/** The lines in front of one that opens a block, written on one with it: `built 1990; surface top {`. */
function linesBefore(
  ctx: Ctx,
  chunk: Chunk,
  opener: Opener,
): { readonly before: readonly LayoutNode[]; readonly chunk: Chunk } {
  const { tokens, opens, line } = chunk;
  if (opens === undefined) return { before: [], chunk };
  const cuts = cutsOf(tokens, line, opener);
  const last = cuts.at(-1);
  const rest = last && { ...chunk, tokens: tokens.slice(last.next), isFirst: false };
  const opensBlock = rest && (innerKind(opener.kind, firstWord(rest)) ?? bareKind(opener.kind, rest));
  return opensBlock === undefined
    ? { before: [], chunk }
    : { before: nodesOf(ctx, { tokens, line }, cuts), chunk: rest! };
}

function readRest(ctx: Ctx, chunk: Chunk, opener: Opener): readonly LayoutNode[] {
  if (chunk.tokens.length === 0) {
    ctx.bracesMatch = false;
    reportStrayOpening(ctx, chunk.opens!);
    ctx.next += 1;
    return [];
  }
  const word = firstWord(chunk);
  const kind = innerKind(opener.kind, word) ?? bareKind(opener.kind, chunk);
  const isLoose = kind === undefined;
  const node = readNode(ctx, opener.kind, kind ?? looseKind(opener.kind), opener.depth, isLoose, chunk);
  if (node.block === undefined) {
    return linesOf(ctx, node, opener);
  }
  if (!isLoose) {
    return [node];
  }
  const { block, ...line } = node;
  const head: LayoutNode = { ...line, hasBraces: true };
  if (word === "if") {
    // What is done in a case: the grammar says it of each line.
    return [node];
  }
  return opener.kind === "recipe" || opener.kind === "layer" ? [head, ...block.nodes] : [head];
}

/**
 * The lines that are written on one: `family wax; packs 1 L for 9.00`, in a block on one line also with commas or wide gaps
 * between its fields, and work that follows other work, as `sand 180, then dust`.
 */
function linesOf(ctx: Ctx, node: LayoutNode, opener: Opener): readonly LayoutNode[] {
  const { tokens, line } = node;
  const cuts = cutsOf(tokens, line, opener);
  const from = cuts.at(-1)?.next ?? 0;
  if (from === 0) return [node];
  const before = nodesOf(ctx, node, cuts);
  return from < tokens.length ? [...before, { tokens: tokens.slice(from), line }] : before;
}

/** What parts a line from the next: its tokens are those from `from` to `end`, and those of the next begin at `next`. */
interface Cut {
  readonly from: number;
  readonly end: number;
  readonly next: number;
}

/** The lines in front of the last, and where the plain form breaks them. */
function nodesOf(ctx: Ctx, { tokens, line }: LayoutNode, cuts: readonly Cut[]): readonly LayoutNode[] {
  return cuts.flatMap(({ from, end, next }) => {
    const follower = tokens[next];
    if (end <= from) {
      // Behind the brace of the line before, where the line ends anyway.
      const { start } = tokens[from]!;
      ctx.breaks.push({ start, end: follower?.start ?? endOf(tokens[end]!), text: "" });
      return [];
    }
    const start = endOf(tokens[end - 1]!);
    ctx.breaks.push(
      follower ? { start, end: follower.start } : { start, end: endOf(tokens[end]!), text: "" },
    );
    return [{ tokens: tokens.slice(from, end), line }];
  });
}

function cutsOf(tokens: readonly LexToken[], line: number, { kind, head }: Opener): readonly Cut[] {
  if (head.line !== line && !tokens.some(mayPart)) {
    return NO_CUTS;
  }
  const cuts: Cut[] = [];
  let from = 0;
  let depth = 0;
  for (let idx = 0; idx < tokens.length; idx += 1) {
    const token = tokens[idx]!;
    depth += token.type === LeftParen ? 1 : token.type === RightParen ? -1 : 0;
    if (depth !== 0 || idx < from) {
      continue;
    }
    const next = nextLineAt(tokens, idx, kind, { from, isInline: head.line === line });
    if (next === undefined) {
      continue;
    }
    cuts.push({ from, end: next.isApart ? idx + 1 : idx, next: next.at });
    from = next.at;
  }
  return cuts;
}

const NO_CUTS: readonly Cut[] = [];

/** What may stand between two lines of a block that is not written on one. */
const mayPart = ({ type, text }: LexToken): boolean => type === Comma || text === ";";

/** Where the next line begins, when this token or the gap behind it (`isApart`) stands between two. */
function nextLineAt(
  tokens: readonly LexToken[],
  idx: number,
  kind: BlockKind,
  { from, isInline }: { readonly from: number; readonly isInline: boolean },
): { readonly at: number; readonly isApart: boolean } | undefined {
  const token = tokens[idx]!;
  const next = tokens[idx + 1];
  if (next !== undefined && beginsDeclaration(tokens, idx + 1)) {
    return undefined;
  }
  if (token.text === ";" && token.kind === "unknown") {
    return next === undefined || isWord(next) ? { at: idx + 1, isApart: false } : undefined;
  }
  if (next === undefined) {
    return undefined;
  }
  if (token.type === Comma) {
    const isLine = isInline
      ? beginsLine(kind, next) && !(next.text === "wait" && tokens[from]!.text === "layer")
      : kind === "recipe" && followsWork(tokens, from, idx);
    return isLine ? { at: idx + 1, isApart: false } : undefined;
  }
  const isWide = next.start - endOf(token) > 1;
  const isLine = beginsLine(kind, next) || lookUp(RIGHT_LINES, kind)?.[next.text] !== undefined;
  return isInline && isWide && isLine ? { at: idx + 1, isApart: true } : undefined;
}

/** `use "…"`, `recipe name(`: at the start of a line it would be no line of a block. */
const beginsDeclaration = (tokens: readonly LexToken[], at: number): boolean =>
  (tokens[at]!.text === "use" && tokens[at + 1]?.type === StringToken) ||
  (tokens[at]!.text === "recipe" && tokens[at + 2]?.type === LeftParen);

const beginsLine = (kind: BlockKind, token: LexToken): boolean => isWord(token) && isWordOf(kind, token.text);

/** `sand 180, then dust`, `sand 180, dust`: work behind other work. Of a layer it is said how it goes on. */
function followsWork(tokens: readonly LexToken[], from: number, comma: number): boolean {
  const first = tokens[from]!.text;
  const isWork = first === "step" || first === "then" || isVerb(first);
  return isWork && isWorkAt(tokens, comma + 1);
}

/** Other words for a verb, of those that say nothing of how something else is done, as `wet` does. */
const ALSO_VERBS: ReadonlySet<string> = new Set([
  "vacuum",
  "hoover",
  "tack",
  "sweep",
  "denib",
  "polish",
  "wipe",
]);

const isVerb = (word: string): boolean => Object.hasOwn(VERBS, word) || ALSO_VERBS.has(word);

/** `then dust`, `dust with tack_cloth`, `dust`, and no more of a line than that. */
function isWorkAt(tokens: readonly LexToken[], at: number): boolean {
  const verb = tokens[at]?.text === "then" ? at + 1 : at;
  const behind = tokens[verb + 1];
  return (
    isVerb(tokens[verb]?.text ?? "") &&
    (behind === undefined || behind.type === Comma || behind.type === With || behind.type === NumberToken)
  );
}

/** The kind of the block that a word opens inside another, if it opens one. */
function innerKind(outer: BlockKind, word: string | undefined): BlockKind | undefined {
  if (outer === "piece" && word === "surface") {
    return "surface";
  }
  return (outer === "recipe" || outer === "layer") && word === "layer" ? "layer" : undefined;
}

/** `clear x 3 {`, `2 x clear {`, `2 coats of clear {`: a layer without the word opens its block all the same. */
function bareKind(outer: BlockKind, { tokens, opens }: Chunk): BlockKind | undefined {
  const [first, second] = tokens;
  if (opens === undefined || (outer !== "recipe" && outer !== "layer") || first === undefined) {
    return undefined;
  }
  const isNamed = isWord(first) && !isWordOf(outer, first.text) && second?.type === X;
  const isCounted = first.type === NumberToken && (second?.type === X || second?.type === Coats);
  return isNamed || isCounted ? "layer" : undefined;
}

/** How to read a block that stands after a line that opens none, such as a misspelt `surface`. */
function looseKind(outer: BlockKind): BlockKind {
  return outer === "piece" ? "surface" : outer;
}

/** Whether a line cannot belong to the block, so that its `}` must be missing. */
function endsUnclosed(ctx: Ctx, chunk: Chunk, opener: Opener): boolean {
  if (startsDeclarationInside(chunk, opener.kind)) {
    return true;
  }
  if (opener.depth < 2) {
    return false;
  }
  if (opener.kind === "surface" && firstWord(chunk) === "surface") {
    return true;
  }
  if (!ctx.byIndent || !chunk.isFirst) {
    return false;
  }
  return chunk.closes === undefined ? chunk.indent <= opener.indent : chunk.indent < opener.indent;
}

/** A `}` before the end: indented more than the head of the declaration, and its block goes on after it. */
function isExtraBrace(ctx: Ctx, chunk: Chunk, opener: Opener): boolean {
  const follower = ctx.chunks[ctx.next + 1];
  if (opener.depth > 1 || follower === undefined || follower.closes !== undefined) {
    return false;
  }
  const word = firstWord(follower);
  return (
    chunk.isFirst &&
    chunk.indent > opener.indent &&
    follower.isFirst &&
    follower.indent > opener.indent &&
    word !== undefined &&
    isWordOf(opener.kind, word) &&
    !startsDeclarationInside(follower, opener.kind)
  );
}

// ---------------------------------------------------------------------------------------------------------------
// Braces that are missing or in the wrong place

/** Goes on as if `{` were there when the next line shows that a block was meant. */
function supplyBrace(ctx: Ctx, opener: Opener): boolean {
  const follower = ctx.chunks[ctx.next];
  const isBraceBelow = follower?.tokens.length === 0 && follower.opens !== undefined;
  if (isBraceBelow || meansBlock(ctx, opener, follower)) {
    reportMissingBrace(ctx, opener.head, isBraceBelow ? follower.opens : undefined);
    ctx.next += isBraceBelow ? 1 : 0;
    return true;
  }
  if (opener.kind === "layer") {
    return false;
  }
  if (opener.head.tokens.length > 1) {
    reportMissingBrace(ctx, opener.head, undefined);
  }
  ctx.isOpen ||= opener.depth === 1;
  return false;
}

function meansBlock(ctx: Ctx, opener: Opener, follower: Chunk | undefined): boolean {
  if (follower === undefined || startsDeclarationInside(follower, opener.kind)) {
    return false;
  }
  if (opener.kind === "layer") {
    return !ctx.isBalanced && follower.indent > opener.indent && isClosedBelow(ctx, opener.indent);
  }
  const word = firstWord(follower);
  const isSibling = opener.kind === "surface" && word === "surface";
  const isInside = follower.indent > opener.indent || (word !== undefined && isWordOf(opener.kind, word));
  return !isSibling && (isInside || follower.closes !== undefined);
}

/** Whether the lines below that stand further in are followed by a `}` at the indent given. */
function isClosedBelow(ctx: Ctx, indent: number): boolean {
  let idx = ctx.next;
  while (idx < ctx.chunks.length && (!ctx.chunks[idx]!.isFirst || ctx.chunks[idx]!.indent > indent)) {
    idx += 1;
  }
  const chunk = ctx.chunks[idx];
  return chunk?.closes !== undefined && chunk.indent === indent && indent > 0;
}

function reportMissingBrace(ctx: Ctx, head: LayoutNode, below: LexToken | undefined): void {
  ctx.bracesMatch = false;
  const end = endOf(head.tokens.at(-1)!);
  const span = headSpan(head);
  if (below !== undefined) {
    const move = {
      title: t`Put the \`{\` on this line`,
      span: { start: end, end: endOf(below) },
      text: " {",
    };
    const isPlain = ctx.lines
      .slice(head.line, lineAt(ctx, below))
      .every((line) => line.comment === undefined);
    ctx.problems.push({
      message: t`\`{\` ends the line that it belongs to`,
      span: spanOf(below),
      ...(isPlain && { fix: move }),
    });
    return;
  }
  ctx.problems.push({
    message: t`expected \`{\` at the end of the line: \`${firstOf(head)}\` opens a block`,
    span,
    fix: { title: t`Add the \`{\``, span: { start: end, end }, text: " {" },
  });
}

function checkOpening(ctx: Ctx, chunk: Chunk, isLoose: boolean): void {
  if (isLoose) {
    reportStrayOpening(ctx, chunk.opens!);
  }
  if (!chunk.isLast) {
    breakBefore(ctx, endOf(chunk.opens!), ctx.chunks[ctx.next]!, chunk.indent + 2);
  }
}

/** What follows on the same line is a line of its own, unless it would begin another declaration there. */
function breakBefore(ctx: Ctx, start: number, chunk: Chunk, indent: number): void {
  const word = firstWord(chunk);
  const end = chunkStart(chunk);
  if (word !== undefined && Object.hasOwn(DECLARATION_WORDS, word) && isClearHead(chunk, word)) {
    ctx.problems.push({
      message: t`\`${word}\` begins a declaration: expected \`}\` and a new line before it`,
      span: { start: end, end: chunkEnd(chunk) },
      fix: { title: t`Start a new line`, span: { start, end }, text: `\n${" ".repeat(indent)}` },
    });
  } else {
    ctx.breaks.push({ start, end });
  }
}

function checkClosing(ctx: Ctx, chunk: Chunk, opener: Opener): void {
  const before = ctx.chunks[ctx.next - 1];
  if (!chunk.isFirst && before?.opens === undefined) {
    // As far in as what it closes: further in it might be taken for one too many.
    const text = `\n${" ".repeat(opener.indent)}`;
    ctx.breaks.push({ start: chunkEnd(before!), end: chunkStart(chunk), text });
  }
  const follower = ctx.chunks[ctx.next + 1];
  if (!chunk.isLast && opener.depth > 1 && follower?.closes === undefined) {
    breakBefore(ctx, chunkEnd(chunk), follower!, opener.indent);
  }
}

function reportStrayOpening(ctx: Ctx, brace: LexToken): void {
  const span = spanOf(brace);
  ctx.problems.push({
    message: t`expected the end of the line: this line opens no block`,
    span,
    fix: { title: t`Remove the \`{\``, span, text: "" },
  });
}

function reportExtraBrace(ctx: Ctx, chunk: Chunk): void {
  ctx.bracesMatch = false;
  const span = spanOf(chunk.closes!);
  ctx.problems.push({
    message: t`this \`}\` closes nothing`,
    span,
    fix: { title: t`Remove the \`}\``, span, text: "" },
  });
}

function reportUnclosed(ctx: Ctx, opener: Opener): void {
  ctx.bracesMatch = false;
  if (opener.depth === 1) {
    ctx.isOpen = true;
  }
  const last = ctx.lines[ctx.chunks[ctx.next - 1]!.line]!;
  const at = last.comment === undefined ? chunkEnd(ctx.chunks[ctx.next - 1]!) : endOf(last.comment);
  ctx.problems.push({
    message:
      opener.kind === "file"
        ? t`expected \`}\` on a line of its own at the end of this block`
        : t`expected \`}\` on a line of its own at the end of this ${opener.kind}`,
    span: headSpan(opener.head),
    fix: {
      title: t`Add the \`}\``,
      span: { start: at, end: at },
      text: `\n${" ".repeat(opener.indent)}}`,
    },
  });
}

// ---------------------------------------------------------------------------------------------------------------
// Words

/** A line inside a block that clearly begins a declaration: what is open must have lost its `}`. */
function startsDeclarationInside(chunk: Chunk, kind: BlockKind): boolean {
  const word = firstWord(chunk);
  if (word === undefined || !chunk.isFirst || !Object.hasOwn(DECLARATION_WORDS, word)) {
    return false;
  }
  return isClearHead(chunk, word) || (chunk.indent === 0 && !isWordOf(kind, word) && isWord(chunk.tokens[1]));
}

/** `kw name … {`, `recipe name(`, or `use "…"`. */
function isClearHead(chunk: Chunk, word: string): boolean {
  const second = chunk.tokens[1];
  if (word === "use") {
    return second?.type === StringToken;
  }
  const isCall = word === "recipe" && chunk.tokens[2]?.type === LeftParen;
  return isWord(second) && (chunk.opens !== undefined || isCall);
}

function isWordOf(kind: BlockKind, word: string): boolean {
  if (kind === "file") {
    return Object.hasOwn(DECLARATION_WORDS, word);
  }
  return (kind !== "layer" && isFieldWord(kind, word)) || Object.hasOwn(STATEMENTS[kind], word);
}

function firstWord(chunk: Chunk): string | undefined {
  return isWord(chunk.tokens[0]) ? chunk.tokens[0]!.text : undefined;
}

function firstOf(node: LayoutNode): string {
  return node.tokens[0]!.text;
}

/** From the keyword to the name. */
function headSpan(head: LayoutNode): Span {
  const last = isWord(head.tokens[1]) ? head.tokens[1]! : head.tokens[0]!;
  return { start: head.tokens[0]!.start, end: endOf(last) };
}

function openParens(tokens: readonly LexToken[]): number {
  const opened = tokens.filter((token) => token.type === LeftParen).length;
  return opened - tokens.filter((token) => token.type === RightParen).length;
}

function lineAt(ctx: Ctx, token: LexToken): number {
  return ctx.lines.findIndex((line) => token.start < line.end);
}

function spanOf(token: LexToken): Span {
  return { start: token.start, end: endOf(token) };
}
