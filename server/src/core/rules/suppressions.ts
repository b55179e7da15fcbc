/**
 * Comments that allow a finding: `# allow RULE: reason`, on a line of its own directly above the line of the finding.
 *
 * Several may stand above one line. A comment without a reason allows nothing and is itself a finding, as is one that
 * allows nothing that is there. Prose that happens to begin with "allow" is left alone.
 */

import { indexAt } from "../../../../grammar/src/binary-search.ts";
import { ownTokens, tokensOfBody } from "../../../../grammar/src/tokens-of.ts";
import { t } from "../../../../grammar/src/translate.ts";
import type { DeclarationBody, FilePiece, FileTree, Span, Token } from "../../../../grammar/src/tree.ts";
import { absoluteOffset } from "../../../../grammar/src/walk.ts";
import { type Finding, type Fix, textOf } from "../findings.ts";
import type { ProgramFile } from "../model/program.ts";
import { closest } from "../model/suggest.ts";
import { onceFor } from "../once.ts";
import type { Place } from "../place.ts";
import { isAlwaysShown, languageSeverity, ruleById, ruleIds } from "./registry.ts";
import { isTradeRule } from "./rule.ts";

export interface Suppression {
  readonly rule: string;
  /** Where `RULE` stands, and the comment from its `#` to its end. */
  readonly ruleSpan: Span;
  readonly span: Span;
  /** The whole line with its line end. */
  readonly lineSpan: Span;
  readonly hasReason: boolean;
  /** The lines that it covers, counted from 0: the next line of code and those on which that goes on. */
  readonly covers: readonly number[];
}

/** The suppressions of a file, in order. */
export function suppressionsIn(tree: FileTree): readonly Suppression[] {
  return suppressionsOn(linesOf(tree));
}

interface Line {
  readonly start: number;
  readonly end: number;
  /** `blank` has nothing at all on it; `comment` has a comment alone, of either kind. */
  readonly kind: "blank" | "comment" | "code";
  /** Of a line of code: it ends with a comma, so that its statement goes on. */
  readonly goesOn: boolean;
  /** A plain comment alone on its line. */
  readonly comment?: Token;
}

/** The lines of a file, from its tokens; a text in quotes never makes a comment. */
function linesOf(tree: FileTree): readonly Line[] {
  const lines: Line[] = [];
  let start = 0;
  let lastOfCode: Token | undefined;
  let comment: Token | undefined;
  const close = (end: number): void => {
    lines.push({
      start,
      end,
      kind: lastOfCode ? "code" : comment ? "comment" : "blank",
      goesOn: lastOfCode?.text === ",",
      ...(!lastOfCode && comment?.kind === "comment" ? { comment } : {}),
    });
    start = end;
    lastOfCode = undefined;
    comment = undefined;
  };
  for (const piece of tree.pieces) {
    for (const token of ownTokens(piece)) {
      const at = absoluteOffset(piece, token.start);
      if (token.kind === "newline") close(at + token.text.length);
      else if (token.kind === "comment" || token.kind === "doc-comment") comment = { ...token, start: at };
      else if (token.kind !== "space") lastOfCode = token;
    }
  }
  close(tree.text.length);
  return lines;
}

function suppressionsOn(lines: readonly Line[]): readonly Suppression[] {
  const found: Suppression[] = [];
  let covers: Suppression["covers"] | undefined;
  // From the last line upwards: what a comment covers is what the comment below it covers, or begins on that line.
  for (let index = lines.length - 1; index >= 0; index -= 1) {
    const { start, end, kind, comment } = lines[index]!;
    if (kind !== "comment") {
      covers = undefined;
      continue;
    }
    const read = comment && readComment(comment.text);
    if (!comment || !read) continue;
    // Only now, since a statement over many lines would else be gone through from each of them.
    covers ??= linesBelow(lines, index);
    const ruleStart = comment.start + read.ruleAt;
    found.push({
      rule: read.rule,
      ruleSpan: { start: ruleStart, end: ruleStart + read.rule.length },
      span: { start: comment.start, end: comment.start + comment.text.trimEnd().length },
      lineSpan: { start, end },
      hasReason: read.hasReason,
      covers,
    });
  }
  return found.reverse();
}

