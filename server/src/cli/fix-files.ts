/**
 * Applies the safe fixes of files that were read: those that change neither what is done nor what is promised.
 *
 * A fix may make room for another, so files are looked into again until nothing is left to apply. Only files that were
 * asked for are changed: a fix that reaches into another file is left to the person.
 */
import { applyChanges } from "../../../grammar/src/format.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { safeEdits } from "../views/places/safe-edits.ts";

/** A fix that makes room for another that makes room for the first would never end. */
const MOST_ROUNDS = 10;

/** The texts by path, as they are once all safe fixes are applied; only those that differ. */
export async function fixedTexts(
  texts: ReadonlyMap<string, string>,
  findingsOf: (texts: ReadonlyMap<string, string>) => Promise<readonly FileFinding[]>,
): Promise<ReadonlyMap<string, string>> {
  let now = texts;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const edits = safeEdits(await findingsOf(now), new Set(texts.keys()));
    if (edits.size === 0) break;
    now = new Map([...now].map(([file, text]) => [file, applyChanges(text, edits.get(file) ?? [])]));
  }
  return new Map([...now].filter(([file, text]) => text !== texts.get(file)));
}
