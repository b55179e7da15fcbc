/**
 * Findings drawn as text to be read: the line with what is underlined, all that is said, the related places, and every
 * fix as the lines that it takes out and puts in.
 */

import { markedLines } from "../../server/src/features/marked-lines.ts";
import type { Analysis } from "../../server/src/features/types.ts";
import type { FileFinding, FileFix } from "../../server/src/views/places/file-finding.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";

/** All findings of a file, the texts of whose related places `analysis` has. */
export function showFindings(analysis: Analysis, file: string): string {
  const findings = analysis.findings(file);
  return findings.length === 0
    ? "Nothing.\n"
    : findings.map((each) => showFinding(analysis, each)).join("\n");
}

function showFinding(analysis: Analysis, finding: FileFinding): string {
  const textOf = (file: string): string => analysis.text(file) ?? "";
  return [
    `${finding.severity} ${[...new Set(partsOf(finding).map(({ rule }) => rule))].join(", ")}`,
    ...markedLines(textOf(finding.file), finding.span),
    ...finding.message.split("\n").map((line) => `  ${line}`),
    ...finding.related.flatMap(({ file, span, message }) => [
      `  related${file === finding.file ? "" : ` in ${file}`}: ${message}`,
      ...markedLines(textOf(file), span).map((line) => `    ${line}`),
    ]),
    ...finding.fixes.flatMap((fix) => [
      `  fix: ${fix.title} (${fix.kind})`,
      ...[...new Set(fix.edits.map(({ file }) => file))].flatMap((file) =>
        lineDiff(textOf(file), applied(textOf(file), file, fix)).map((line) => `    ${line}`),
      ),
    ]),
    "",
  ]
    .map((line) => line.trimEnd())
    .join("\n");
}

/** A text after a fix; edits of other files are left out. */
export function applied(text: string, file: string, fix: FileFix): string {
  return fix.edits
    .filter((edit) => edit.file === file)
    .toSorted((a, b) => b.span.start - a.span.start)
    .reduce(
      (result, edit) => result.slice(0, edit.span.start) + edit.text + result.slice(edit.span.end),
      text,
    );
}

/** Lines that are gone with `-`, new ones with `+`, and those around them, by the longest common subsequence. */
export function lineDiff(before: string, after: string): readonly string[] {
  const lines = compared(before.split("\n"), after.split("\n"));
  const isChanged = (index: number): boolean => lines[index] !== undefined && !lines[index].startsWith(" ");
  return lines.flatMap((line, index) => {
    if (isChanged(index - 1) || isChanged(index) || isChanged(index + 1)) return [line];
    return isChanged(index - 2) ? ["  …"] : [];
  });
}

function compared(a: readonly string[], b: readonly string[]): readonly string[] {
  const common = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0));
  for (let i = a.length - 1; i >= 0; i -= 1)
    for (let j = b.length - 1; j >= 0; j -= 1)
      common[i]![j] =
        a[i] === b[j] ? common[i + 1]![j + 1]! + 1 : Math.max(common[i + 1]![j]!, common[i]![j + 1]!);
  const lines: string[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) {
      lines.push(`  ${a[i]}`);
      i += 1;
      j += 1;
    } else if (i < a.length && (j === b.length || common[i + 1]![j]! >= common[i]![j + 1]!)) {
      lines.push(`- ${a[i]}`);
      i += 1;
    } else {
      lines.push(`+ ${b[j]}`);
      j += 1;
    }
  }
  return lines;
}
