/**
 * What an ever wider selection takes in: the word, its part of the line, all that the line says behind its first word,
 * the statement, what stands with it in its block, the block, the declaration with its documentation, the file.
 */
import { tokensOfBody } from "../../../grammar/src/tokens-of.ts";
import type { DeclarationTree, FileTree, Span, Token } from "../../../grammar/src/tree.ts";
import { absoluteSpan, locate, touches } from "../../../grammar/src/walk.ts";
import type { Program } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import { allStatements, extentOf, firstAfter } from "../views/places/statement-extent.ts";
import { isComment, lineTokens, tokenSpan, tokensOfFile } from "./file-tokens.ts";

/** From the inside out, each wider than the one before; the last is the file. */
export function selectionsAt(program: Program, file: FileId, offset: number): readonly Span[] {
  const tree = program.files.get(file)?.tree;
  if (tree === undefined) return [];
  const location = locate(tree, offset);
  const declaration = location?.declaration;
  const spans = [
    ...wordSpans(tree, offset),
    ...commentSpans(tree, offset),
    ...(declaration === undefined
      ? []
      : [...location!.path.map(({ span }) => span), ...partSpans(declaration)].map((span) =>
          absoluteSpan(declaration, span),
        )),
    { start: 0, end: tree.text.length },
  ];
  return nested(spans.filter((span) => touches(span, offset)));
}

/** From the narrowest span outwards; what only overlaps is left out. */
function nested(spans: readonly Span[]): readonly Span[] {
  const kept: Span[] = [];
  for (const span of spans.toSorted((a, b) => a.end - a.start - (b.end - b.start))) {
    const inner = kept.at(-1) ?? { start: span.start, end: span.start };
    const holds = span.start <= inner.start && inner.end <= span.end;
    const isWider = span.end - span.start > inner.end - inner.start;
    if (holds && (isWider || kept.length === 0)) kept.push(span);
  }
  return kept;
}

/** The token at the offset, of two the one that is no sign; of a text also its word and what its quotes hold. */
function wordSpans(tree: FileTree, offset: number): readonly Span[] {
  const around = tokensOfFile(tree).filter(
    (token) => token.kind !== "space" && token.kind !== "newline" && touches(tokenSpan(token), offset),
  );
  const token = around.find(({ kind }) => kind !== "punctuation") ?? around[0];
  if (token === undefined || isComment(token)) return [];
  const span = tokenSpan(token);
  if (token.kind !== "string") return [span];
  const isClosed = token.text.length > 1 && token.text.endsWith('"');
  return [...wordsIn(token), { start: span.start + 1, end: span.end - (isClosed ? 1 : 0) }, span];
}

/** The words of a text or comment; the one at the offset is picked with the rest. */
function wordsIn({ text, start }: Token): readonly Span[] {
  return [...text.matchAll(/[\p{L}\p{M}\p{N}_]+/gu)].map(({ 0: word, index }) => ({
    start: start + index,
    end: start + index + word.length,
  }));
}

/** The words of the comment at the offset, the comment, and with it those that stand above and below. */
function commentSpans(tree: FileTree, offset: number): readonly Span[] {
  const lines = lineTokens(tree);
  const own = lines.findIndex((line) =>
    line.some((token) => isComment(token) && touches(tokenSpan(token), offset)),
  );
  const comment = lines[own]?.findLast(isComment);
  if (comment === undefined) return [];
  const isCommentLine = (line: number): boolean =>
    lines[line]?.[0] !== undefined && isComment(lines[line][0]);
  let [first, last] = [own, own];
  while (isCommentLine(own) && isCommentLine(first - 1)) first -= 1;
  while (isCommentLine(own) && isCommentLine(last + 1)) last += 1;
  const group = { start: lines[first]![0]!.start, end: tokenSpan(lines[last]!.at(-1)!).end };
  return [...wordsIn(comment), tokenSpan(comment), ...(isCommentLine(own) ? [group] : [])];
}

/** Parts of a declaration that are no nodes of its tree; offsets in it. */
function partSpans({ body }: DeclarationTree): readonly Span[] {
  const { syntax } = body;
  const tokens = tokensOfBody(body);
  const statements = allStatements(syntax);
  const said = [{ keyword: syntax.keyword, span: syntax.headSpan }, ...statements].flatMap(
    ({ keyword, span }) => {
      let next = firstAfter(tokens, keyword.span.end);
      while (tokens[next]?.kind === "space") next += 1;
      const first = tokens[next];
      return first !== undefined && first.start < span.end ? [{ start: first.start, end: span.end }] : [];
    },
  );
  const documentation = tokens.find(({ kind }) => kind === "doc-comment")?.start ?? syntax.span.start;
  return [
    ...said,
    ...statements.map((statement) => extentOf(body, statement)),
    ...insides(tokens),
    syntax.headSpan,
    syntax.span,
    { start: Math.min(documentation, syntax.span.start), end: syntax.span.end },
  ];
}

/** What stands between braces, from its first to its last word. */
function insides(tokens: readonly Token[]): readonly Span[] {
  const content = tokens.filter(({ kind }) => kind !== "space" && kind !== "newline");
  const open: number[] = [];
  return content.flatMap(({ kind, text }, idx): readonly Span[] => {
    if (kind !== "punctuation") return [];
    if (text === "{") open.push(idx + 1);
    const first = text === "}" ? open.pop() : undefined;
    if (first === undefined || first === idx) return [];
    return [{ start: content[first]!.start, end: tokenSpan(content[idx - 1]!).end }];
  });
}
