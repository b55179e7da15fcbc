/**
 * What only running a rule shows: whether it offers a change that mends its finding. Its failing examples are run.
 */
import type { RuleFacts } from "../core/rules/explain.ts";
import type { Rule } from "../core/rules/rule.ts";
import { createAnalyst } from "./analyst.ts";

const FILE = "example.finish";

export function factsOf(rule: Rule): RuleFacts {
  const offersFix = rule.failing.some((example) => {
    const analyst = createAnalyst({ resolve: (_, path) => path });
    analyst.setFile(FILE, example.text);
    for (const file of analyst.missingFiles()) analyst.setAbsent(file, "there is no such file");
    const findings = analyst.analysis().findings(FILE);
    return findings.some((finding) => finding.rule === rule.id && finding.fixes.length > 0);
  });
  return { offersFix };
}
