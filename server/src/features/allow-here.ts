/**
 * The comment that allows a finding where it stands: `# allow RULE: `, to be completed with a reason. Without one it allows
 * nothing, so that no click alone makes a danger disappear from view.
 */

import { parseFile } from "../../../grammar/src/parse.ts";
import { newlineOf } from "../../../grammar/src/walk.ts";
import { isAlwaysShown } from "../core/rules/registry.ts";
import { statementStarts } from "../core/rules/suppressions.ts";
import type { FileEdit, FileFindingPart } from "../views/places/file-finding.ts";

/** Findings on comments, which no comment allows. */
const ON_COMMENTS: ReadonlySet<string> = new Set(["suppression-without-reason", "unused-suppression"]);

/**
 * Tells of a text the edit that puts the comment above the statement of a finding in it; undefined where no comment can
 * allow it. The place for the reason is the end of the new line. The text is read once for all its findings.
 */
export function allowingIn(text: string): (part: FileFindingPart) => FileEdit | undefined {
  const startOf = statementStarts(parseFile(text));
  const newline = newlineOf(text);
  return ({ file, rule, span }) => {
    if (ON_COMMENTS.has(rule) || isAlwaysShown(rule)) return undefined;
    const start = startOf(span.start);
    if (start === undefined) return undefined;
    const indent = /^[ \t]*/u.exec(text.slice(start))![0];
    return { file, span: { start, end: start }, text: `${indent}# allow ${rule}: ${newline}` };
  };
}
