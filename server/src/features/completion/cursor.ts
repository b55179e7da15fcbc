/**
 * Where the cursor stands, told from the tokens alone: in which block, after what on its line, on which half-typed word.
 *
 * The tree of half-typed text is full of holes just where completion is asked for; the tokens are not. What is known of
 * names comes from the model all the same.
 */

import { isFieldWord, plainField } from "../../../../grammar/src/spellings.ts";
import type { DeclarationTree, FileTree, Span, Token } from "../../../../grammar/src/tree.ts";
import { type BlockKind, STATEMENTS } from "../../../../grammar/src/vocabulary.ts";
import { tokensOfPiece } from "../file-tokens.ts";

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
  const unit = unitBefore(line);
  const prefix = string ? text.slice(string.start, offset) : (unit ?? wordBefore(line));
  if (!string && unit === undefined && endsInNumber(line.slice(0, line.length - prefix.length))) {
    return undefined;
  }
  const start = string ? inside!.start : offset - prefix.length;
  const after = (unit === undefined ? WORD_CHARACTERS : UNIT_CHARACTERS).exec(text.slice(offset))![0];
  const end = string ? string.end : offset + after.length;
  const state = scan(tokens, start);
  return {
    offset,
    block: state.isHead ? "head" : state.block.kind === "unknown" ? "file" : state.block.kind,
    stated: state.block.words
      .filter((word) => word.start !== start)
      .map((word) => plainField(state.block.kind, word.text)),
    before: state.before,
    prefix,
    replace: { start: string ? string.start : start, end },
    afterNumber: unit !== undefined,
    rest: REST_OF_LINE.exec(text.slice(end))![0],
    ...(string ? { string } : {}),
    ...(declaration && (state.isHead || state.block.kind !== "file") ? { declaration } : {}),
    text,
  };
}

const WORD_CHARACTER = /[\p{L}\p{M}\p{N}_]/u;
const LETTER = /\p{L}/u;
const DIGIT = /\d/u;
const WORD_CHARACTERS = /^[\p{L}\p{M}\p{N}_-]*/u;
const UNIT_CHARACTERS = /^[\p{L}\p{N}%°/]*/u;
const REST_OF_LINE = /^[^\r\n]*/u;
const NUMBER = /-?(?:\d+[ \t]+\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)[ \t]*/uy;
const UNIT_START = /[\p{L}%°]/uy;

function matchAt(pattern: RegExp, text: string, offset: number): RegExpExecArray | null {
  pattern.lastIndex = offset;
  return pattern.exec(text);
}

const isLineEnd = (character: string | undefined): boolean => character === "\n" || character === "\r";

/** What there is of a unit behind the number that ends a line; undefined where no number does. */
function unitBefore(line: string): string | undefined {
  const ends = unitEnds(line);
  let before = "";
  for (let start = 0; start < line.length; start += before.length) {
    const character = String.fromCodePoint(line.codePointAt(start)!);
    if ((character === "-" || DIGIT.test(character)) && !GOES_ON.test(before)) {
      const unit = unitBehind(line, start, ends);
      if (unit !== undefined) return unit;
    }
    before = character;
  }
  return undefined;
}

/** Before a number: it is the end of a name, a date or a time. */
const GOES_ON = /[\p{L}\p{M}\p{N}_.:-]/u;

interface UnitEnds {
  /** From here on a line has nothing that ends a unit. */
  readonly word: number;
  /** Where the `air` of `air changes/h` stands that ends the line. */
  readonly air: number | undefined;
}

function unitEnds(line: string): UnitEnds {
  const second = startOfRun(line, (it) => !/[\s,]/u.test(it));
  const blanks = startOfRun(line.slice(0, second), (it) => it === " " || it === "\t");
  const isAir = blanks < second && line.slice(0, blanks).endsWith("air");
  return {
    word: startOfRun(line, (it) => !/[\s,(){}]/u.test(it)),
    air: isAir ? blanks - "air".length : undefined,
  };
}

