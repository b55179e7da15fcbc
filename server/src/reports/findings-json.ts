/** Findings for other programs: one JSON array, its fields fixed by the language reference. */
import { jsonText } from "../escape/json.ts";
import { type FindingReport, regionOf } from "./reported.ts";

/** Lines and columns count from 1, columns in UTF-16 units; `file` as it was given on the command line. */
export function findingsJson(report: FindingReport): string {
  const findings = report.files.flatMap((file) =>
    file.findings.map((finding) => ({
      file: file.label,
      ...regionOf(file, finding.span),
      rule: finding.rule,
      severity: finding.severity,
      message: finding.message,
    })),
  );
  return jsonText(findings);
}
