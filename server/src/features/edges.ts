/**
 * From places (relative to declarations) to absolute offsets in the text at hand, for findings and fixes.
 */
import type { Span } from "../../../grammar/src/tree.ts";
import { type Finding, type FindingPart, type Fix, messageOf, type TextEdit } from "../core/findings.ts";
import type { Program, ProgramFile } from "../core/model/program.ts";
import type { Place } from "../core/place.ts";
import type { FileEdit, FileFinding, FileFindingPart, FileFix, FileSpan } from "./types.ts";

/** Where a place stands now; undefined when its file or declaration is gone. */
export function absoluteSpan(program: Program, place: Place): FileSpan | undefined {
  const file = program.files.get(place.file);
  if (!file) return undefined;
  const span = spanInFile(file, place);
  return span && { file: place.file, span };
}

function spanInFile(file: ProgramFile, place: Place): Span | undefined {
  if (place.declaration === "") return place.span;
  const declaration = file.byKey.get(place.declaration);
  if (!declaration) return undefined;
  const offset = declaration.tree.offset;
  return { start: offset + place.span.start, end: offset + place.span.end };
}

export function fileFinding(program: Program, finding: Finding): FileFinding | undefined {
  const at = absoluteSpan(program, finding.place);
  if (!at) return undefined;
  return {
    rule: finding.rule,
    severity: finding.severity,
    file: at.file,
    span: at.span,
    headline: finding.headline,
    why: finding.why,
    remedy: finding.remedy,
    ...(finding.where === undefined ? {} : { where: finding.where }),
    message: messageOf(finding),
    related: finding.related.flatMap((related) => {
      const place = absoluteSpan(program, related.place);
      return place ? [{ ...place, message: related.message }] : [];
    }),
    fixes: finding.fixes.flatMap((fix) => fileFix(program, fix) ?? []),
    ...(finding.job ? { job: finding.job } : {}),
    ...(finding.surfaces ? { surfaces: finding.surfaces } : {}),
    ...(finding.parts ? { parts: finding.parts.flatMap((part) => filePart(program, part) ?? []) } : {}),
  };
}

function filePart(program: Program, { place, ...part }: FindingPart): FileFindingPart | undefined {
  const at = absoluteSpan(program, place);
  return at && { ...part, ...at };
}

function fileFix(program: Program, fix: Fix): FileFix | undefined {
  const edits = fix.edits.map((edit) => fileEdit(program, edit));
  if (edits.some((edit) => edit === undefined)) return undefined;
  return { title: fix.title, kind: fix.kind, edits: edits as FileEdit[] };
}

function fileEdit(program: Program, edit: TextEdit): FileEdit | undefined {
  const at = absoluteSpan(program, edit.place);
  const text = at && program.files.get(at.file)?.tree.text;
  if (!at || text === undefined) return undefined;
  if (!edit.linesAbove) return { file: at.file, span: at.span, text: edit.text };
  const lineStart =
    Math.max(text.lastIndexOf("\n", at.span.start - 1), text.lastIndexOf("\r", at.span.start - 1)) + 1;
  const indent = /^[ \t]*/.exec(text.slice(lineStart, at.span.start))![0];
  const newline = text.includes("\r\n") ? "\r\n" : "\n";
  const column = valueColumn(text.slice(lineStart + indent.length));
  const lines = edit.text.split("\n").map((line) => `${indent}${inColumn(line, column)}${newline}`);
  return { file: at.file, span: { start: lineStart, end: lineStart }, text: lines.join("") };
}

/** Where the value of a line stands, counted from its keyword. */
const valueColumn = (line: string): number => /^\p{L}[\p{L}\p{Nd}_]*[ \t]+/u.exec(line)?.[0].length ?? 0;

/** A new line with its value in the column of the line that it comes above, where its keyword leaves room. */
function inColumn(line: string, column: number): string {
  const [head = "", keyword = ""] = /^(\S+)[ \t]+/u.exec(line) ?? [];
  return keyword === "" ? line : `${keyword.padEnd(column - 1)} ${line.slice(head.length)}`;
}
