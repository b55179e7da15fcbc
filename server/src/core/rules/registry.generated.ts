// Written by server/tools/write-rule-registry.ts from the rule files; do not edit.
import { waterborneOverUncuredOil } from "./layers/waterborne-over-uncured-oil.ts";
import type { Rule } from "./rule.ts";

/** All rules, by group and id. */
export const RULES: readonly Rule[] = [waterborneOverUncuredOil];
