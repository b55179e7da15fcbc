/** Texts for people that stand in tables, by the part of the program that tells them with `translated`. */
import { coreTexts } from "./table-texts/core.ts";
import { grammarTexts } from "./table-texts/grammar.ts";
import { knowledgeTexts } from "./table-texts/knowledge.ts";
import { reportTexts } from "./table-texts/reports.ts";
import { ruleDocTexts } from "./table-texts/rule-docs.ts";
import { ruleTexts } from "./table-texts/rules.ts";
import { viewTexts } from "./table-texts/views.ts";

export const tableTexts = (): Readonly<Record<string, readonly string[]>> => ({
  core: coreTexts(),
  grammar: grammarTexts(),
  knowledge: knowledgeTexts(),
  reports: reportTexts(),
  "rule docs": ruleDocTexts(),
  rules: ruleTexts(),
  views: viewTexts(),
});
