/** `finishwright/rules`, a request of our own: every rule with a sentence on it and the page that explains it. */
import { translated } from "../../../../grammar/src/translate.ts";
import { GROUP_TITLES } from "../../core/rules/explain.ts";
import { ruleById, ruleIds } from "../../core/rules/registry.ts";
import type { RuleGroup } from "../../core/rules/rule.ts";
import { RULE_SUMMARIES } from "../../core/rules/summaries.generated.ts";
import type { RuleEntry } from "../custom-requests.ts";
import type { Session } from "../session.ts";

export const rules = (session: Session): readonly RuleEntry[] => {
  const all = ruleIds().flatMap((id) => ruleById(id) ?? []);
  return (Object.keys(GROUP_TITLES) as readonly RuleGroup[]).flatMap((group) =>
    all
      .filter((rule) => rule.group === group)
      .map(({ id }) => {
        const page = session.rulePage(id);
        return {
          id,
          group: translated(GROUP_TITLES[group]),
          summary: translated(RULE_SUMMARIES[id] ?? ""),
          ...(page !== undefined && { page }),
        };
      }),
  );
};