function unitBehind(line: string, start: number, ends: UnitEnds): string | undefined {
  const end = start + (matchAt(NUMBER, line, start)?.[0].length ?? 0);
  if (end === start) return undefined;
  const isAir = end === ends.air && /[ \t]/u.test(line[end - 1]!);
  const isUnit = end >= ends.word && matchAt(UNIT_START, line, end) !== null;
  return isAir || isUnit || end === line.length ? line.slice(end) : undefined;
}

/** Whether a line ends in a number, a date or a time: there is nothing to complete there. */
function endsInNumber(line: string): boolean {
  const start = startOfRun(line, (character) => /[\d./:-]/u.test(character));
  let before = characterBefore(line, start);
  for (const character of line.slice(start)) {
    if (DIGIT.test(character) && !WORD_CHARACTER.test(before)) return true;
    before = character;
  }
  return false;
}

/** The word that ends a line: from the first letter of the run of its characters. */
function wordBefore(line: string): string {
  const run = line.slice(startOfRun(line, (it) => it === "-" || WORD_CHARACTER.test(it)));
  const letter = LETTER.exec(run);
  return letter ? run.slice(letter.index) : "";
}

/** Where the characters start that end a text and are all of one class. */
function startOfRun(text: string, isInClass: (character: string) => boolean): number {
  let start = text.length;
  while (start > 0) {
    const character = characterBefore(text, start);
    if (!isInClass(character)) break;
    start -= character.length;
  }
  return start;
}

/** The character that ends before an offset, which may take two code units; empty at the start. */
function characterBefore(text: string, offset: number): string {
  const pair = text.slice(Math.max(0, offset - 2), offset);
  return pair.length === 2 && pair.codePointAt(0)! > 0xffff ? pair : pair.slice(-1);
}

/** Tokens of the declaration before or at the cursor and of what follows up to the cursor; starts are absolute. */
function tokensAround(
  tree: FileTree,
  offset: number,
): { readonly tokens: readonly Token[]; readonly declaration?: DeclarationTree } {
  const { pieces } = tree;
  let last = pieces.findLastIndex((piece) => piece.offset <= offset);
  // At the very end of a line without line end the cursor still belongs to the piece before.
  if (last > 0 && pieces[last]!.offset === offset && !isLineEnd(tree.text[offset - 1])) last -= 1;
  let first = last;
  while (first > 0 && pieces[first]!.kind !== "declaration") first -= 1;
  const tokens = pieces.slice(Math.max(0, first), last + 1).flatMap(tokensOfPiece);
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
  const stack: Block[] = [{ kind: "file", words: [] }];
  let line: Token[] = [];
  let goesOn = false;
  let found: State | undefined;
  const state = (): State => ({ block: stack.at(-1)!, before: [...line], isHead: isHead(stack, line) });
  for (const token of tokens) {
    if (!found && token.start >= at) found = state();
    if (token.kind === "space" || token.kind === "comment" || token.kind === "doc-comment") continue;
    const top = stack.at(-1)!;
    if (token.kind === "newline") {
      goesOn = line.at(-1)?.text === ",";
      if (!goesOn) line = [];
    } else if (token.text === "{") {
      stack.push({ kind: blockOf(top, line), words: [] });
      line = [];
    } else if (token.text === "}") {
      if (stack.length > 1) stack.pop();
      line = [];
    } else {
      // A comma at the end of a line goes on, unless the next line starts with a word of the block.
      if (goesOn && token.start !== at && startsLine(top, token.text)) line = [];
      goesOn = false;
      if (line.length === 0) top.words.push({ text: token.text, start: token.start });
      line.push(token);
    }
  }
  return found ?? state();
}

const isHead = (stack: readonly Block[], line: readonly Token[]): boolean =>
  stack.length === 1 && line.length > 0;

function startsLine({ kind }: Block, word: string): boolean {
  if (kind === "unknown" || kind === "file") return false;
  return (kind !== "layer" && isFieldWord(kind, word)) || Object.hasOwn(STATEMENTS[kind], word);
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
