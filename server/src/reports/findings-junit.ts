/**
 * Findings as JUnit XML, which nearly every build server reads: a suite for each file, a case for each finding in it, and
 * one passed case for a file in which nothing was found. Errors and warnings are failures; hints and information pass.
 */
import { xmlText } from "../escape/xml.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { type FindingReport, type ReportedFile, regionOf } from "./reported.ts";

/** One document, with the counts that readers of it rely on. */
export function findingsJunit(report: FindingReport): string {
  const suites = report.files.map(suiteOf);
  const tests = report.files.reduce((sum, { findings }) => sum + Math.max(1, findings.length), 0);
  const failures = report.files.reduce((sum, { findings }) => sum + findings.filter(isFailure).length, 0);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="finishwright" tests="${tests}" failures="${failures}" errors="0">`,
    ...suites,
    "</testsuites>",
    "",
  ].join("\n");
}

const isFailure = ({ severity }: FileFinding): boolean => severity === "error" || severity === "warning";

function suiteOf(file: ReportedFile): string {
  const { label, findings } = file;
  const name = xmlText(label);
  const cases =
    findings.length === 0
      ? [`    <testcase classname="${name}" name="no findings"/>`]
      : findings.map((finding) => caseOf(file, finding));
  const counts = `tests="${cases.length}" failures="${findings.filter(isFailure).length}" errors="0"`;
  return [`  <testsuite name="${name}" ${counts}>`, ...cases, "  </testsuite>"].join("\n");
}

function caseOf(file: ReportedFile, finding: FileFinding): string {
  const { line, column } = regionOf(file, finding.span);
  const name = `${xmlText(finding.rule)} at ${line}:${column}`;
  const open = `    <testcase classname="${xmlText(file.label)}" name="${name}"`;
  const text = finding.message.split("\n").map(xmlText).join("\n");
  if (!isFailure(finding)) return `${open}>\n      <system-out>${text}</system-out>\n    </testcase>`;
  const failure = `<failure type="${finding.severity}" message="${xmlText(finding.headline)}">`;
  const place = `${xmlText(file.label)}:${line}:${column}`;
  return `${open}>\n      ${failure}${place}\n${text}</failure>\n    </testcase>`;
}