/** The next line of code below comments and those on which its statement goes on; none where there is none. */
function linesBelow(lines: readonly Line[], comment: number): readonly number[] {
  let from = comment + 1;
  while (lines[from]?.kind === "comment") from += 1;
  if (lines[from]?.kind !== "code") return [];
  const covered = [from];
  for (let line = from; lines[line]!.goesOn && lines[line + 1]?.kind === "code"; line += 1)
    covered.push(line + 1);
  return covered;
}

/**
 * Tells of a file where the first line of the statement at an offset starts, which is where a comment has to stand above
 * it; undefined where there is no code.
 */
export function statementStarts(tree: FileTree): (offset: number) => number | undefined {
  const lines = linesOf(tree);
  const starts = lines.map(({ start }) => start);
  return (offset) => {
    let line = lineAt(starts, offset);
    if (lines[line]!.kind !== "code") return undefined;
    while (line > 0 && lines[line - 1]!.goesOn) line -= 1;
    return lines[line]!.start;
  };
}

/** Whether a piece has a comment that begins with "allow"; looked for once as long as its text is kept. */
const mayAllow = (piece: FilePiece): boolean =>
  piece.kind === "declaration" ? mayAllowIn(piece.body) : hasAllow(piece.tokens);

const mayAllowIn = onceFor(
  (body: DeclarationBody): boolean => body.text.includes("allow") && hasAllow(tokensOfBody(body)),
);

const hasAllow = (tokens: readonly Token[]): boolean =>
  tokens.some(({ kind, text }) => kind === "comment" && HEAD.test(text.slice(1).trimStart()));

const HEAD = /^allow\s+([A-Za-z][\w-]*)/u;

/** Prose is no suppression: one word stands for a rule where it is one, or looks like one and has a colon. */
function readComment(
  comment: string,
): { readonly rule: string; readonly ruleAt: number; readonly hasReason: boolean } | undefined {
  const body = comment.slice(1).trimStart();
  const head = HEAD.exec(body);
  if (!head) return undefined;
  const rule = head[1]!;
  const ruleAt = comment.length - body.length + head[0].length - rule.length;
  const behind = body.slice(head[0].length);
  const rest = behind.trim();
  const isRule = ruleById(rule) !== undefined;
  if (rest.startsWith(":"))
    return isRule || rule.includes("-") ? { rule, ruleAt, hasReason: rest.length > 1 } : undefined;
  // The colon was forgotten where words follow the name of a rule.
  const isAlone = rest === "" || behind.trimStart().length < behind.length;
  return isRule && isAlone ? { rule, ruleAt, hasReason: false } : undefined;
}

/**
 * Takes out what the comments of the file allow, and adds findings about comments that do not do their work. While it
 * `awaitsPlans`, what a plan may still bring is not called missing.
 */
export function applySuppressions(
  file: ProgramFile,
  findings: readonly Finding[],
  awaitsPlans: boolean,
): readonly Finding[] {
  if (!file.tree.text.includes("allow") || !file.tree.pieces.some(mayAllow)) return findings;
  const lines = linesOf(file.tree);
  const suppressions = suppressionsOn(lines);
  if (suppressions.length === 0) return findings;
  const starts = lines.map(({ start }) => start);
  // Comments above one and the same statement share one list of its lines.
  const covered = new Set(suppressions.map(({ covers }) => covers));
  const statements = new Map([...covered].flatMap((covers) => covers.map((line) => [line, covers[0]])));
  const key = (rule: string, line: number | undefined): string => `${rule} ${line}`;
  const allowed = new Set(
    suppressions
      .filter((it) => it.hasReason && !isAlwaysShown(it.rule))
      .map((it) => key(it.rule, it.covers[0])),
  );
  const used = new Set<string>();
  const kept = findings.filter((finding) => {
    const statement = statements.get(lineAt(starts, startOf(file, finding.place)));
    const allowing = key(finding.rule, statement);
    if (statement === undefined || !allowed.has(allowing)) return true;
    used.add(allowing);
    return false;
  });
  const added = suppressions.flatMap((it): readonly Finding[] => {
    if (!it.hasReason) return [withoutReason(file, it)];
    const isUsed = used.has(key(it.rule, it.covers[0])) || (awaitsPlans && readsPlan(it.rule));
    return isUsed ? [] : [unused(file, it)];
  });
  return [...kept, ...added];
}

