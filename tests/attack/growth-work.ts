/**
 * The work that is measured on one program, part by part: each part is what somebody waits for. What a part needs of the
 * parts before it has been worked out by then, so that every part's cost is its own.
 */
import process from "node:process";
import { applyChanges, formatFile } from "../../grammar/src/format.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { type Analysis, INLAY_HINT_KINDS } from "../../server/src/features/types.ts";
import { coloursFor } from "../../server/src/reports/colours.ts";
import { findingsJson } from "../../server/src/reports/findings-json.ts";
import { findingsLines } from "../../server/src/reports/findings-lines.ts";
import { findingsSarif } from "../../server/src/reports/findings-sarif.ts";
import { findingsText } from "../../server/src/reports/findings-text.ts";
import { type FindingReport, type OtherFile, onePerLine } from "../../server/src/reports/reported.ts";
import { SHEET_FORMATS, sheetReport } from "../../server/src/reports/sheet-report.ts";
import type { Files } from "./growth-shapes.ts";
import { resolve } from "./resolve.ts";

export interface Cost {
  readonly part: string;
  /** Of the processor, on the thread that works: what the collector and the compiler do beside it is not in proportion. */
  readonly seconds: number;
}

/** `tell` hears of every part as soon as it is done. */
export function measureWork(files: Files, tell: (cost: Cost) => void): void {
  const measure = <T>(part: string, work: () => T): T => {
    const before = process.threadCpuUsage();
    const result = work();
    const { user, system } = process.threadCpuUsage(before);
    tell({ part, seconds: (user + system) / 1e6 });
    return result;
  };
  const text = files["a.finish"] ?? "";
  const tree = measure("parse", () => parseFile(text));
  measure("format", () => applyChanges(text, formatFile(tree).changes));
  const analyst = createAnalyst({ resolve });
  measure("open", () => {
    for (const [name, each] of Object.entries(files)) analyst.setFile(name, each);
    for (const missing of analyst.missingFiles()) analyst.setAbsent(missing, "it does not exist");
  });
  const analysis = analyst.analysis();
  measure("findings", () => Object.keys(files).map((name) => analysis.findings(name).length));
  measure("jobs", () => [analysis.totals("a.finish"), analysis.sheets("a.finish")]);
  measure("views", () => askViews(analysis, text));
  for (const [place, offset] of [
    ["start", Math.min(10, text.length)],
    ["middle", Math.floor(text.length / 2)],
    ["end", text.length],
  ] as const) {
    measure(`cursor at the ${place}`, () => askAt(analysis, offset));
  }
  measure("reports", () => writeReports(analysis));
  measure("edit", () => {
    analyst.setFile("a.finish", `${text}\n# end\n`);
    return analyst.analysis().findings("a.finish");
  });
}

function askViews(analysis: Analysis, text: string): void {
  const file = "a.finish";
  const whole = { start: 0, end: text.length };
  analysis.symbols(file);
  analysis.semanticTokens(file, "all");
  analysis.foldings(file);
  analysis.useLinks(file);
  analysis.inlayHints(file, whole, INLAY_HINT_KINDS);
  analysis.jobLenses(file, ["error", "warning", "information", "hint"]);
  analysis.workspaceSymbols("a");
}

function askAt(analysis: Analysis, offset: number): void {
  const file = "a.finish";
  analysis.hover(file, offset);
  analysis.completions(file, offset);
  analysis.selections(file, offset);
  analysis.signatures(file, offset);
  analysis.definition(file, offset);
  analysis.references(file, offset, true);
  analysis.highlights(file, offset);
  analysis.rename(file, offset, "other_name");
  analysis.callItems(file, offset);
  analysis.incomingCalls(file, offset);
  analysis.outgoingCalls(file, offset);
}

function writeReports(analysis: Analysis): void {
  const others = new Map(
    analysis.files.map((file) => [file, { label: file, text: analysis.text(file) ?? "" }]),
  );
  const other = (file: string): OtherFile => others.get(file) ?? { label: file, text: "" };
  const report: FindingReport = {
    files: [{ ...other("a.finish"), findings: analysis.findings("a.finish") }],
    other,
  };
  findingsText(report, { colours: coloursFor({ isTTY: false, env: {} }), columns: 80 });
  findingsLines(onePerLine(report));
  findingsJson(onePerLine(report));
  findingsSarif(onePerLine(report), "0.0.0");
  const sheets = analysis.sheets("a.finish");
  for (const format of SHEET_FORMATS) sheetReport(analysis, sheets, format, (file) => file);
}
