/** Two jobs side by side, for a terminal. */
import type { Comparison, ComparisonRow } from "../features/job-comparison.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, padEnd, padStart, shownText } from "./display-text.ts";

export function comparisonText(
  names: { readonly a: string; readonly b: string },
  comparison: Comparison,
  colours: Colours,
): string {
  const head: ComparisonRow = { name: "", a: names.a, b: names.b, difference: "difference" };
  const parts = [
    { title: "Figures", rows: comparison.figures },
    { title: "Litres", rows: comparison.materials },
    { title: "Findings", rows: comparison.findings },
  ].filter(({ rows }) => rows.length > 0);
  const all = [head, ...parts.flatMap(({ rows }) => rows)];
  const width = (say: (row: ComparisonRow) => string): number =>
    Math.max(...all.map((row) => displayWidth(shownText(say(row)))));
  const widths = {
    name: width(({ name }) => name),
    a: width(({ a }) => a),
    b: width(({ b }) => b),
    difference: width(({ difference }) => difference),
  };
  const line = ({ name, a, b, difference }: ComparisonRow): string =>
    `  ${padEnd(shownText(name), widths.name)}  ${padStart(shownText(a), widths.a)}  ${padStart(shownText(b), widths.b)}  ${padStart(difference, widths.difference)}`.trimEnd();
  return [
    colours.bold(line(head)),
    ...parts.flatMap(({ title, rows }) => [colours.bold(title), ...rows.map(line)]),
    ...(comparison.findings.length === 0 ? ["Neither brings a finding."] : []),
    "",
  ].join("\n");
}
