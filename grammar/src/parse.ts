/**
 * Text in, tree out.
 *
 * Parsing never fails and never throws: what could not be read is a problem in the tree.  The body of a declaration
 * depends on the text of that declaration alone, so that a new version of a file takes over the bodies of all
 * declarations whose text has not changed, as the same objects.  A file is read in sections, and what an edit left alone
 * is not even lexed again.
 */
import { type DeclarationLayout, layoutDeclaration } from "./layout.ts";
import { type LexToken, lex } from "./lexer.ts";
import { type Chunk, chunkEnd, docsAbove, type SourceLine, sourceLines } from "./lines.ts";
import { makeName } from "./literals.ts";
import { lookUp } from "./look-up.ts";
import type { HeadLine } from "./parser.ts";
import { type RawPiece, splitFile } from "./pieces.ts";
import { sectionsOf } from "./sections.ts";
import {
  lineParser,
  nodeSpan,
  type ReadingContext,
  readFields,
  readJob,
  readLine,
  readPiece,
  readRecipe,
} from "./statements.ts";
import { t } from "./translate.ts";
import type {
  Declaration,
  DeclarationBody,
  DeclarationTree,
  FilePiece,
  FileTree,
  Fix,
  Span,
  StrayPiece,
  SyntaxProblem,
  TriviaPiece,
} from "./tree.ts";
import { DECLARATION_WORDS } from "./vocabulary.ts";

/** Where a text differs from an earlier version of it; before `start` and behind the other two ends they are the same. */
export interface ChangedPart {
  readonly start: number;
  /** In the earlier version. */
  readonly oldEnd: number;
  /** In the text. */
  readonly newEnd: number;
}

/**
 * Parses a file. With the tree of an earlier version, unchanged declarations keep their bodies. Where it is known what has
 * `changed` since then, the rest of the text is not looked at.
 */
export function parseFile(text: string, previous?: FileTree, changed?: ChangedPart): FileTree {
  const before = (previous && SECTIONS.get(previous)) ?? [];
  const isKnown = changed && previous && isBetween(changed, previous.text, text);
  const kept = isKnown ? endsApartFrom(changed, before, text) : commonEnds(before, text);
  const replaced = before.slice(kept.first, before.length - kept.last);
  const middle = readSections(text.slice(kept.start, kept.end), replaced);
  const sections = [...before.slice(0, kept.first), ...middle, ...before.slice(before.length - kept.last)];
  const pieces =
    previous && hasSameNames(replaced, middle)
      ? piecesMoved(previous, kept.start, [before.slice(0, kept.first), replaced, middle], text.length)
      : piecesPlaced(sections);
  const tree = { text, pieces };
  SECTIONS.set(tree, sections);
  return tree;
}

/** Parses the text of one declaration, its documentation included. */
export function parseDeclaration(text: string): DeclarationBody {
  const lines = sourceLines(lex(text));
  const chunks = lines.flatMap((line) => line.chunks);
  if (chunks[0] === undefined || !isHead(chunks[0])) {
    const problems = firstOfEachLine(leftOver(chunks, 0), lines);
    return { text, problems, respellings: [], breaks: [], bracesMatch: false, syntax: nothing(text) };
  }
  const layout = layoutDeclaration(lines, chunks, 0);
  return bodyOf(text, lines, layout, leftOver(chunks, layout.next));
}

function bodyOf(
  text: string,
  lines: readonly SourceLine[],
  layout: DeclarationLayout,
  more: readonly SyntaxProblem[],
): DeclarationBody {
  const ctx: ReadingContext = { lines, problems: [], respellings: [], breaks: [...layout.breaks] };
  const syntax = readDeclaration(ctx, layout);
  const problems = firstOfEachLine([...ctx.problems, ...layout.problems, ...more], lines);
  const respellings = ctx.respellings.toSorted((a, b) => a.span.start - b.span.start);
  const breaks = ctx.breaks.toSorted((a, b) => a.start - b.start);
  return { text, problems, respellings, breaks, bracesMatch: layout.bracesMatch, syntax };
}

