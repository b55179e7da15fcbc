/**
 * The comment that allows a finding where it stands: `# allow RULE: `, to be completed with a reason. Without one it allows
 * nothing, so that no click alone makes a danger disappear from view.
 */
import { suppressionsIn } from "../core/rules/suppressions.ts";
import type { FileEdit, FileFindingPart } from "./types.ts";

/** Findings on comments, and on faults of this program, that no comment allows. */
const NOT_TO_BE_ALLOWED: ReadonlySet<string> = new Set([
  "suppression-without-reason",
  "unused-suppression",
  "internal-error",
]);

/** A statement goes on over so many lines at most. */
const MOST_LINES = 60;

/**
 * The edit that puts the comment above the statement of a finding; undefined where no comment can allow it. The place for
 * the reason is the end of the new line.
 */
export function allowHere(text: string, { file, rule, span }: FileFindingPart): FileEdit | undefined {
  if (NOT_TO_BE_ALLOWED.has(rule)) return undefined;
  const newline = text.includes("\r\n") ? "\r\n" : "\n";
  const line = lineNumber(text, span.start);
  let start = lineStart(text, span.start);
  // A statement that goes on over several lines is covered from above its first.
  for (let above = 0; above <= MOST_LINES; above += 1) {
    const indent = /^[ \t]*/u.exec(text.slice(start))![0];
    const comment = `${indent}# allow ${rule}: `;
    const allowing = suppressionsIn(`${text.slice(0, start)}${comment}x${newline}${text.slice(start)}`);
    const added = allowing.find((each) => each.rule === rule && each.lineSpan.start === start);
    if (added?.covers.includes(line + 1))
      return { file, span: { start, end: start }, text: `${comment}${newline}` };
    if (start === 0) return undefined;
    start = lineStart(text, start - 1);
  }
  return undefined;
}

const lineStart = (text: string, offset: number): number => text.lastIndexOf("\n", offset - 1) + 1;

/** From 0. */
const lineNumber = (text: string, offset: number): number => text.slice(0, offset).split("\n").length - 1;
