/**
 * Where the cursor stands, told from the tokens alone: in which block, after what on its line, on which half-typed word.
 *
 * The tree of half-typed text is full of holes just where completion is asked for; the tokens are not. What is known of
 * names comes from the model all the same.
 */
import type { DeclarationTree, FileTree, Span, Token } from "../../../../grammar/src/tree.ts";
import { type BlockKind, FIELDS, STATEMENTS } from "../../../../grammar/src/vocabulary.ts";

export interface Cursor {
  readonly offset: number;
  /** The block whose line the cursor is on; `head` in the first line of a declaration. */
  readonly block: BlockKind | "head";
  /** The words that start the other lines of this block. */
  readonly stated: readonly string[];
  /** Tokens of the line before the half-typed word, without spaces and comments. */
  readonly before: readonly Token[];
  /** The half-typed word up to the cursor. */
  readonly prefix: string;
  /** The whole word that the cursor is in, to be replaced. */
  readonly replace: Span;
  /** A number stands just before: a unit is being typed, or `of`, or `coats`. */
  readonly afterNumber: boolean;
  /** The text of the line behind the word. */
  readonly rest: string;
  /** The inside of the string that the cursor is in. */
  readonly string?: Span;
  readonly declaration?: DeclarationTree;
  readonly text: string;
}

interface Block {
  readonly kind: BlockKind | "unknown";
  readonly words: { readonly text: string; readonly start: number }[];
}

/** Undefined where nothing can be completed: in a comment, in a number, outside the text. */
export function cursorAt(tree: FileTree, offset: number): Cursor | undefined {
  const { text } = tree;
  if (offset < 0 || offset > text.length) return undefined;
  const { tokens, declaration } = tokensAround(tree, offset);
  const inside = tokens.find(({ start, text: own }) => start < offset && offset <= start + own.length);
  if (inside?.kind === "comment" || inside?.kind === "doc-comment") return undefined;
  const string = inside?.kind === "string" ? stringAt(inside, offset) : undefined;
  if (inside?.kind === "string" && !string) return undefined;
  const lineStart = Math.max(text.lastIndexOf("\n", offset - 1), text.lastIndexOf("\r", offset - 1)) + 1;
  const line = text.slice(lineStart, offset);
  const unit = UNIT_BEFORE.exec(line)?.[1];
  const prefix = string ? text.slice(string.start, offset) : (unit ?? WORD_BEFORE.exec(line)![0]);
  if (!string && unit === undefined && IN_NUMBER.test(line.slice(0, line.length - prefix.length))) {
    return undefined;
  }
  const start = string ? inside!.start : offset - prefix.length;
  const after = (unit === undefined ? WORD_AFTER : UNIT_AFTER).exec(text.slice(offset))![0];
  const end = string ? string.end : offset + after.length;
  const state = scan(tokens, start);
  return {
    offset,
    block: state.isHead ? "head" : state.block.kind === "unknown" ? "file" : state.block.kind,
    stated: state.block.words.filter((word) => word.start !== start).map((word) => word.text),
    before: state.before,
    prefix,
    replace: { start: string ? string.start : start, end },
    afterNumber: unit !== undefined,
    rest: /^[^\r\n]*/u.exec(text.slice(end))![0],
    ...(string ? { string } : {}),
    ...(declaration && (state.isHead || state.block.kind !== "file") ? { declaration } : {}),
    text,
  };
}

/** A number, not the end of a name, a date or a time, and what of a unit there is behind it. */
const UNIT_BEFORE =
  /(?<![\p{L}\p{M}\p{N}_.:-])-?(?:\d+[ \t]+\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)[ \t]*((?:(?<=[ \t])air[ \t]+[^\s,]*|(?!\d)[\p{L}%°][^\s,(){}]*)?)$/u;
