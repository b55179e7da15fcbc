/**
 * What a finding is known by when lines above it come and go: the file, the rule, the job and the words of its line.
 *
 * Of findings that are alike in all of these, the second is told from the first by its number.
 */
import { createHash } from "node:crypto";
import { pathOf, type ReportedFile, regionOf } from "../reports/reported.ts";
import type { FileFinding } from "../views/places/file-finding.ts";

/** For each finding of a file, in their order, 32 hexadecimal digits; no two of a file are the same. */
export function fingerprintsOf(file: ReportedFile): readonly string[] {
  const seen = new Map<string, number>();
  const lines = file.text.split("\n");
  const name = pathOf(file.label);
  return file.findings.map((finding: FileFinding) => {
    const words = (lines[regionOf(file, finding.span).line - 1] ?? "").trim().replace(/\s+/gu, " ");
    const like = [name, finding.rule, finding.job ?? "", words].join("\0");
    const number = (seen.get(like) ?? 0) + 1;
    seen.set(like, number);
    return createHash("sha256").update(`${like}\0${number}`).digest("hex").slice(0, 32);
  });
}