/** In the order of the text. What else is wrong on a line often follows from what is wrong first. */
function firstOfEachLine(
  problems: readonly SyntaxProblem[],
  lines: readonly SourceLine[],
): readonly SyntaxProblem[] {
  if (problems.length === 0) {
    return problems;
  }
  const sorted = problems.toSorted((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  let line = 0;
  let reported = -1;
  return sorted.filter(({ span }) => {
    while (line < lines.length - 1 && span.start >= lines[line]!.end) line += 1;
    const isFirst = reported !== line;
    reported = line;
    return isFirst;
  });
}

/** All syntax errors of a file, with spans in the file. */
export function fileProblems(tree: FileTree): SyntaxProblem[] {
  return tree.pieces.flatMap((piece) => {
    if (piece.kind === "trivia") {
      return [];
    }
    const problems = piece.kind === "stray" ? piece.problems : piece.body.problems;
    return problems.map((problem) => shiftProblem(problem, piece.offset));
  });
}

// ---------------------------------------------------------------------------------------------------------------
// Sections

/** A section that has been read; the offsets of its pieces count from its start. */
interface Section {
  readonly text: string;
  readonly pieces: readonly SectionPiece[];
}

type SectionPiece = Omit<DeclarationTree, "key"> | TriviaPiece | StrayPiece;

/** The sections of each tree, for the reading of the next version of its file. */
const SECTIONS = new WeakMap<FileTree, readonly Section[]>();

/** Sections that a new text begins and ends with as the old one did, and the part of it between them. */
interface CommonEnds {
  readonly first: number;
  readonly last: number;
  readonly start: number;
  readonly end: number;
}

/**
 * What an edit left alone at both ends. Where a section begins is decided by its own head and by the lines above that, so
 * the section next to the edit is cut anew on either side, and nothing beyond it can change.
 */
function commonEnds(before: readonly Section[], text: string): CommonEnds {
  let first = 0;
  let start = 0;
  while (first < before.length && text.startsWith(before[first]!.text, start)) {
    start += before[first]!.text.length;
    first += 1;
  }
  let last = 0;
  let end = text.length;
  for (let idx = before.length - 1; idx >= first; idx -= 1) {
    const from = end - before[idx]!.text.length;
    if (from < start || !text.startsWith(before[idx]!.text, from)) {
      break;
    }
    end = from;
    last += 1;
  }
  return oneLess(before, { first, last, start, end });
}

/** Whether such a change can have led from one text to the other. */
function isBetween({ start, oldEnd, newEnd }: ChangedPart, old: string, text: string): boolean {
  return (
    start >= 0 &&
    start <= oldEnd &&
    start <= newEnd &&
    newEnd <= text.length &&
    old.length - oldEnd === text.length - newEnd
  );
}

/** The same where it is known what has changed. */
function endsApartFrom(
  { start: from, newEnd }: ChangedPart,
  before: readonly Section[],
  text: string,
): CommonEnds {
  let first = 0;
  let start = 0;
  while (first < before.length && start + before[first]!.text.length <= from) {
    start += before[first]!.text.length;
    first += 1;
  }
  let last = 0;
  let end = text.length;
  const behind = text.length - newEnd;
  for (let idx = before.length - 1; idx >= first; idx -= 1) {
    const { length } = before[idx]!.text;
    if (text.length - end + length > behind) {
      break;
    }
    end -= length;
    last += 1;
  }
  return oneLess(before, { first, last, start, end });
}

/** Without the section next to the edit on either side. */
function oneLess(before: readonly Section[], { first, last, start, end }: CommonEnds): CommonEnds {
  const [above, below] = [first > 0 ? 1 : 0, last > 0 ? 1 : 0];
  return {
    first: first - above,
    last: last - below,
    start: above === 0 ? start : start - before[first - 1]!.text.length,
    end: below === 0 ? end : end + before[before.length - last]!.text.length,
  };
}

/** Things of an earlier version by their text, each to be given out once. */
type Store<T> = Map<string, T[]>;

function readSections(text: string, replaced: readonly Section[]): readonly Section[] {
  const before = storeOf(replaced);
  const kept = sectionsOf(text).map((own) => ({ own, section: before.get(own)?.shift() }));
  const left = [...before.values()].flat().flatMap((section) => section.pieces);
  const bodies = storeOf(left.filter((piece) => piece.kind === "declaration").map(({ body }) => body));
  return kept.map(({ own, section }) => section ?? readSection(detached(own), bodies));
}

/** A copy: a part of a text holds on to all of it, and sections are kept through many versions of their file. */
function detached(text: string): string {
  return `${text} `.slice(0, -1);
}

function storeOf<T extends { readonly text: string }>(items: readonly T[]): Store<T> {
  const store: Store<T> = new Map();
  for (const item of items) {
    const same = store.get(item.text);
    if (same === undefined) {
      store.set(item.text, [item]);
    } else {
      same.push(item);
    }
  }
  return store;
}

function readSection(text: string, bodies: Store<DeclarationBody>): Section {
  const { tokens, lines, pieces } = splitFile(text);
  let next = 0;
  const read = pieces.map((piece) => {
    const from = next;
    while (next < tokens.length && tokens[next]!.start < piece.end) {
      next += 1;
    }
    return piece.kind === "declaration"
      ? declarationPiece(text, piece, lines, bodies)
      : otherPiece(piece, tokens.slice(from, next));
  });
  return { text, pieces: read };
}

function declarationPiece(
  text: string,
  { start, end, layout }: RawPiece,
  lines: readonly SourceLine[],
  bodies: Store<DeclarationBody>,
): Omit<DeclarationTree, "key"> {
  const own = text.slice(start, end);
  const body =
    bodies.get(own)?.shift() ??
    (layout === undefined ? parseDeclaration(own) : bodyOf(own, lines, layout, []));
  return { kind: "declaration", offset: start, length: own.length, body };
}

function otherPiece(piece: RawPiece, sectionTokens: readonly LexToken[]): TriviaPiece | StrayPiece {
  const { start: offset } = piece;
  const tokens =
    offset === 0 ? sectionTokens : sectionTokens.map((token) => ({ ...token, start: token.start - offset }));
  const length = piece.end - offset;
  return piece.kind === "stray"
    ? {
        kind: "stray",
        offset,
        length,
        tokens,
        problems: piece.problems.map((it) => shiftProblem(it, -offset)),
      }
    : { kind: "trivia", offset, length, tokens };
}

const placedDeclaration = (
  { kind, length, body }: Omit<DeclarationTree, "key">,
  offset: number,
  key: string,
): DeclarationTree => ({ kind, offset, length, key, body });

/** All pieces of a file, with their offsets in it and the keys of its declarations. */
function piecesPlaced(sections: readonly Section[]): readonly FilePiece[] {
  const counts = new Map<string, number>();
  const pieces: FilePiece[] = [];
  let start = 0;
  for (const section of sections) {
    for (const piece of section.pieces) {
      const offset = piece.offset + start;
      pieces.push(
        piece.kind === "declaration"
          ? placedDeclaration(piece, offset, uniqueKey(piece.body.syntax, counts))
          : { ...piece, offset },
      );
    }
    start += section.text.length;
  }
  return pieces;
}

/** The same where no name has changed: the pieces before the edit stay, and those behind it only move. */
function piecesMoved(
  { text, pieces: old }: FileTree,
  middleStart: number,
  [head, replaced, middle]: readonly [readonly Section[], readonly Section[], readonly Section[]],
  length: number,
): readonly FilePiece[] {
  const by = length - text.length;
  const from = pieceCount(head);
  const to = from + pieceCount(replaced);
  const keys = old.slice(from, to).flatMap((piece) => (piece.kind === "declaration" ? [piece.key] : []));
  const pieces = old.slice(0, from);
  let [start, next] = [middleStart, 0];
  for (const section of middle) {
    for (const piece of section.pieces) {
      const offset = piece.offset + start;
      pieces.push(
        piece.kind === "declaration" ? placedDeclaration(piece, offset, keys[next++]!) : { ...piece, offset },
      );
    }
    start += section.text.length;
  }
  for (let idx = to; idx < old.length; idx += 1) {
    const piece = old[idx]!;
    pieces.push(by === 0 ? piece : { ...piece, offset: piece.offset + by });
  }
  return pieces;
}

function pieceCount(sections: readonly Section[]): number {
  return sections.reduce((sum, { pieces }) => sum + pieces.length, 0);
}

function hasSameNames(before: readonly Section[], after: readonly Section[]): boolean {
  const [old, own] = [namesIn(before), namesIn(after)];
  return old.length === own.length && old.every((name, idx) => name === own[idx]);
}

function namesIn(sections: readonly Section[]): readonly string[] {
  return sections.flatMap(({ pieces }) =>
    pieces.flatMap((piece) => (piece.kind === "declaration" ? [plainKey(piece.body.syntax)] : [])),
  );
}

function plainKey(syntax: Declaration): string {
  const name = syntax.kind === "use" ? syntax.path?.value : syntax.name?.text;
  return `${syntax.kind} ${name ?? "?"}`;
}

function uniqueKey(syntax: Declaration, counts: Map<string, number>): string {
  const key = plainKey(syntax);
  const count = (counts.get(key) ?? 0) + 1;
  counts.set(key, count);
  return count === 1 ? key : `${key}#${count}`;
}

function shiftProblem(problem: SyntaxProblem, by: number): SyntaxProblem {
  const { fix, others } = problem;
  const span = shiftSpan(problem.span, by);
  const shift = (each: Fix): Fix => ({ ...each, span: shiftSpan(each.span, by) });
  return {
    ...problem,
    span,
    ...(fix && { fix: shift(fix) }),
    ...(others && { others: others.map(shift) }),
  };
}

function shiftSpan(span: Span, by: number): Span {
  return { start: span.start + by, end: span.end + by };
}

// ---------------------------------------------------------------------------------------------------------------
// Declarations

function readDeclaration(ctx: ReadingContext, layout: DeclarationLayout): Declaration {
  const { head } = layout;
  const keyword = makeName(head.tokens[0]!);
  const headSpan = nodeSpan(head);
  const base = {
    keyword,
    docs: docsAbove(ctx.lines, head.line),
    headSpan,
    span: { start: headSpan.start, end: layout.end },
  };
  const nodes = head.block?.nodes ?? [];
  const example = DECLARATION_WORDS[keyword.text]!.example;
  const rules = lineParser();
  const readHead = () => named(readLine(ctx, head, rules.head, example));
  switch (keyword.text) {
    case "use":
      return { kind: "use", ...base, ...readLine(ctx, head, rules.useHead, example) };
    case "material":
      return { kind: "material", ...base, ...readHead(), fields: readFields(ctx, nodes, "material") };
    case "shop":
      return { kind: "shop", ...base, ...readHead(), fields: readFields(ctx, nodes, "shop") };
    case "piece":
      return { kind: "piece", ...base, ...readHead(), fields: readPiece(ctx, nodes) };
    case "job":
      return { kind: "job", ...base, ...readHead(), fields: readJob(ctx, nodes) };
    default: {
      const line = readLine(ctx, head, rules.recipeHead, example);
      const statements = readRecipe(ctx, nodes, "recipe");
      return { kind: "recipe", ...base, ...named(line), parameters: line.parameters, statements };
    }
  }
}

function named(line: HeadLine): Pick<HeadLine, "name" | "title"> {
  return { ...(line.name && { name: line.name }), ...(line.title && { title: line.title }) };
}

function isHead(chunk: Chunk): boolean {
  return lookUp(DECLARATION_WORDS, chunk.tokens[0]?.text ?? "") !== undefined;
}

/** The tree of a text that is no declaration. */
function nothing(text: string): Declaration {
  const span = { start: 0, end: text.length };
  const keyword = { kind: "name", text: "use", span: { start: 0, end: 0 } } as const;
  return { kind: "use", keyword, docs: "", headSpan: span, span };
}

/** Only for a text that was not cut out of a file: what stands after the declaration. */
function leftOver(chunks: readonly Chunk[], next: number): SyntaxProblem[] {
  const first = chunks[next];
  if (first === undefined) {
    return [];
  }
  const start = (first.tokens[0] ?? first.closes ?? first.opens)!.start;
  return [
    { message: t`expected the end of the declaration`, span: { start, end: chunkEnd(chunks.at(-1)!) } },
  ];
}
