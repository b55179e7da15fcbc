/**
 * What the reporters of findings work on: the files that were asked for, each with its name, text and findings, and
 * how other files are called. Plain data; where it comes from is the command's business.
 */
import { createLineIndex, type LineIndex, positionAt } from "../../../grammar/src/line-index.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import type { Severity } from "../core/findings.ts";
import type { FileFinding } from "../features/types.ts";

export interface ReportedFile {
  readonly label: string;
  readonly text: string;
  readonly findings: readonly FileFinding[];
}

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

const INDEXES = new WeakMap<object, LineIndex>();

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

export function indexOf(file: OtherFile): LineIndex {
  const known = INDEXES.get(file) ?? createLineIndex(file.text);
  INDEXES.set(file, known);
  return known;
}

export const SEVERITIES: readonly Severity[] = ["error", "warning", "information", "hint"];

/** Whether a finding is as grave as a level, or graver. */
export const isAtLeast = (severity: Severity, level: Severity): boolean =>
  SEVERITIES.indexOf(severity) <= SEVERITIES.indexOf(level);
