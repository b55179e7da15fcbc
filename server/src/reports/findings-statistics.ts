/** How often each rule has something to say, for people at a terminal: the most frequent first. */
import { SEVERITIES } from "../core/findings.ts";
import { partsOf } from "../views/places/finding-parts.ts";
import type { FindingReport } from "./reported.ts";

/** One line a rule: its number of findings, its name, its levels; nothing where there is no finding. */
export function findingsStatistics(report: FindingReport): string {
  const byRule = new Map<string, string[]>();
  for (const { rule, severity } of report.files.flatMap(({ findings }) => findings.flatMap(partsOf))) {
    byRule.set(rule, [...(byRule.get(rule) ?? []), severity]);
  }
  const rows = [...byRule].toSorted(
    ([ruleA, a], [ruleB, b]) => b.length - a.length || ruleA.localeCompare(ruleB),
  );
  if (rows.length === 0) return "";
  const width = String(rows[0]![1].length).length;
  const ruleWidth = Math.max(...rows.map(([rule]) => rule.length));
  const lines = rows.map(([rule, all]) => {
    const levels = SEVERITIES.flatMap((severity) => {
      const count = all.filter((each) => each === severity).length;
      return count === 0 ? [] : [`${severity} ${count}`];
    });
    return `${String(all.length).padStart(width)}  ${rule.padEnd(ruleWidth)}  ${levels.join(", ")}`;
  });
  return `\nFindings by rule:\n${lines.join("\n")}\n`;
}
