/** What applies all safe fixes at once: those that change neither what is done nor what is promised. */
import type { Span } from "../../../../grammar/src/tree.ts";
import type { FileId } from "../../core/place.ts";
import type { FileEdit, FileFinding } from "./file-finding.ts";

/**
 * The edits of the first safe fix of each finding, by file, in the order of the text. A fix whose place another has taken, or
 * that reaches into a file which is not to be changed, is left out: it may be applied when these are.
 */
export function safeEdits(
  findings: readonly Pick<FileFinding, "fixes">[],
  files: ReadonlySet<FileId>,
): ReadonlyMap<FileId, readonly FileEdit[]> {
  const taken = new Map<FileId, FileEdit[]>();
  for (const finding of findings) {
    const fix = finding.fixes.find(({ kind }) => kind === "safe");
    if (fix === undefined || !fix.edits.every((edit) => files.has(edit.file))) continue;
    if (fix.edits.some((edit) => taken.get(edit.file)?.some((other) => touches(other.span, edit.span))))
      continue;
    for (const edit of fix.edits) taken.set(edit.file, [...(taken.get(edit.file) ?? []), edit]);
  }
  return new Map(
    [...taken].map(([file, edits]) => [file, edits.toSorted((a, b) => a.span.start - b.span.start)]),
  );
}

const touches = (a: Span, b: Span): boolean => a.start <= b.end && b.start <= a.end;
