/**
 * Findings one a line, as compilers print theirs, for the problem lists of editors and for `grep`:
 *
 *     tables.finish:12:9: warning: From 80 to 220 … [grit-jump]
 *
 * The problem matcher `$finishwright` of the VS Code extension reads it.
 */
import { shownText } from "../escape/shown-text.ts";
import { type FindingReport, regionOf } from "./reported.ts";

/** Lines and columns count from 1; nothing where there is no finding. Of a finding
 * the headline alone, which never breaks its line. */
export function findingsLines(report: FindingReport): string {
  return report.files
    .flatMap((file) =>
      file.findings.map((finding) => {
        const { line, column } = regionOf(file, finding.span);
        const message = shownText(finding.headline.replace(/\s+/gu, " "));
        return `${shownText(file.label)}:${line}:${column}: ${finding.severity}: ${message} [${finding.rule}]\n`;
      }),
    )
    .join("");
}