/** In a number, a date or a time there is nothing to complete. */
const IN_NUMBER = /(?<![\p{L}\p{M}\p{N}_])\d[\d./:-]*$/u;
const UNIT_AFTER = /^[\p{L}\p{N}%°/]*/u;
const WORD_BEFORE = /(?:\p{L}[\p{L}\p{M}\p{N}_-]*)?$/u;
const WORD_AFTER = /^[\p{L}\p{M}\p{N}_-]*/u;

/** Tokens of the declaration before or at the cursor and of what follows up to the cursor; starts are absolute. */
function tokensAround(
  tree: FileTree,
  offset: number,
): { readonly tokens: readonly Token[]; readonly declaration?: DeclarationTree } {
  const { pieces } = tree;
  let last = pieces.findLastIndex((piece) => piece.offset <= offset);
  // At the very end of a line without line end the cursor still belongs to the piece before.
  if (last > 0 && pieces[last]!.offset === offset && !/[\r\n]$/u.test(tree.text.slice(0, offset))) last -= 1;
  let first = last;
  while (first > 0 && pieces[first]!.kind !== "declaration") first -= 1;
  const tokens = pieces.slice(Math.max(0, first), last + 1).flatMap((piece) =>
    (piece.kind === "declaration" ? piece.body.tokens : piece.tokens).map((token) => ({
      ...token,
      start: token.start + piece.offset,
    })),
  );
  const piece = pieces[first];
  return piece?.kind === "declaration" ? { tokens, declaration: piece } : { tokens };
}

function stringAt(token: Token, offset: number): Span | undefined {
  const isClosed = token.text.length > 1 && token.text.endsWith('"');
  const span = { start: token.start + 1, end: token.start + token.text.length - (isClosed ? 1 : 0) };
  return span.start <= offset && offset <= span.end ? span : undefined;
}

interface State {
  readonly block: Block;
  readonly before: readonly Token[];
  readonly isHead: boolean;
}

/** Goes through the tokens with their blocks and keeps the state just before `at`. */
function scan(tokens: readonly Token[], at: number): State {
  const file: Block = { kind: "file", words: [] };
  let stack: readonly Block[] = [file];
  let line: readonly Token[] = [];
  let goesOn = false;
  let found: State | undefined;
  for (const token of tokens) {
    const top = stack.at(-1)!;
    if (!found && token.start >= at) found = { block: top, before: line, isHead: isHead(stack, line) };
    if (token.kind === "space" || token.kind === "comment" || token.kind === "doc-comment") continue;
    if (token.kind === "newline") {
      goesOn = line.at(-1)?.text === ",";
      if (!goesOn) line = [];
    } else if (token.text === "{") {
      stack = [...stack, { kind: blockOf(top, line), words: [] }];
      line = [];
    } else if (token.text === "}") {
      stack = stack.length > 1 ? stack.slice(0, -1) : stack;
      line = [];
    } else {
      // A comma at the end of a line goes on, unless the next line starts with a word of the block.
      if (goesOn && token.start !== at && startsLine(top, token.text)) line = [];
      goesOn = false;
      if (line.length === 0) top.words.push({ text: token.text, start: token.start });
      line = [...line, token];
    }
  }
  const top = stack.at(-1)!;
  return found ?? { block: top, before: line, isHead: isHead(stack, line) };
}

const isHead = (stack: readonly Block[], line: readonly Token[]): boolean =>
  stack.length === 1 && line.length > 0;

function startsLine({ kind }: Block, word: string): boolean {
  if (kind === "unknown" || kind === "file") return false;
  return (kind !== "layer" && Object.hasOwn(FIELDS[kind], word)) || Object.hasOwn(STATEMENTS[kind], word);
}

function blockOf(outer: Block, line: readonly Token[]): Block["kind"] {
  const word = line[0]?.text;
  if (outer.kind === "file") {
    return word === "material" || word === "piece" || word === "shop" || word === "recipe" || word === "job"
      ? word
      : "unknown";
  }
  if (outer.kind === "piece" && word === "surface") return "surface";
  return (outer.kind === "recipe" || outer.kind === "layer") && word === "layer" ? "layer" : "unknown";
}
