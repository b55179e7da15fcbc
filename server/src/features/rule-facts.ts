/**
 * What only running a rule shows: what is said of its failing examples, and whether a quick fix comes with it.
 */
import { exampleText, type ReportedFinding, type RuleFacts } from "../core/rules/explain.ts";
import type { Rule } from "../core/rules/rule.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { createAnalyst } from "./analyst.ts";
import { markedLines } from "./marked-lines.ts";

const FILE = "example.finish";

export function factsOf(rule: Rule): RuleFacts {
  const examples = rule.failing.map((example) => {
    const text = `${exampleText(example)}\n`;
    return { text, findings: findingsOfExample(text) };
  });
  return {
    offersFix: examples.some(({ findings }) =>
      findings.some((finding) => finding.rule === rule.id && finding.fixes.length > 0),
    ),
    reported: examples.map(({ text, findings }) => findings.map((finding) => reportedIn(text, finding))),
  };
}

export const reportedIn = (
  text: string,
  { rule, severity, message, span }: FileFinding,
): ReportedFinding => ({ rule, severity, message, marked: markedLines(text, span) });

export function findingsOfExample(text: string): readonly FileFinding[] {
  const analyst = createAnalyst({ resolve: (_, path) => path });
  analyst.setFile(FILE, text);
  for (const file of analyst.missingFiles()) analyst.setAbsent(file, "there is no such file");
  return analyst.analysis().findings(FILE);
}
