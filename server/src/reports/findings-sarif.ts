/**
 * Findings as SARIF 2.1.0 (OASIS, errata 01), for code hosts and review tools: rules with their help, results with
 * related places and fixes. Hints and information are notes, which is the lowest level that such tools show.
 */

import type { Severity } from "../core/findings.ts";
import { ruleById, ruleIds } from "../core/rules/registry.ts";
import { jsonText } from "../escape/json.ts";
import { sarifText } from "../escape/sarif.ts";
import type { FileFinding, FileFix } from "../views/places/file-finding.ts";
import { type FindingReport, type OtherFile, pathOf, type Region, regionOf } from "./reported.ts";

const SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/** The log of one run. */
export function findingsSarif(report: FindingReport, version: string): string {
  const found = report.files.flatMap((file) => file.findings.map((finding) => finding.rule));
  const ids = [...new Set([...ruleIds(), ...found])].toSorted();
  const results = report.files.flatMap((file) =>
    file.findings.map((finding) => resultOf(report, file, finding, ids)),
  );
  const run = {
    tool: { driver: { name: "Finishwright", version, rules: ids.map(descriptorOf) } },
    columnKind: "utf16CodeUnits",
    results,
  };
  return jsonText({ $schema: SCHEMA, version: "2.1.0", runs: [run] });
}

function descriptorOf(id: string) {
  const rule = ruleById(id);
  if (!rule) return { id };
  const { summary, why, remedy } = rule.docs;
  return {
    id,
    shortDescription: { text: sarifText(summary) },
    fullDescription: { text: sarifText(`${summary} ${why}`) },
    help: { text: sarifText(`${why} ${remedy}`), markdown: `${why}\n\n${remedy}` },
    defaultConfiguration: { level: levelOf(rule.severity) },
    properties: { tags: [rule.group] },
  };
}

function resultOf(report: FindingReport, file: OtherFile, finding: FileFinding, ids: readonly string[]) {
  return {
    ruleId: finding.rule,
    ruleIndex: ids.indexOf(finding.rule),
    level: levelOf(finding.severity),
    message: { text: finding.message.split("\n").map(sarifText).join("\n") },
    ...(finding.parts ? { properties: { rules: [...new Set(finding.parts.map(({ rule }) => rule))] } } : {}),
    locations: [{ physicalLocation: physicalLocation(file, regionOf(file, finding.span)) }],
    ...(finding.related.length > 0
      ? {
          relatedLocations: finding.related.map((related, id) => {
            const other = report.other(related.file);
            return {
              id,
              message: { text: sarifText(related.message) },
              physicalLocation: physicalLocation(other, regionOf(other, related.span)),
            };
          }),
        }
      : {}),
    ...(finding.fixes.length > 0 ? { fixes: finding.fixes.map((fix) => fixOf(report, fix)) } : {}),
  };
}

function fixOf(report: FindingReport, fix: FileFix) {
  const files = [...new Set(fix.edits.map((edit) => edit.file))];
  return {
    description: { text: sarifText(fix.title) },
    artifactChanges: files.map((file) => {
      const other = report.other(file);
      return {
        artifactLocation: { uri: uriOf(other.label) },
        replacements: fix.edits
          .filter((edit) => edit.file === file)
          .map((edit) => ({
            deletedRegion: sarifRegion(regionOf(other, edit.span)),
            insertedContent: { text: edit.text },
          })),
      };
    }),
  };
}

function physicalLocation(file: OtherFile, region: Region) {
  return { artifactLocation: { uri: uriOf(file.label) }, region: sarifRegion(region) };
}

const sarifRegion = ({ line, column, endLine, endColumn }: Region) => ({
  startLine: line,
  startColumn: column,
  endLine,
  endColumn,
});

/** Relative to where the command runs, or a file address; special characters as percent signs. */
function uriOf(label: string): string {
  const path = pathOf(label);
  const encoded = path.split("/").map(encodedName).join("/");
  if (path.startsWith("/")) return `file://${encoded}`;
  const drive = /^([A-Za-z]):\//.exec(path);
  return drive ? `file:///${path[0]}:${encoded.slice(encoded.indexOf("/"))}` : encoded;
}

/** A name may hold half a surrogate pair, for which there is no address. */
const encodedName = (name: string): string => encodeURIComponent(name.replace(/\p{Cs}/gu, "\ufffd"));

function levelOf(severity: Severity): "error" | "warning" | "note" {
  return severity === "error" || severity === "warning" ? severity : "note";
}
