/**
 * From places (relative to declarations) to absolute offsets in the text at hand, for findings and fixes.
 */

import type { DeclarationTree, FileTree, Span } from "../../../../grammar/src/tree.ts";
import { absoluteOffset, absoluteSpan, newlineOf } from "../../../../grammar/src/walk.ts";
import { type Finding, type FindingPart, type Fix, messageOf, type TextEdit } from "../../core/findings.ts";
import type { Program, ProgramFile } from "../../core/model/program.ts";
import { onceFor } from "../../core/once.ts";
import type { Place } from "../../core/place.ts";
import type { FileEdit, FileFinding, FileFindingPart, FileFix, FileSpan } from "./file-finding.ts";
import { blockEnd } from "./statement-extent.ts";

/** Where a place stands now; undefined when its file or declaration is gone. */
export function spanOfPlace(program: Program, place: Place): FileSpan | undefined {
  const file = program.files.get(place.file);
  if (!file) return undefined;
  const span = spanInFile(file, place);
  return span && { file: place.file, span };
}

function spanInFile(file: ProgramFile, place: Place): Span | undefined {
  if (place.declaration === "") return place.span;
  const declaration = file.byKey.get(place.declaration);
  return declaration && absoluteSpan(declaration.tree, place.span);
}

/** A finding as it was shown last, and where its declaration stood then. */
interface Shown {
  readonly tree: DeclarationTree;
  readonly newline: string;
  readonly finding: FileFinding;
}

/** Findings that stand in one declaration alone, which only move as a whole while its text stays the same. */
const SHOWN = new WeakMap<Finding, Shown>();

/** The finding where it stands now; the same object where neither it nor its place have changed. */
export function fileFinding(program: Program, finding: Finding): FileFinding | undefined {
  const { place } = finding;
  const file = program.files.get(place.file);
  const tree = file?.byKey.get(place.declaration)?.tree;
  if (!file || !tree) return findingNow(program, finding);
  const { newline } = lineEndsOf(file.tree);
  const before = SHOWN.get(finding);
  if (before?.tree.body === tree.body && before.newline === newline) {
    const by = tree.offset - before.tree.offset;
    if (by === 0) return before.finding;
    const moved = movedBy(before.finding, by);
    SHOWN.set(finding, { tree, newline, finding: moved });
    return moved;
  }
  const now = findingNow(program, finding);
  if (now && isWithin(finding, now, tree)) SHOWN.set(finding, { tree, newline, finding: now });
  return now;
}

/** Whether all places of a finding are in its own declaration, as are all edits of its fixes. */
function isWithin(
  { place: own, related, fixes, parts = [] }: Finding,
  now: FileFinding,
  tree: DeclarationTree,
): boolean {
  const edits = fixes.flatMap((fix) => fix.edits);
  return (
    [...related, ...parts, ...edits].every(
      ({ place }) => place.file === own.file && place.declaration === own.declaration,
    ) && now.fixes.every((fix) => fix.edits.every(({ span }) => span.start >= tree.offset))
  );
}

function movedBy(finding: FileFinding, by: number): FileFinding {
  const moved = <T extends { readonly span: Span }>(it: T): T => ({
    ...it,
    span: { start: it.span.start + by, end: it.span.end + by },
  });
  return {
    ...moved(finding),
    related: finding.related.map(moved),
    fixes: finding.fixes.map((fix) => ({ ...fix, edits: fix.edits.map(moved) })),
    ...(finding.parts ? { parts: finding.parts.map(moved) } : {}),
  };
}

interface LineEnds {
  /** What new lines end with. */
  readonly newline: string;
  readonly hasReturn: boolean;
}

/** Looked for once a text, since a text without any has to be gone through for it. */
const lineEndsOf = onceFor(
  ({ text }: FileTree): LineEnds => ({
    newline: newlineOf(text),
    hasReturn: text.includes("\r"),
  }),
);

