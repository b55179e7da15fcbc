/**
 * Text in, findings out: the shape in which most tests look at the product.
 */
import type { FaultListener } from "../../server/src/core/internal-error.ts";
import { BEING_PLANNED } from "../../server/src/core/schedule/being-planned.ts";
import { type AnalystOptions, createAnalyst } from "../../server/src/features/analyst.ts";
import type { Analysis } from "../../server/src/features/types.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { plan } from "./planner.ts";

/** Analyses files given by name; `use` paths are names relative to the folder of the using file. */
export const analyse = (files: Readonly<Record<string, string>>, onFault?: FaultListener): Analysis =>
  analysed(files, { plan, ...(onFault ? { onFault } : {}) });

/** The same with every plan made anew, for those who measure what it costs. */
export const analyseAnew = (files: Readonly<Record<string, string>>): Analysis => analysed(files, {});

function analysed(
  files: Readonly<Record<string, string>>,
  options: Pick<AnalystOptions, "plan" | "onFault" | "parts">,
): Analysis {
  const analyst = createAnalyst({
    ...options,
    resolve: (from, path) => new URL(path, `file:///${from}`).pathname.slice(1),
  });
  for (const [name, text] of Object.entries(files)) analyst.setFile(name, text);
  for (const file of analyst.missingFiles()) analyst.setAbsent(file, "there is no such file");
  return analyst.analysis();
}

/** The findings of one text. Several tests look at the same examples of rules, so those of the last texts are kept. */
export function findingsOf(text: string): readonly FileFinding[] {
  const findings = known.get(text) ?? analyse({ "test.finish": text }).findings("test.finish");
  if (text.length > LONGEST_KEPT) return findings;
  // Put last what was asked last, so that the oldest is the first to go.
  known.delete(text);
  known.set(text, findings);
  const oldest = known.keys().next();
  if (known.size > MOST_KEPT && !oldest.done) known.delete(oldest.value);
  return findings;
}

const known = new Map<string, readonly FileFinding[]>();
const MOST_KEPT = 1500;
const LONGEST_KEPT = 10_000;

/** What the language itself has to say of one of several files: no rule of the trade looks at them, and nothing is planned. */
export const untradedFindings = (
  files: Readonly<Record<string, string>>,
  file: string,
): readonly FileFinding[] =>
  analysed(files, { plan: () => BEING_PLANNED, parts: { rules: [] } }).findings(file);

export const lineOf = (text: string, offset: number): number => text.slice(0, offset).split("\n").length;

/** `3 coat-over-wax` for every finding, in order; of those that are told together, for each. */
export function summary(text: string): readonly string[] {
  const parts = findingsOf(text).flatMap(partsOf);
  return parts
    .toSorted((a, b) => a.span.start - b.span.start)
    .map(({ rule, span }) => `${lineOf(text, span.start)} ${rule}`);
}

/** The same from the marks in a text: `#! coat-over-wax, no-gloves` at the end of a line. */
export function markedSummary(text: string): readonly string[] {
  return text.split("\n").flatMap((line, index) => {
    const marks = /#!\s*(.+)$/.exec(line)?.[1];
    return marks ? marks.split(",").map((rule) => `${index + 1} ${rule.trim()}`) : [];
  });
}