/** Whether a comment of the file, with its reason, allows a finding of the rule at a place. */
export function isAllowedAt(file: ProgramFile, rule: string, place: Place): boolean {
  if (!file.tree.text.includes("allow") || isAlwaysShown(rule)) return false;
  const { starts, allowed } = allowedIn(file.tree);
  return allowed.size > 0 && allowed.has(`${rule} ${lineAt(starts, startOf(file, place))}`);
}

/** The rules that comments allow, with the lines: `coat-over-wax 12`. */
const allowedIn = onceFor((tree: FileTree) => {
  const lines = linesOf(tree);
  const allowed = suppressionsOn(lines).filter(({ hasReason }) => hasReason);
  return {
    starts: lines.map(({ start }) => start),
    allowed: new Set(allowed.flatMap(({ rule, covers }) => covers.map((line) => `${rule} ${line}`))),
  };
});

function readsPlan(id: string): boolean {
  const rule = ruleById(id);
  return rule !== undefined && isTradeRule(rule) && rule.readsPlan === true;
}

function startOf(file: ProgramFile, place: Place): number {
  const tree = place.declaration === "" ? undefined : file.byKey.get(place.declaration)?.tree;
  return tree ? absoluteOffset(tree, place.span.start) : place.span.start;
}

/** The line in which an offset stands. */
const lineAt = (starts: readonly number[], offset: number): number =>
  indexAt(starts, offset, (start) => start);

const absolute = (file: ProgramFile, span: Span): Place => ({ file: file.id, declaration: "", span });

const about = (
  file: ProgramFile,
  id: string,
  span: Span,
  message: string,
  fixes: readonly Fix[],
): Finding => ({
  rule: id,
  severity: languageSeverity(id),
  place: absolute(file, span),
  ...textOf(message),
  related: [],
  fixes,
});

const withoutReason = (file: ProgramFile, { rule, span }: Suppression): Finding =>
  about(
    file,
    "suppression-without-reason",
    span,
    t`This comment gives no reason, so it allows nothing.\nWhoever reads the recipe next could not tell whether the reason still holds.\nWrite it after a colon, such as \`# allow ${rule}: tried on a sample board\`.`,
    [],
  );

function unused(file: ProgramFile, { rule, ruleSpan, span, lineSpan }: Suppression): Finding {
  const takeOut: Fix = {
    title: t`Take the comment out`,
    kind: "safe",
    edits: [{ place: absolute(file, lineSpan), text: "" }],
  };
  if (isAlwaysShown(rule)) {
    const message = t`\`${rule}\` cannot be allowed, so this comment allows nothing.\nIt says that something was not checked, and whoever reads on has to know that.\nTake the comment out.`;
    return about(file, "unused-suppression", span, message, [takeOut]);
  }
  if (ruleById(rule)) {
    const message = t`\`${rule}\` finds nothing on the line below.\nA comment that allows nothing may hide a finding later on.\nTake it out.`;
    return about(file, "unused-suppression", span, message, [takeOut]);
  }
  const near = closest(rule, ruleIds());
  const message = near
    ? t`There is no rule \`${rule}\`, so this comment allows nothing.\nPerhaps \`${near}\` is meant; else take it out.`
    : t`There is no rule \`${rule}\`, so this comment allows nothing.\nThe list of rules has their names; else take it out.`;
  const change: readonly Fix[] = near
    ? [
        {
          title: t`Change to \`${near}\``,
          kind: "change",
          edits: [{ place: absolute(file, ruleSpan), text: near }],
        },
      ]
    : [];
  return about(file, "unused-suppression", span, message, [...change, takeOut]);
}
