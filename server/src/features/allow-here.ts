/**
 * The comment that allows a finding where it stands: `# allow RULE: `, to be completed with a reason. Without one it allows
 * nothing, so that no click alone makes a danger disappear from view.
 */
import { parseFile } from "../../../grammar/src/parse.ts";
import { isAlwaysShown } from "../core/rules/registry.ts";
import { statementStart } from "../core/rules/suppressions.ts";
import type { FileEdit, FileFindingPart } from "./types.ts";

/** Findings on comments, which no comment allows. */
const ON_COMMENTS: ReadonlySet<string> = new Set(["suppression-without-reason", "unused-suppression"]);

/**
 * The edit that puts the comment above the statement of a finding; undefined where no comment can allow it. The place for
 * the reason is the end of the new line.
 */
export function allowHere(text: string, { file, rule, span }: FileFindingPart): FileEdit | undefined {
  if (ON_COMMENTS.has(rule) || isAlwaysShown(rule)) return undefined;
  const start = statementStart(parseFile(text), span.start);
  if (start === undefined) return undefined;
  const newline = text.includes("\r\n") ? "\r\n" : "\n";
  const indent = /^[ \t]*/u.exec(text.slice(start))![0];
  return { file, span: { start, end: start }, text: `${indent}# allow ${rule}: ${newline}` };
}
