/**
 * Findings for people at a terminal: where, what and why, the line itself with the fault marked, and a count.
 */
import type { Span } from "../../../grammar/src/tree.ts";
import { SEVERITIES, type Severity } from "../core/findings.ts";
import { ruleById } from "../core/rules/registry.ts";
import { shownText } from "../escape/shown-text.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { partsOf } from "../views/places/finding-parts.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, type MeasuredLine, measureLine, offsetOfColumn, wrap } from "./display-text.ts";
import { type FindingReport, gravestFirst, indexOf, type OtherFile, regionOf } from "./reported.ts";

export interface TextStyle {
  readonly colours: Colours;
  readonly columns: number;
}

/** The whole report, its count included. */
export function findingsText(report: FindingReport, style: TextStyle): string {
  const blocks = report.files.flatMap((file) =>
    gravestFirst(file.findings).map((finding) => findingText(report, file, finding, style)),
  );
  return `${[...blocks, countText(report, style)].join("\n\n")}\n`;
}

function findingText(report: FindingReport, file: OtherFile, finding: FileFinding, style: TextStyle): string {
  const { colours, columns } = style;
  const region = regionOf(file, finding.span);
  const place = `${shownText(file.label)}:${region.line}:${region.column}`;
  const paint = painter(finding.severity, colours);
  return [
    ...headerLines(place, finding, paint, style),
    ...finding.message
      .split("\n")
      .flatMap((text) => wrap(text, columns - 2))
      .map((line, index) => `  ${index === 0 ? colours.bold(line) : line}`),
    ...sourceLines(file, finding.span, columns, paint, colours),
    ...finding.related.flatMap((related) => {
      const other = report.other(related.file);
      const at = regionOf(other, related.span);
      return wrap(`${other.label}:${at.line}:${at.column} ${related.message}`, columns - 4).map((line, i) =>
        colours.dim(`${i === 0 ? "  → " : "    "}${line}`),
      );
    }),
  ].join("\n");
}

/** Place, level and rules; more rules than fit on the line go on below it. */
function headerLines(
  place: string,
  finding: FileFinding,
  paint: (text: string) => string,
  { colours, columns }: TextStyle,
): readonly string[] {
  const rules = [...new Set(partsOf(finding).map(({ rule }) => rule))];
  const room = columns - displayWidth(`${place} ${finding.severity} `);
  const [first = "", ...more] = wrap(rules.join(", "), room);
  const rest = wrap(more.join(" "), columns - 4).map((line) => `    ${line}`);
  return [`${colours.bold(place)} ${paint(finding.severity)} ${first}`, ...rest];
}

/** The line of the span and carets below it; of a long line the part around the span. */
function sourceLines(
  file: OtherFile,
  span: Span,
  columns: number,
  paint: (text: string) => string,
  colours: Colours,
): readonly string[] {
  const index = indexOf(file);
  const { line } = regionOf(file, span);
  const start = index.starts[line - 1]!;
  const end = index.ends[line - 1]!;
  const number = String(line);
  const room = Math.max(20, columns - number.length - 5);
  const measured = measuredLine(file, line, start, end);
  const from = measured.columns[Math.min(span.start, end) - start]!;
  const to = measured.columns[Math.max(span.start, Math.min(span.end, end)) - start] ?? from;
  const wide = Math.max(1, to - from);
  const first = from + Math.min(wide, room) <= room ? 0 : Math.max(0, from - Math.floor(room / 4));
  const shown = cut(measured, first, room);
  const carets = `${" ".repeat(from - first)}${paint("^".repeat(Math.min(wide, room - (from - first))))}`;
  const margin = " ".repeat(number.length);
  return [`  ${colours.dim(`${number} |`)} ${shown}`.trimEnd(), `  ${margin} ${colours.dim("|")} ${carets}`];
}

/** The lines of each file that have been measured: many findings may stand on one long line. */
const MEASURED = new WeakMap<OtherFile, Map<number, MeasuredLine>>();

function measuredLine(file: OtherFile, line: number, start: number, end: number): MeasuredLine {
  const lines = MEASURED.get(file) ?? new Map<number, MeasuredLine>();
  MEASURED.set(file, lines);
  const measured = lines.get(line) ?? measureLine(file.text.slice(start, end));
  lines.set(line, measured);
  return measured;
}

/** Columns `first` to `first + room` of a shown line, with dots where it goes on. */
function cut(line: MeasuredLine, first: number, room: number): string {
  const { text, offsets, columns } = line;
  const width = columns.at(-1)!;
  if (first === 0 && width <= room) return text;
  // What stands to the left of the first column may reach over it, as a tab does.
  const start = Math.max(0, offsetOfColumn(line, first) - 1);
  const end = offsetOfColumn(line, first + room + 1);
  let column = columns[start]!;
  let shown = "";
  for (const character of text.slice(offsets[start], offsets[end])) {
    const wide = displayWidth(character);
    if (column >= first && column + wide <= first + room) shown += character;
    column += wide;
  }
  // Whole characters: half a surrogate pair is none.
  const head = first > 0 ? shown.replace(/^./u, "…") : shown;
  return width > first + room ? withoutLast(head) : head;
}

/** Dots in place of the last character. */
function withoutLast(text: string): string {
  const pair = /^[\ud800-\udbff][\udc00-\udfff]$/.test(text.slice(-2));
  return `${text.slice(0, pair ? -2 : -1)}…`;
}

function countText(report: FindingReport, style: TextStyle): string {
  const all = report.files.flatMap((file) => file.findings);
  const files = counted(report.files.length, "file");
  if (all.length === 0) return `${style.colours.green(`Nothing found in ${files}.`)}\n${NOT_SAFE}`;
  const counts = SEVERITIES.flatMap((severity) => {
    const count = all.filter((finding) => finding.severity === severity).length;
    if (count === 0) return [];
    const text = severity === "information" ? `${count} information` : counted(count, severity);
    return [painter(severity, style.colours)(text)];
  });
  const allow = all.some(isOfTheTrade) ? `\n${HOW_TO_ALLOW}` : "";
  return `${counts.join(", ")} in ${files}.\n${NOT_SAFE}${allow}`;
}

/** What is wrong with the text itself can only be corrected. */
const isOfTheTrade = (finding: FileFinding): boolean =>
  partsOf(finding).some(({ rule }) => (ruleById(rule)?.group ?? "language") !== "language");

const HOW_TO_ALLOW =
  "To keep a line as it is, put `# allow RULE: reason` above it; the rule is named\nbehind `error`, `warning` or `hint`. That hides the message, not the danger.";

/** Said wherever findings are counted. */
export const NOT_SAFE = "No findings does not mean safe: labels and safety data sheets come first.";

/** `1 file`, `2 files` */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? "" : "s"}`;

function painter(severity: Severity, colours: Colours): (text: string) => string {
  if (severity === "error") return colours.red;
  if (severity === "warning") return colours.yellow;
  return severity === "information" ? colours.blue : colours.cyan;
}
