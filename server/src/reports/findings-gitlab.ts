/**
 * Findings as the code quality report that GitLab shows on a merge request: an array of issues, each with a fingerprint by
 * which the host tells those that come from those that were there before.
 */
import type { Severity } from "../core/findings.ts";
import { jsonText } from "../escape/json.ts";
import { type FindingReport, pathOf, type ReportedFile, regionOf } from "./reported.ts";

const SEVERITY: Readonly<Record<Severity, string>> = {
  error: "critical",
  warning: "major",
  hint: "minor",
  information: "info",
};

/** `fingerprintsOf` gives one for each finding of a file, in their order. */
export function findingsGitlab(
  report: FindingReport,
  fingerprintsOf: (file: ReportedFile) => readonly string[],
): string {
  return jsonText(
    report.files.flatMap((file) => {
      const fingerprints = fingerprintsOf(file);
      return file.findings.map((finding, index) => {
        const { line, endLine } = regionOf(file, finding.span);
        return {
          description: finding.message.split("\n").join(" "),
          check_name: finding.rule,
          fingerprint: fingerprints[index]!,
          severity: SEVERITY[finding.severity],
          location: {
            path: pathOf(file.label),
            lines: { begin: line, end: endLine },
          },
        };
      });
    }),
  );
}
