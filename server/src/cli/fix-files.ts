/**
 * Applies the safe fixes of files that were read: those that change neither what is done nor what is promised.
 *
 * A fix may make room for another, so files are looked into again until nothing is left to apply. Only files that were
 * asked for are changed: a fix that reaches into another file is left to the person.
 */
import { applyChanges } from "../../../grammar/src/format.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import type { FileEdit, FileFinding } from "../views/places/file-finding.ts";

/** A fix that makes room for another that makes room for the first would never end. */
const MOST_ROUNDS = 10;

/** The texts by path, as they are once all safe fixes are applied; only those that differ. */
export async function fixedTexts(
  texts: ReadonlyMap<string, string>,
  findingsOf: (texts: ReadonlyMap<string, string>) => Promise<readonly FileFinding[]>,
): Promise<ReadonlyMap<string, string>> {
  let now = texts;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const edits = editsToApply(await findingsOf(now), new Set(texts.keys()));
    if (edits.size === 0) break;
    now = new Map([...now].map(([file, text]) => [file, applyChanges(text, edits.get(file) ?? [])]));
  }
  return new Map([...now].filter(([file, text]) => text !== texts.get(file)));
}

type Change = { readonly span: Span; readonly text: string };

/** The edits of all safe fixes that do not touch each other's places, by file, in the order of the text. */
function editsToApply(
  findings: readonly FileFinding[],
  files: ReadonlySet<string>,
): ReadonlyMap<string, readonly Change[]> {
  const taken = new Map<string, FileEdit[]>();
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
