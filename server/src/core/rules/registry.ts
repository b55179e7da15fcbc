/**
 * The rules as the engine uses them: the trade's with their checks, and the severities of the language's.
 */
import { byGravity, type Severity } from "../findings.ts";
import { RULES } from "./registry.generated.ts";
import { isTradeRule, type Rule } from "./rule.ts";

export const TRADE_RULES = RULES.filter(isTradeRule);

const BY_ID: ReadonlyMap<string, Rule> = new Map(RULES.map((rule) => [rule.id, rule]));

export const ruleById = (id: string): Rule | undefined => BY_ID.get(id);

export const ruleIds = (): readonly string[] => [...BY_ID.keys()];

/** What comes first among findings of one level: lead, what else harms people, then the film, then the spelling of the text. */
export function rankOf(id: string): number {
  const rule = BY_ID.get(id);
  if (rule !== undefined && isTradeRule(rule) && rule.speaksOfLead) return 0;
  return rule?.group === "safety" ? 1 : rule?.group === "language" ? 3 : 2;
}

/** The gravest first, of those as grave the most dangerous; 0 where both are as grave and as dangerous. */
export const byDanger = (a: Found, b: Found): number => byGravity(a, b) || rankOf(a.rule) - rankOf(b.rule);

interface Found {
  readonly rule: string;
  readonly severity: Severity;
}

/** Whether a rule says that something was not checked, so that no comment allows it and no project sets its level. */
export const isAlwaysShown = (id: string): boolean => BY_ID.get(id)?.alwaysShown === true;

/** The severity of a finding of the language; errors unless the rule says otherwise. */
export const languageSeverity = (id: string): Severity => BY_ID.get(id)?.severity ?? "error";

/** The rules whose findings a rule's own are secondary to. */
export function secondaryTo(id: string): readonly string[] {
  const rule = BY_ID.get(id);
  return (rule && isTradeRule(rule) && rule.secondaryTo) || [];
}
