/**
 * One mistake, one error: what is wrong on a line often makes the rest of it unreadable as well, and a second error there
 * only costs the reader. Among the errors on the notation, of one line and one part of it up to the next comma, what
 * follows from another is left out. Two mistakes that have nothing to do with each other are both told.
 */
import { createLineIndex, positionAt } from "../../../grammar/src/line-index.ts";
import type { Finding } from "./findings.ts";
import { groupedBy } from "./grouped.ts";
import type { ProgramFile } from "./model/program.ts";

/** The findings on the notation of a file, without those that follow from another of their line. */
export function withoutConsequences(findings: readonly Finding[], file: ProgramFile): readonly Finding[] {
  const errors = groupedBy(
    findings.filter(({ severity }) => severity === "error"),
    ({ place }) => place.declaration,
  );
  const dropped = new Set<Finding>();
  for (const [declaration, found] of errors) {
    const text = file.byKey.get(declaration)?.tree.body.text;
    if (text === undefined || found.length < 2) continue;
    const index = createLineIndex(text);
    const lines = groupedBy(found, ({ place }) => positionAt(index, place.span.start).line);
    for (const line of lines.values()) for (const each of consequencesOn(line, text)) dropped.add(each);
  }
  return dropped.size === 0 ? findings : findings.filter((finding) => !dropped.has(finding));
}

/** Those of the findings of one line that follow from another of them. */
function consequencesOn(line: readonly Finding[], text: string): readonly Finding[] {
  if (line.length < 2) return [];
  const sorted = line.toSorted((a, b) => a.place.span.start - b.place.span.start);
  // A misspelt argument with a near parameter is given to that one, so that what is missing is another.
  const isUnread = sorted.some(
    ({ rule, fixes }) => rule === "syntax" || (rule === "wrong-argument" && fixes.length === 0),
  );
  const dropped: Finding[] = [];
  let told: Finding | undefined;
  for (const [index, later] of sorted.entries()) {
    const before = sorted[index - 1];
    if (
      (isUnread && isLack(later)) ||
      (told && followsFrom(text, told, later)) ||
      (told && before && dropped.at(-1) === before && followsFrom(text, before, later))
    )
      dropped.push(later);
    else told = later;
  }
  return dropped;
}

/** What is missing, where something on the line cannot be read: it may be just that. */
const isLack = ({ rule }: Finding): boolean => rule === "missing-argument" || rule === "missing-field";

/** How the line goes on behind a mistake, as far as the next comma, or the same again: both units of `2 to 3 xx`. */
function followsFrom(text: string, first: Finding, later: Finding): boolean {
  const [start, end] = [first.place.span.end, later.place.span.start];
  if (end < start) return first.rule === "syntax" || later.rule === "syntax";
  const between = text.slice(start, end);
  // A word for which a near one is known is a slip of its own: `x 2 by hvpl` has no comma, and another method.
  const isOwnSlip = later.rule === "unknown-word" && later.fixes.length > 0;
  if (between.trim() === "") return !isOwnSlip;
  // How a step goes on is not known where its verb is not.
  if (later.rule === "syntax" && first.rule === "unknown-word" && isVerbAt(text, first.place.span.start))
    return true;
  if (between.includes(",")) return false;
  return later.rule === "syntax" || (later.rule === first.rule && later.headline === first.headline);
}

/** Whether a verb is expected at an offset: behind `step`, and between coats behind `between` and its `and`. */
function isVerbAt(text: string, offset: number): boolean {
  const line = text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset);
  const words = line.trim().split(/[\s,]+/u);
  const last = words.at(-1);
  return last === "step" || last === "between" || (last === "and" && words.includes("between"));
}