function findingNow(program: Program, finding: Finding): FileFinding | undefined {
  const at = spanOfPlace(program, finding.place);
  if (!at) return undefined;
  return {
    rule: finding.rule,
    severity: finding.severity,
    file: at.file,
    span: at.span,
    headline: finding.headline,
    why: finding.why,
    remedy: finding.remedy,
    ...(finding.atFirst === undefined ? {} : { atFirst: finding.atFirst }),
    ...(finding.also === undefined ? {} : { also: finding.also }),
    ...(finding.where === undefined ? {} : { where: finding.where }),
    message: messageOf(finding),
    related: finding.related.flatMap(({ place, ...said }) => {
      const at = spanOfPlace(program, place);
      return at ? [{ ...at, ...said }] : [];
    }),
    fixes: finding.fixes.flatMap((fix) => fileFix(program, fix) ?? []),
    ...(finding.job ? { job: finding.job } : {}),
    ...(finding.surfaces ? { surfaces: finding.surfaces } : {}),
    ...(finding.parts ? { parts: finding.parts.flatMap((part) => filePart(program, part) ?? []) } : {}),
  };
}

function filePart(program: Program, { place, ...part }: FindingPart): FileFindingPart | undefined {
  const at = spanOfPlace(program, place);
  return at && { ...part, ...at };
}

function fileFix(program: Program, fix: Fix): FileFix | undefined {
  const edits = fix.edits.map((edit) => fileEdit(program, edit));
  if (edits.some((edit) => edit === undefined)) return undefined;
  return { title: fix.title, kind: fix.kind, edits: edits as FileEdit[] };
}

function fileEdit(program: Program, edit: TextEdit): FileEdit | undefined {
  const at = spanOfPlace(program, edit.place);
  const tree = at && program.files.get(at.file)?.tree;
  if (!at || tree === undefined) return undefined;
  const { text } = tree;
  if (!edit.linesAbove && !edit.linesBelow) return { file: at.file, span: at.span, text: edit.text };
  const { newline, hasReturn } = lineEndsOf(tree);
  const lastOf = (character: string): number => text.lastIndexOf(character, at.span.start - 1);
  const lineStart = Math.max(lastOf("\n"), hasReturn ? lastOf("\r") : -1) + 1;
  const indent = /^[ \t]*/.exec(text.slice(lineStart, at.span.start))![0];
  const column = valueColumn(text.slice(lineStart + indent.length));
  const lines = edit.text.split("\n").map((line) => `${indent}${inColumn(line, column)}`);
  if (edit.linesAbove) {
    return {
      file: at.file,
      span: { start: lineStart, end: lineStart },
      text: lines.map((line) => `${line}${newline}`).join(""),
    };
  }
  const end = statementEnd(program, edit.place) ?? at.span.end;
  const lineEnd = end + /^[^\r\n]*/.exec(text.slice(end))![0].length;
  return {
    file: at.file,
    span: { start: lineEnd, end: lineEnd },
    text: lines.map((line) => `${newline}${line}`).join(""),
  };
}

/** Where the block ends that opens behind a place; undefined where none does. */
function statementEnd(program: Program, place: Place): number | undefined {
  const tree = program.files.get(place.file)?.byKey.get(place.declaration)?.tree;
  const end = tree && blockEnd(tree.body, place.span.end);
  return end === undefined ? undefined : absoluteOffset(tree!, end);
}

/** Where the value of a line stands, counted from its keyword. */
const valueColumn = (line: string): number => /^\p{L}[\p{L}\p{Nd}_]*[ \t]+/u.exec(line)?.[0].length ?? 0;

/** A new line with its value in the column of the line that it comes above, where its keyword leaves room. */
function inColumn(line: string, column: number): string {
  const [head = "", keyword = ""] = /^(\S+)[ \t]+/u.exec(line) ?? [];
  return keyword === "" ? line : `${keyword.padEnd(column - 1)} ${line.slice(head.length)}`;
}
