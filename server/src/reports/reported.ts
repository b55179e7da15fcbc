/**
 * What the reporters of findings work on: the files that were asked for, each with its name, text and findings, and
 * how other files are called. Plain data; where it comes from is the command's business.
 */

import { createLineIndex, type LineIndex, positionAt } from "../../../grammar/src/line-index.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import { gravest, joinedTexts, messageOf } from "../core/findings.ts";
import { onceFor } from "../core/once.ts";
import { byDanger } from "../core/rules/registry.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { partsOf } from "../views/places/finding-parts.ts";

export interface ReportedFile {
  readonly label: string;
  readonly text: string;
  readonly findings: readonly FileFinding[];
}

/** A label as other programs read paths: with `/`, and without the `./` that a person may have typed. */
export const pathOf = (label: string): string => label.replaceAll("\\", "/").replace(/^\.\//u, "");

/** Any file of the run, for related places and fixes. */
export interface OtherFile {
  readonly label: string;
  readonly text: string;
}

export interface FindingReport {
  readonly files: readonly ReportedFile[];
  readonly other: (file: string) => OtherFile;
}

/** Lines and columns from 1; columns in UTF-16 units; the end is behind the last character. */
export interface Region {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/**
 * For other programs, one finding a rule, line and job: what a rule has to say about several words of a line becomes
 * one finding, which stands on the first of them.
 */
export const onePerLine = (report: FindingReport): FindingReport => ({
  ...report,
  files: report.files.map((file) => ({ ...file, findings: mergedByLine(file) })),
});

function mergedByLine(file: ReportedFile): readonly FileFinding[] {
  const lines = new Map<string, FileFinding[]>();
  for (const finding of file.findings) {
    const key = `${finding.rule}\u0000${regionOf(file, finding.span).line}\u0000${finding.job ?? ""}`;
    const line = lines.get(key);
    if (line) line.push(finding);
    else lines.set(key, [finding]);
  }
  return [...lines.values()].map(together);
}

/** Findings of one line, at least one, as one that stands on the first of them. */
function together(findings: readonly FileFinding[]): FileFinding {
  const [first, ...rest] = findings.toSorted((a, b) => a.span.start - b.span.start);
  if (first === undefined || rest.length === 0) return findings[0]!;
  const all = [first, ...rest];
  const text = joinedTexts(all);
  return {
    ...first,
    ...text,
    severity: gravest(all.map(({ severity }) => severity)),
    message: messageOf(text),
    related: all.flatMap(({ related }) => related),
    fixes: all.flatMap(({ fixes }) => fixes),
    ...(all.some(({ parts }) => parts) ? { parts: all.flatMap(partsOf) } : {}),
  };
}

/** Where a span of a file stands, by lines and columns. */
export function regionOf(file: OtherFile, span: Span): Region {
  const index = indexOf(file);
  const start = positionAt(index, span.start);
  const end = positionAt(index, span.end);
  return {
    line: start.line + 1,
    column: start.column + 1,
    endLine: end.line + 1,
    endColumn: end.column + 1,
  };
}

export const indexOf = onceFor((file: OtherFile): LineIndex => createLineIndex(file.text));

/** The gravest first; within one level lead, what else harms people, then what spoils the film, each in the order of the text. */
export const gravestFirst = (findings: readonly FileFinding[]): readonly FileFinding[] =>
  findings.toSorted(byDanger);
