/**
 * Findings as the workflow commands that GitHub reads from the log of a job and shows on the lines of a change.
 *
 * It knows errors, warnings and notices; hints and information are notices.
 */
import type { Severity } from "../core/findings.ts";
import { commandMessage, commandProperty } from "../escape/workflow-command.ts";
import { type FindingReport, regionOf } from "./reported.ts";

/** One command a line, each ended; nothing where there is no finding. Lines and columns count from 1. */
export function findingsGithub(report: FindingReport): string {
  return report.files
    .flatMap((file) =>
      file.findings.map((finding) => {
        const { line, column, endLine, endColumn } = regionOf(file, finding.span);
        // Columns are read only where a finding stays on its line.
        const columns = endLine === line ? `,col=${column},endColumn=${endColumn}` : "";
        const place = `file=${commandProperty(file.label)},line=${line},endLine=${endLine}${columns}`;
        const title = commandProperty(`${finding.headline} [${finding.rule}]`);
        const rest = finding.message.split("\n").slice(1).join("\n") || finding.headline;
        return `::${commandOf(finding.severity)} ${place},title=${title}::${commandMessage(rest)}\n`;
      }),
    )
    .join("");
}

const commandOf = (severity: Severity): string =>
  severity === "error" || severity === "warning" ? severity : "notice";
