/** Findings for other programs: one JSON array, its fields fixed by the language reference. */
import { jsonText } from "../escape/json.ts";
import { partsOf } from "../views/places/finding-parts.ts";
import { type FindingReport, regionOf } from "./reported.ts";

/** Lines and columns count from 1, columns in UTF-16 units; `file` as it was given on the command line. */
export function findingsJson(report: FindingReport): string {
  const findings = report.files.flatMap((file) =>
    file.findings.map((finding) => ({
      file: file.label,
      ...regionOf(file, finding.span),
      rule: finding.rule,
      severity: finding.severity,
      headline: finding.headline,
      why: finding.why,
      remedy: finding.remedy,
      where: finding.where ?? null,
      message: finding.message,
      parts: partsOf(finding).map((part) => ({
        rule: part.rule,
        severity: part.severity,
        line: regionOf(file, part.span).line,
        column: regionOf(file, part.span).column,
        headline: part.headline,
      })),
    })),
  );
  return jsonText(findings);
}
